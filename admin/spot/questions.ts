// What the daily check and the charts ask: what was run last, on which containers it may be run, and a chart.
import { question } from '../ask.ts';
import { flag, given, instant, many, maybe, number, text, word, type Answer } from '../shape.ts';

export type Retention = 'RF' | 'RETENTION_FACTOR' | 'COLUMN_VOLUMES';

const run = {
  id: text,
  at: instant,
  sorbent: { name: text },
  lot: { lotNumber: text },
  container: maybe({ label: text }),
  ranBy: maybe({ shortName: text }),
  humidityPercent: maybe(number),
  waterFraction: maybe(number),
  check: maybe({ id: text }),
  spots: many({ compound: text, value: number }),
};
export type Run = Answer<typeof run>;

export const dailyQuestion = question<Record<string, never>>('Daily')({
  dailyChecks: given('first: 8', many(run)),
  referenceCompounds: many({ sorbent: { name: text }, compound: text, retention: word<Retention>(), runs: number }),
  boxes: given(
    'first: 100, filter: { kind: [PLATE_BOX], inUse: true }',
    { nodes: many({ label: text, sorbent: { name: text }, lot: { lotNumber: text } }) },
    'containers',
  ),
});
export type Daily = Answer<typeof dailyQuestion.shape>;
export type Box = Daily['boxes']['nodes'][number];
export type Reference = Daily['referenceCompounds'][number];

const limits = { low: number, centre: number, high: number };
export const chartQuestion = question<{ sorbent: string; compound: string; retention: string }>(
  'Chart',
  '$sorbent: String!, $compound: String!, $retention: Retention',
)({
  chart: given('sorbent: $sorbent, compound: $compound, retention: $retention', {
    sentence: text,
    restsOn: number,
    tooFewForLimits: flag,
    fewestForLimits: number,
    values: maybe(limits),
    ranges: maybe(limits),
    averages: maybe(limits),
    lots: many({ lot: { lotNumber: text }, from: number, to: number }),
    points: many({
      value: number,
      range: maybe(number),
      average: maybe(number),
      isValueOutside: flag,
      isRangeOutside: flag,
      isAverageOutside: flag,
      run,
    }),
  }),
});
export type Chart = Answer<typeof chartQuestion.shape>['chart'];

export const referencesQuestion = question<Record<string, never>>('References')({
  referenceCompounds: many({ sorbent: { name: text }, compound: text, retention: word<Retention>(), runs: number }),
});
