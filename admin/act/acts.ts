// Every act the admin can tell the API: the fields of its input, as the schema names them, and what it answers.
import { actText } from '../ask.ts';
import { recordedFields } from '../fields.ts';
import type { Closure } from '../say/words.ts';
import { flag, instant, maybe, number, text, word, type Fields, type InputOf } from '../shape.ts';

const closure = word<'LOOSELY_COVERED' | 'WELL_CLOSED' | 'TIGHT' | 'SEALED'>();
const scooping = word<'TOP' | 'SIDE' | 'ROLLED'>();
const basis = word<'DRY' | 'AS_RECEIVED'>();
const method = word<'LOSS_ON_DRYING' | 'KARL_FISCHER'>();
const weighedPart = word<'WHOLE' | 'SCOOP'>();
const happened = { label: text, at: maybe(instant), note: maybe(text) };

/** Plates: some of a box, or all of it, and where they stand afterwards. */
const batch = { ...happened, plates: maybe(number), room: maybe(text), closure: maybe(word<Closure>()) };

/** Acts that are events of a container's timeline; each answers `Recorded`. */
export const events = {
  openContainer: happened,
  closeContainer: { ...happened, closure: maybe(closure) },
  moveContainer: { ...happened, room: text },
  takePortion: { ...happened, grams: number, vessel: maybe(text), room: maybe(text), closure: maybe(word<Closure>()) },
  takePlates: { ...happened, plates: number, room: maybe(text) },
  packColumn: {
    ...happened,
    grams: maybe(number),
    innerDiameterMm: number,
    bedLengthMm: number,
    method: maybe(word<'DRY' | 'SLURRY'>()),
    tapping: maybe(text),
    flowMlPerMin: maybe(number),
    pressureBar: maybe(number),
    packer: maybe(text),
    dyeTest: maybe(text),
  },
  mixContainer: happened,
  recordDrying: {
    ...happened,
    temperatureC: maybe(number),
    minutes: maybe(number),
    vacuum: maybe(flag),
    waterFraction: maybe(number),
    depthMm: maybe(number),
    minutesToClosed: maybe(number),
    fan: maybe(flag),
  },
  recordEquilibration: { ...happened, humidityPercent: number, temperatureC: number },
  recordWeighing: {
    ...happened,
    method,
    of: weighedPart,
    temperatureC: maybe(number),
    waterFraction: number,
    basis: maybe(basis),
  },
  recordCount: { ...happened, grams: maybe(number), plates: maybe(number), grossGrams: maybe(number) },
  recordLoss: { ...happened, grams: number, why: text },
  recordSolvent: { ...happened, what: maybe(text) },
  prewashPlates: {
    ...batch,
    solvent: text,
    direction: maybe(word<'ALONG_HEIGHT' | 'ALONG_WIDTH'>()),
    frontEdge: maybe(word<'CUT' | 'MARKED' | 'LEFT'>()),
    isMobilePhase: maybe(flag),
    tankLoads: maybe(number),
    mlPerLoad: maybe(number),
    tankMinutes: maybe(number),
  },
  recordSolventGone: { ...happened, by: maybe(text) },
  activatePlates: { ...batch, temperatureC: number, minutes: number, vacuum: maybe(flag), oven: maybe(text) },
  equilibratePlates: {
    ...batch,
    salt: maybe(text),
    inRoom: maybe(text),
    temperatureC: maybe(number),
    hours: number,
  },
  /** As it was told before it said more; an act that still waits on this machine may be one. */
  preWash: { ...happened, solvent: maybe(text) },
  solventGone: happened,
  conditionColumn: {
    ...happened,
    mobilePhase: maybe(text),
    columnVolumes: maybe(number),
    minutes: maybe(number),
    flowMlPerMin: maybe(number),
  },
  interrupt: { ...happened, why: maybe(text) },
  combineContainers: { ...happened, into: text, grams: maybe(number) },
  spendOnCheck: { ...happened, grams: maybe(number), plates: maybe(number), what: maybe(text) },
  setHabit: { ...happened, timesADay: number, minutes: number },
  setScooping: { ...happened, scooping },
  finishContainer: happened,
  discardContainer: { ...happened, grams: maybe(number), plates: maybe(number), why: text },
} satisfies Record<string, Fields>;

export type EventName = keyof typeof events;
export type EventInput<N extends EventName> = InputOf<(typeof events)[N]>;

/** The mutation that tells an event. */
export const eventText = (name: EventName): string => actText(name, 'Recorded', recordedFields);

export const correctionFields = {
  event: text,
  void: maybe(flag),
  replacement: maybe({
    at: maybe(instant),
    note: maybe(text),
    grams: maybe(number),
    basis: maybe(basis),
    plates: maybe(number),
    grossGrams: maybe(number),
    room: maybe(text),
    closure: maybe(word<Closure>()),
    openMinutes: maybe(number),
    scooping: maybe(scooping),
    timesADay: maybe(number),
    minutes: maybe(number),
    depthMm: maybe(number),
    minutesToClosed: maybe(number),
    temperatureC: maybe(number),
    humidityPercent: maybe(number),
    waterFraction: maybe(number),
    startWaterFraction: maybe(number),
    method: maybe(method),
    of: maybe(weighedPart),
    what: maybe(text),
    why: maybe(text),
    solvent: maybe(text),
    mobilePhase: maybe(text),
    columnVolumes: maybe(number),
  }),
} satisfies Fields;
export const correctionText = actText('correctEvent', 'Recorded', recordedFields);
