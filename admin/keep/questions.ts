// What the page of the lab's own settings asks and tells, its prep and bottles of solvent among them.
import { act } from '../act/told.ts';
import { question } from '../ask.ts';
import { flag, given, many, maybe, number, text, type Answer } from '../shape.ts';

const settings = {
  redryChance: number,
  useSoonChance: number,
  useSoonHours: number,
  tooDryChance: number,
  scoopGrams: number,
  topMm: number,
  filmMmPerS: number,
  pressurePa: number,
  workingFrom: text,
  workingTo: text,
  workingDays: many(number),
  desiccantDays: number,
  leastHoodHours: number,
  equilibratedBandPercent: number,
  own: many(text),
};
export type LabSettings = Answer<typeof settings>;

const person = { id: text, shortName: text, role: text };
const supplier = { id: text, name: text };
const vessel = {
  id: text,
  name: text,
  innerDiameterMm: number,
  heightMm: number,
  mouthDiameterMm: number,
  volumeMl: number,
  source: text,
};

export const keptQuestion = question<Record<string, never>>('Kept')({
  lab: { name: text, settings },
  people: given('first: 200', { nodes: many(person) }),
  suppliers: given('first: 200', { nodes: many(supplier) }),
  vessels: given('first: 200', { nodes: many(vessel) }),
});
export type Kept = Answer<typeof keptQuestion.shape>;

export const setLabSettingsAct = act(
  'setLabSettings',
  'LabKept',
  {
    name: maybe(text),
    redryChance: maybe(number),
    useSoonChance: maybe(number),
    useSoonHours: maybe(number),
    tooDryChance: maybe(number),
    scoopGrams: maybe(number),
    topMm: maybe(number),
    filmMmPerS: maybe(number),
    pressurePa: maybe(number),
    workingFrom: maybe(text),
    workingTo: maybe(text),
    workingDays: maybe(many(number)),
    desiccantDays: maybe(number),
    leastHoodHours: maybe(number),
    equilibratedBandPercent: maybe(number),
  },
  { lab: { name: text } },
);

export const addPersonAct = act(
  'addPerson',
  'PersonAdded',
  { role: text, shortName: text },
  { person: { role: text } },
);
export const setPersonAct = act(
  'setPerson',
  'PersonAdded',
  { shortName: text, newShortName: maybe(text), role: maybe(text) },
  { person: { role: text } },
);
export const addSupplierAct = act('addSupplier', 'SupplierAdded', { name: text }, { supplier: { name: text } });
export const setSupplierAct = act(
  'setSupplier',
  'SupplierAdded',
  { supplier: text, name: text },
  { supplier: { name: text } },
);
const sizes = { mouthDiameterMm: maybe(number), volumeMl: maybe(number), source: maybe(text) };
export const addVesselAct = act(
  'addVessel',
  'VesselAdded',
  { name: text, innerDiameterMm: number, heightMm: number, ...sizes },
  { vessel: { name: text } },
);
export const setVesselAct = act(
  'setVessel',
  'VesselAdded',
  { vessel: text, name: maybe(text), innerDiameterMm: maybe(number), heightMm: maybe(number), ...sizes },
  { vessel: { name: text } },
);

const prep = {
  preWash: text,
  tanks: number,
  tankPlates: number,
  tankMl: number,
  preWashMinutes: number,
  hoodPlaces: number,
  people: number,
  ovenPlates: number,
  packMinutes: number,
  equilibrateMinutes: number,
  conditioningVolumes: number,
  eveningFrom: text,
  daysOff: many(text),
  tankName: text,
  hoodName: text,
  desiccatorName: text,
  own: many(text),
};
export type PrepSettings = Answer<typeof prep>;

const bottle = { id: text, solvent: text, batch: text, openedOn: text, peroxideTestedOn: maybe(text) };
export type Bottle = Answer<typeof bottle>;

export const prepQuestion = question<Record<string, never>>('Prep')({
  lab: { prep },
  solventBatches: many(bottle),
});

export const setPrepSettingsAct = act(
  'setPrepSettings',
  'PrepSettingsKept',
  {
    preWash: maybe(text),
    tanks: maybe(number),
    tankPlates: maybe(number),
    tankMl: maybe(number),
    preWashMinutes: maybe(number),
    hoodPlaces: maybe(number),
    people: maybe(number),
    ovenPlates: maybe(number),
    packMinutes: maybe(number),
    equilibrateMinutes: maybe(number),
    conditioningVolumes: maybe(number),
    eveningFrom: maybe(text),
    daysOff: maybe(many(text)),
    tankName: maybe(text),
    hoodName: maybe(text),
    desiccatorName: maybe(text),
  },
  { lab: { name: text } },
);

export const noteBottleAct = act(
  'noteSolventBatch',
  'SolventBatchKept',
  {
    solvent: text,
    batch: text,
    openedOn: maybe(text),
    peroxideTestedOn: maybe(text),
    isFinished: maybe(flag),
  },
  { batch: { id: text } },
);
