// The GraphQL inputs of what can be told of a container, each field with its unit.
import type { Mutation } from '../mutation.ts';
import {
  BasisEnum,
  ClosureEnum,
  FrontEdgeEnum,
  PrewashDirectionEnum,
  ScoopingEnum,
  WaterMethodEnum,
  WeighedPartEnum,
} from './enums.ts';
import type { ActName } from './event.ts';
import { builder } from '../builder.ts';

export type InputFields = Mutation<unknown, unknown>['fields'];

/** Fields of several inputs in one. */
export const both =
  (...some: InputFields[]): InputFields =>
  (t) =>
    some.reduce((all, fields) => ({ ...all, ...fields(t) }), {});

export const eventFields: InputFields = (t) => ({
  label: t.string({
    required: true,
    description: 'Label of the container, such as `4M7-2XK`; `?` for a sign that cannot be read.',
  }),
  at: t.field({
    type: 'DateTime',
    description: 'When it happened; now when not given. Earlier is normal, later than five minutes ahead is refused.',
  }),
  note: t.string({ description: 'A note beside it.' }),
});

const gramFields: InputFields = (t) => ({
  grams: t.float({ description: 'How much, g, as the balance shows it (or dry, by `basis`).' }),
  basis: t.field({ type: BasisEnum, description: 'What the grams are counted on; as received when not given.' }),
});

const plateFields: InputFields = (t) => ({ plates: t.int({ description: 'How many plates, of a plate box.' }) });

export const amountFields = gramFields;

/** Of what is taken from. */
export const takingFields: InputFields = (t) => ({
  leftOpen: t.boolean({ description: 'What it was taken from stays open; closed again when not given.' }),
  openMinutes: t.float({ description: 'How long the lid was off, min; 5 when not given.' }),
});

/** Of what is filled. */
export const filledFields: InputFields = (t) => ({
  room: t.string({ description: 'Room in which what was filled stands; the same room when not given.' }),
  closure: t.field({ type: ClosureEnum, description: 'How what was filled stands from then on; open when not given.' }),
  usualClosure: t.field({
    type: ClosureEnum,
    description: 'How it is closed when nobody says otherwise; well closed when not given.',
  }),
});

export const shapeFields: InputFields = (t) => ({
  scooping: t.field({ type: ScoopingEnum, description: 'How it was scooped, and is from then on.' }),
  vessel: t.string({ description: 'Name of a listed vessel; or give inner sizes.' }),
  innerDiameterMm: t.float({ description: 'Inner diameter, mm.' }),
  heightMm: t.float({ description: 'Inner height, mm.' }),
  mouthDiameterMm: t.float({ description: 'Diameter of the mouth, mm; the inner diameter when not given.' }),
  volumeMl: t.float({ description: 'Volume, mL; that of a cylinder when not given.' }),
  tareGrams: t.float({ description: 'Weight of the empty vessel, g.' }),
});

const why: InputFields = (t) => ({ why: t.string({ description: 'Why.' }) });
const leavingFields = both(eventFields, gramFields, plateFields);

/** Of a drying, what lets the tray model say what is left. */
export const inOvenFields: InputFields = (t) => ({
  depthMm: t.float({
    description:
      'How deep it lay in the tray, mm; with the minutes the tray model then says what is left. None for plates.',
  }),
  pressureMbar: t.float({ description: 'Pressure in the chamber, mbar; under vacuum 20 when not given.' }),
  waterMbar: t.float({
    description:
      'Vapour pressure of water in the chamber, mbar; the room’s in an oven full of air when not given, 5 under vacuum.',
  }),
  fan: t.boolean({ description: 'A fan moved the air.' }),
  warmUpMinutes: t.float({
    description: 'The oven itself warmed up within the first so many of the minutes; 0 when not given.',
  }),
  minutesToClosed: t.float({
    description:
      'It cooled in the open for so many minutes before it was shut away; what it took up then counts. 0 when not given.',
  }),
});

const dryingFields: InputFields = (t) => ({
  temperatureC: t.float({ description: 'Temperature of the oven, °C.' }),
  minutes: t.float({ description: 'Minutes at that temperature.' }),
  vacuum: t.boolean({ description: 'Under vacuum; not when not given.' }),
  waterFraction: t.float({
    description: 'Water measured afterwards, kg per kg dry sorbent; left to the recipe when not given.',
  }),
  ...inOvenFields(t),
});

const weighingFields: InputFields = (t) => ({
  method: t.field({ type: WaterMethodEnum, required: true, description: 'How it was measured.' }),
  temperatureC: t.float({ description: 'Temperature of the drying, °C; the zero of water is 150 °C.' }),
  of: t.field({ type: WeighedPartEnum, required: true, description: 'Of the whole, or of a scoop.' }),
  waterFraction: t.float({
    description: 'Water found, a mass fraction (0.041 for 4.1 %) on `basis`; not for `GROSS`.',
  }),
  basis: t.field({ type: BasisEnum, description: 'What it is counted on; as received when not given.' }),
  grossGrams: t.float({ description: 'For `GROSS`: weight with the vessel, g.' }),
  tareGrams: t.float({ description: 'For `GROSS`: weight of the empty vessel, g, where it is not known yet.' }),
});

const countFields: InputFields = (t) => ({
  grossGrams: t.float({ description: 'Weight with the vessel, g; its tare must be known or given.' }),
  tareGrams: t.float({ description: 'Weight of the empty vessel, g.' }),
});

/** The input of each act. */
export const actFields: Record<ActName, InputFields> = {
  openContainer: eventFields,
  closeContainer: both(eventFields, (t) => ({
    closure: t.field({ type: ClosureEnum, description: 'With which closure; its usual one when not given.' }),
  })),
  moveContainer: both(eventFields, (t) => ({
    room: t.string({ required: true, description: 'Name of the room it was moved to.' }),
  })),
  mixContainer: eventFields,
  recordDrying: both(eventFields, dryingFields),
  recordEquilibration: both(eventFields, (t) => ({
    humidityPercent: t.float({ required: true, description: 'Relative humidity of the air, %.' }),
    temperatureC: t.float({ description: 'Temperature of the air, °C; 25 when not given.' }),
  })),
  recordWeighing: both(eventFields, weighingFields),
  recordCount: both(leavingFields, countFields),
  recordLoss: both(leavingFields, why),
  recordSolvent: both(eventFields, (t) => ({ what: t.string({ description: 'Which solvent or sample.' }) })),
  preWash: both(eventFields, (t) => ({ solvent: t.string({ description: 'Which solvent.' }) })),
  solventGone: eventFields,
  recordSolventGone: both(eventFields, (t) => ({
    by: t.string({ description: 'Who saw to it: short name of one of the lab’s people.' }),
  })),
  conditionColumn: both(eventFields, (t) => ({
    mobilePhase: t.string({ description: 'Which mobile phase.' }),
    columnVolumes: t.float({ description: 'How many column volumes of it; of flow and minutes when not given.' }),
    minutes: t.float({ description: 'For how long, min.' }),
    flowMlPerMin: t.float({ description: 'Flow, mL/min.' }),
  })),
  interrupt: both(eventFields, why),
  recordNotFound: both(eventFields, why),
  spendOnCheck: both(leavingFields, (t) => ({ what: t.string({ description: 'On which check.' }) })),
  setHabit: both(eventFields, (t) => ({
    timesADay: t.float({ required: true, description: 'Openings a working day; 0 ends the habit.' }),
    minutes: t.float({ required: true, description: 'Minutes of each opening.' }),
  })),
  setScooping: both(eventFields, (t) => ({
    scooping: t.field({ type: ScoopingEnum, required: true, description: 'How one scoops.' }),
  })),
  finishContainer: eventFields,
  discardContainer: both(leavingFields, why),
};

const ReplacementInput = builder.inputType('EventReplacement', {
  description:
    'What was so instead. What is left out stays as it was; what the type of event has no use for is ignored.',
  fields: (t) => ({
    at: t.field({ type: 'DateTime', description: 'When it really happened.' }),
    note: t.string({ description: 'The note beside it; empty text takes it away.' }),
    grams: t.float({ description: 'Grams, g, on `basis`.' }),
    basis: t.field({ type: BasisEnum, description: 'What grams or water are counted on.' }),
    plates: t.int({ description: 'Plates.' }),
    grossGrams: t.float({ description: 'Weight with the vessel, g.' }),
    tareGrams: t.float({ description: 'Weight of the empty vessel, g.' }),
    room: t.string({ description: 'Name of the room.' }),
    closure: t.field({ type: ClosureEnum, description: 'The closure.' }),
    leftOpen: t.boolean({ description: 'What it was taken from stayed open.' }),
    openMinutes: t.float({ description: 'How long the lid was off, min.' }),
    scooping: t.field({ type: ScoopingEnum, description: 'How it was scooped.' }),
    timesADay: t.float({ description: 'Openings a working day.' }),
    minutes: t.float({ description: 'Minutes, of an opening or of a drying.' }),
    temperatureC: t.float({ description: 'Temperature, °C.' }),
    humidityPercent: t.float({ description: 'Relative humidity, %.' }),
    vacuum: t.boolean({ description: 'Under vacuum.' }),
    ...inOvenFields(t),
    waterFraction: t.float({ description: 'Water found, a mass fraction; of a weighing on `basis`, else dry basis.' }),
    startWaterFraction: t.float({ description: 'Water when it came in, kg per kg dry sorbent.' }),
    method: t.field({ type: WaterMethodEnum, description: 'How water was measured.' }),
    of: t.field({ type: WeighedPartEnum, description: 'Of the whole, or of a scoop.' }),
    what: t.string({ description: 'Which solvent, sample or check.' }),
    why: t.string({ description: 'Why.' }),
    solvent: t.string({ description: 'Which solvent.' }),
    mobilePhase: t.string({ description: 'Which mobile phase.' }),
    columnVolumes: t.float({ description: 'How many column volumes.' }),
    flowMlPerMin: t.float({ description: 'Flow, mL/min.' }),
    direction: t.field({ type: PrewashDirectionEnum, description: 'Which way the solvent of a pre-wash ran.' }),
    fullLength: t.boolean({ description: 'It ran the full length of the plate.' }),
    frontEdge: t.field({ type: FrontEdgeEnum, description: 'What became of the dirty edge at its front.' }),
    isMobilePhase: t.boolean({ description: 'It is the mobile phase of the extraction.' }),
    tankLoads: t.int({ description: 'Tank loads.' }),
    mlPerLoad: t.float({ description: 'Solvent of each tank load, mL.' }),
    tankMinutes: t.float({ description: 'How long it ran, min.' }),
    oven: t.string({ description: 'Which oven.' }),
    over: t.string({ description: 'Over which saturated salt, or in which room.' }),
    hours: t.float({ description: 'For how long, h.' }),
  }),
});

export const correctionFields: InputFields = (t) => ({
  event: t.id({ required: true, description: 'The event that is wrong.' }),
  replacement: t.field({ type: ReplacementInput, description: 'What was so instead; or `void`.' }),
  void: t.boolean({ description: 'It did not happen; or, of a correction, the correction is taken back.' }),
  note: t.string({ description: 'Why it is corrected.' }),
});
