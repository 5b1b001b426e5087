// What the page of needs tells the API.
import { act } from '../act/told.ts';
import { flag, instant, many, maybe, number, text, word } from '../shape.ts';
import type { Backing, NeedKind, Regime } from './questions.ts';

const kept = { needs: many({ id: text, at: instant, state: word<string>() }), notes: many(text) } as const;

const said = {
  lotNumber: maybe(text),
  room: maybe(text),
  note: maybe(text),
  priority: maybe(number),
  plates: maybe(number),
  backing: maybe(word<Backing>()),
  isForExtraction: maybe(flag),
  isPreWashed: maybe(flag),
  mobilePhase: maybe(text),
  regime: maybe(word<Regime>()),
  regimeHumidityPercent: maybe(number),
  dryGrams: maybe(number),
  limitWaterFraction: maybe(number),
  diameterMm: maybe(number),
  bedLengthMm: maybe(number),
  sampleMg: maybe(number),
  deltaRf: maybe(number),
  columnVolumes: maybe(number),
  flowMlPerMin: maybe(number),
};

export const addNeedAct = act(
  'addNeed',
  'NeedsKept',
  {
    kind: word<NeedKind>(),
    sorbent: text,
    at: instant,
    forWhom: text,
    ...said,
    weekdays: maybe(many(number)),
    untilDay: maybe(text),
  },
  kept,
);
export const setNeedAct = act(
  'setNeed',
  'NeedsKept',
  { id: text, sorbent: maybe(text), at: maybe(instant), forWhom: maybe(text), ...said },
  kept,
);
export const dropNeedAct = act('dropNeed', 'NeedsKept', { id: text, isSeries: maybe(flag) }, kept);
export const restoreNeedAct = act('restoreNeed', 'NeedsKept', { id: text }, kept);
export const copyNeedsAct = act('copyNeeds', 'NeedsKept', { fromDay: text, toDay: text, ids: maybe(many(text)) }, kept);
/** Needs of a file, all or none. */
export const addNeedsAct = act('addNeeds', 'NeedsKept', { text: text }, kept);
