// What the daily check tells.
import { act } from '../act/told.ts';
import { instant, many, maybe, number, text, word } from '../shape.ts';
import type { Retention } from './questions.ts';

const kept = { runs: many({ id: text, spots: many({ compound: text, value: number }) }) };
export const recordDailyAct = act(
  'recordDailyCheck',
  'RunsKept',
  {
    label: maybe(text),
    sorbent: maybe(text),
    lotNumber: maybe(text),
    retention: maybe(word<Retention>()),
    at: maybe(instant),
    note: maybe(text),
    spots: many({ compound: text, value: maybe(number) }),
  },
  kept,
);
export const recordDailyTableAct = act(
  'recordDailyChecks',
  'RunsKept',
  { sorbent: text, retention: maybe(word<Retention>()), table: text },
  kept,
);
export const takeRunBackAct = act('takeRunBack', 'RunsKept', { run: text }, kept);
export const restoreRunAct = act('restoreRun', 'RunsKept', { run: text }, kept);
export const takeRunsBackAct = act('takeRunsBack', 'RunsKept', { runs: many(text) }, kept);
