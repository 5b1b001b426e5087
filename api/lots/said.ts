// What may be said of runs, checks and decisions, with the words of a refusal.
import { z } from 'zod';
import { said } from '../stock/service.ts';

export const retentions = ['RF', 'RETENTION_FACTOR', 'COLUMN_VOLUMES'] as const;
export type Retention = (typeof retentions)[number];
export const chambers = ['TWIN_TROUGH', 'FLAT_BOTTOM', 'SANDWICH', 'AUTOMATIC', 'JAR'] as const;
export const regimes = ['DRY_UNTIL_SPOTTED', 'EQUILIBRATED'] as const;
export const outcomes = ['ACCEPTED', 'REJECTED'] as const;

const short = (what: string) => z.string(what).trim().min(1, what).max(60, 'at most 60 signs');
const mm = z.number('mm').min(-10_000, 'mm').max(10_000, 'at most 10000 mm');

/** How a run was made; in a check, what is said for all of them. */
export const conditions = {
  chamber: z.enum(chambers, chambers.join(', ')).nullish(),
  isLined: z.boolean('true or false').nullish(),
  saturationMinutes: said.minutes.nullish(),
  eluent: said.name.nullish(),
  eluentBatch: said.name.nullish(),
  stabiliser: said.name.nullish(),
  temperatureC: said.celsius.nullish(),
  distanceMm: said.mm.nullish(),
  humidityPercent: said.percent.nullish(),
  room: said.name.nullish(),
  regime: z.enum(regimes, regimes.join(', ')).nullish(),
  by: said.name.nullish(),
};

export const spotSaid = z.object({
  compound: short('the name of the compound'),
  value: z.number('the Rf or retention read').nullish(),
  spotMm: mm.nullish(),
  frontMm: mm.nullish(),
});
export type SpotSaid = z.output<typeof spotSaid>;

/** More spots on one plate are refused. */
export const mostSpots = 60;
/** More runs at once are refused. */
export const mostRuns = 200;

const runFields = {
  ...conditions,
  lotNumber: said.name.nullish(),
  label: said.label.nullish(),
  at: said.at,
  tank: short('the tank').nullish(),
  plate: short('the plate’s mark').nullish(),
  box: short('the box').nullish(),
  waterFraction: said.waterFraction.nullish(),
  spots: z
    .array(spotSaid, 'spots, each with its compound')
    .min(1, 'one spot or more')
    .max(mostSpots, `at most ${mostSpots} spots`),
  note: said.text,
};
export const runSaid = z.object(runFields);
export type RunSaid = z.output<typeof runSaid>;

const margin = z.number('a difference').positive('more than 0').max(100, 'at most 100');

const table = z
  .string('a table as text')
  .max(400_000, 'at most 400000 signs')
  .transform((text) => (text.trim() === '' ? null : text))
  .nullish();

export const lotCheckSaid = z.object({
  ...conditions,
  sorbent: said.name.nullish(),
  oldLotNumber: said.name.nullish(),
  newLotNumber: said.name.nullish(),
  check: z.string('the id of a lot check').nullish(),
  retention: z.enum(retentions, retentions.join(', ')).nullish(),
  margin: margin.nullish(),
  at: said.at,
  runs: z.array(runSaid, 'runs').max(mostRuns, `at most ${mostRuns} runs at once`).nullish(),
  table,
  note: said.text,
  clientKey: said.clientKey,
});
export type LotCheckSaid = z.output<typeof lotCheckSaid>;

export const dailyCheckSaid = z.object({
  ...runFields,
  sorbent: said.name.nullish(),
  retention: z.enum(retentions, retentions.join(', ')).nullish(),
  clientKey: said.clientKey,
});
export type DailyCheckSaid = z.output<typeof dailyCheckSaid>;

export const dailyTableSaid = z.object({
  ...conditions,
  sorbent: said.name,
  retention: z.enum(retentions, retentions.join(', ')).nullish(),
  table: z.string('a table as text').trim().min(1, 'a table as text').max(400_000, 'at most 400000 signs'),
  clientKey: said.clientKey,
});

export const decideSaid = z.object({
  sorbent: said.name,
  lotNumber: said.name,
  outcome: z.enum(outcomes, outcomes.join(', ')),
  why: z.string('why').trim().min(3, 'why, in a few words').max(500, 'at most 500 signs'),
  check: z.string('the id of a lot check').nullish(),
  clientKey: said.clientKey,
});

const which = (what: string) => z.string(`the id of ${what}`);
export const checkBackSaid = z.object({ check: which('a lot check'), clientKey: said.clientKey });
export const runBackSaid = z.object({ run: which('a run'), clientKey: said.clientKey });
/** What one act wrote at most, by a form and a table together. */
const mostBack = 2 * mostRuns;
export const runsBackSaid = z.object({
  runs: z.array(which('a run'), 'the ids of runs').min(1, 'one run or more').max(mostBack, `at most ${mostBack} runs`),
  clientKey: said.clientKey,
});
export const decisionBackSaid = z.object({ decision: which('a decision'), clientKey: said.clientKey });

const step = z.number('a step').min(0.0001, '0.0001 or more').max(10, 'at most 10');
export const checkSettingsSaid = z.object({
  marginRf: margin.max(0.5, 'at most 0.5').nullish(),
  marginColumn: margin.nullish(),
  readingStepRf: step.max(0.1, 'at most 0.1').nullish(),
  readingStepColumn: step.nullish(),
  clientKey: said.clientKey,
});
