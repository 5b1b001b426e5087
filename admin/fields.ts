// What is asked of a container wherever it is a line, and what every recorded act answers.
import type { State } from './say/state.ts';
import type { Closure, Kind } from './say/words.ts';
import { flag, instant, many, maybe, number, text, word, type Answer } from './shape.ts';

export const exposureFields = {
  asOf: instant,
  state: word<State>(),
  reason: text,
  meanWaterFraction: maybe(number),
  scoopWaterFraction: maybe(number),
  scoopLow: maybe(number),
  scoopHigh: maybe(number),
  hoursToLimit: maybe(number),
  hoursToLimitClosed: maybe(number),
  upperWaterFraction: maybe(number),
  lowerWaterFraction: maybe(number),
};

export const lineFields = {
  id: text,
  label: text,
  kind: word<Kind>(),
  isOpen: flag,
  openedAt: maybe(instant),
  closure: word<Closure>(),
  usualClosure: word<Closure>(),
  finishedAt: maybe(instant),
  asReceivedGrams: number,
  dryGrams: number,
  freeDryGrams: number,
  sorbent: { name: text },
  lot: { lotNumber: text },
  room: { name: text },
  vessel: maybe({ name: text }),
  holds: many({ forWhat: text, dryGrams: maybe(number), plates: maybe(number), campaignId: maybe(text) }),
  keptWords: many(text),
  exposure: maybe(exposureFields),
  '... on PlateBox': { plates: number },
} as const;

export type Line = Answer<typeof lineFields>;
export type Exposure = Answer<typeof exposureFields>;

export const recordedFields = {
  event: { id: text, sentence: text, at: instant },
  container: lineFields,
  made: maybe({ label: text }),
  notes: many(text),
} as const;

export type Recorded = Answer<typeof recordedFields>;
