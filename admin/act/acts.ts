// Every act the admin can tell the API: the fields of its input, as the schema names them, and what it answers.
import { actText } from '../ask.ts';
import { recordedFields } from '../fields.ts';
import type { Closure } from '../say/words.ts';
import { flag, instant, maybe, number, text, word, type Fields, type InputOf } from '../shape.ts';

const closure = word<'LOOSELY_COVERED' | 'WELL_CLOSED' | 'TIGHT' | 'SEALED'>();
const happened = { label: text, at: maybe(instant), note: maybe(text) };

/** Acts that are events of a container's timeline; each answers `Recorded`. */
export const events = {
  openContainer: happened,
  closeContainer: { ...happened, closure: maybe(closure) },
  moveContainer: { ...happened, room: text },
  takePortion: { ...happened, grams: number, vessel: maybe(text), room: maybe(text), closure: maybe(word<Closure>()) },
  takePlates: { ...happened, plates: number, room: maybe(text) },
  packColumn: { ...happened, grams: maybe(number), innerDiameterMm: number, bedLengthMm: number },
  mixContainer: happened,
  recordDrying: {
    ...happened,
    temperatureC: maybe(number),
    minutes: maybe(number),
    waterFraction: maybe(number),
  },
  recordEquilibration: { ...happened, humidityPercent: number, temperatureC: number },
  recordWeighing: {
    ...happened,
    method: word<'LOSS_ON_DRYING' | 'KARL_FISCHER'>(),
    of: word<'WHOLE' | 'SCOOP'>(),
    temperatureC: maybe(number),
    waterFraction: number,
    basis: maybe(word<'DRY' | 'AS_RECEIVED'>()),
  },
  recordCount: { ...happened, grams: maybe(number), plates: maybe(number), grossGrams: maybe(number) },
  recordLoss: { ...happened, grams: number, why: text },
  recordSolvent: happened,
  preWash: happened,
  solventGone: happened,
  conditionColumn: happened,
  spendOnCheck: { ...happened, grams: maybe(number), plates: maybe(number) },
  setHabit: { ...happened, timesADay: number, minutes: number },
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
    plates: maybe(number),
    room: maybe(text),
    closure: maybe(word<Closure>()),
    minutes: maybe(number),
    temperatureC: maybe(number),
    humidityPercent: maybe(number),
    waterFraction: maybe(number),
  }),
} satisfies Fields;
export const correctionText = actText('correctEvent', 'Recorded', recordedFields);
