// What the pages of ovens tell the API.
import { act } from '../act/told.ts';
import { flag, instant, many, maybe, number, text, word } from '../shape.ts';
import type { CareKind, Family, OvenKind } from './words.ts';

const kept = { oven: { id: text, name: text } };
const ovenInput = {
  shelves: number,
  shelfAreaCm2: number,
  lowestC: number,
  highestC: number,
  shelfHeightMm: number,
  name: text,
  kind: word<OvenKind>(),
  room: text,
};
const mayStay = {
  hasFan: maybe(flag),
  heatMinutesPerC: maybe(number),
  coolMinutesPerC: maybe(number),
  doorMinutes: maybe(number),
  pressureMbar: maybe(number),
  pumpM3PerH: maybe(number),
  isUnattended: maybe(flag),
  hours: maybe(many({ days: many(number), from: text, to: text })),
};
export const addOvenAct = act('addOven', 'OvenKept', { ...ovenInput, ...mayStay }, kept);
export const setOvenAct = act(
  'setOven',
  'OvenKept',
  {
    oven: text,
    name: maybe(text),
    kind: maybe(word<OvenKind>()),
    room: maybe(text),
    shelves: maybe(number),
    shelfAreaCm2: maybe(number),
    lowestC: maybe(number),
    highestC: maybe(number),
    shelfHeightMm: maybe(number),
    ...mayStay,
  },
  kept,
);
export const removeOvenAct = act('removeOven', 'OvenKept', { oven: text }, kept);
export const restoreOvenAct = act('restoreOven', 'OvenKept', { oven: text }, kept);
export const setOvensApartAct = act(
  'setOvensApart',
  'OvensApartKept',
  { pairs: maybe(many(many(word<Family>()))) },
  { lab: { hasOwnOvensApart: flag } },
);

const careKept = { care: { id: text, sentence: text } };
export const recordCareAct = act(
  'recordOvenCare',
  'OvenCareKept',
  {
    kind: word<CareKind>(),
    oven: maybe(text),
    room: maybe(text),
    sensor: maybe(text),
    at: maybe(instant),
    until: maybe(instant),
    setValue: maybe(number),
    foundValue: maybe(number),
    salt: maybe(text),
    temperatureC: maybe(number),
    note: maybe(text),
  },
  careKept,
);
export const endCareAct = act('endOvenCare', 'OvenCareKept', { care: text, at: maybe(instant) }, careKept);
export const takeCareBackAct = act('takeOvenCareBack', 'OvenCareKept', { care: text }, careKept);
export const restoreCareAct = act('restoreOvenCare', 'OvenCareKept', { care: text }, careKept);

export const planOvensAct = act(
  'planOvens',
  'OvensPlanned',
  { seconds: maybe(number) },
  { plan: { id: text, words: text } },
);
export const takePlanBackAct = act('takeOvenPlanBack', 'OvensPlanned', { plan: text }, { plan: { id: text } });
export const cancelPlanningAct = act(
  'cancelOvenPlanning',
  'OvenPlanningCancelled',
  { keepBest: maybe(flag) },
  { wasPlanning: flag },
);

/** What every step of a run answers: the run as it stands, and what is to be known of it. */
const ran = {
  run: { id: text, loads: many({ id: text, waterFraction: maybe(number), container: { label: text } }) },
  notes: many(text),
} as const;
const step = { run: text, at: maybe(instant) };
export const pinBatchAct = act(
  'pinBatch',
  'DryingRunKept',
  { run: text, oven: maybe(text), start: maybe(instant) },
  ran,
);
export const unpinBatchAct = act('unpinBatch', 'DryingRunKept', { run: text }, ran);
export const startRunAct = act('startRun', 'DryingRunKept', step, ran);
export const openDoorAct = act('openOvenDoor', 'DryingRunKept', step, ran);
export const takeOutAct = act('takeRunOut', 'DryingRunKept', step, ran);
export const cooledAct = act('recordRunCooled', 'DryingRunKept', step, ran);
export const finishRunAct = act(
  'finishRun',
  'DryingRunKept',
  {
    ...step,
    results: maybe(
      many({
        load: text,
        waterFraction: maybe(number),
        netGrams: maybe(number),
        vessel: maybe(text),
        room: maybe(text),
        note: maybe(text),
      }),
    ),
  },
  ran,
);
export const interruptRunAct = act('interruptRun', 'DryingRunKept', { ...step, why: maybe(text) }, ran);
export const stepBackAct = act('takeRunStepBack', 'DryingRunKept', { run: text }, ran);
