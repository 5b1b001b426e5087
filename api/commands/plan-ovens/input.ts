// What the oven planner's command takes: ovens, jobs, what may not share, what is fixed; checked before anything is planned.
import { z } from 'zod';
import { refusal } from '../../bad-input.ts';
import { objectiveNames } from '../../science/ovens/objective.ts';
import { consistent } from './consistent.ts';

// Each schema's error is the end of the sentence: "invalid jobs[0].area: -3, expected …".
const most = 10_000_000;
const whole = (expected: string) =>
  z.int({ error: expected }).min(-most, { error: expected }).max(most, { error: expected });
const atLeast = (low: number, expected: string) =>
  z.number({ error: expected }).min(low, { error: expected }).max(most, { error: expected });
const wholeAtLeast = (low: number, expected: string) =>
  z.int({ error: expected }).min(low, { error: expected }).max(most, { error: expected });
const above = (expected: string) =>
  z.number({ error: expected }).positive({ error: expected }).max(most, { error: expected });
const object = <S extends z.core.$ZodLooseShape>(shape: S) => z.strictObject(shape, { error: 'an object' });
const name = z
  .string({ error: 'a name' })
  .min(1, { error: 'a name' })
  .max(200, { error: 'a name of at most 200 characters' });
const list = <S extends z.ZodType>(of: S, expected: string) => z.array(of, { error: expected });
const pair = <S extends z.ZodType>(of: S, expected: string) => z.tuple([of, of], { error: expected });

const instant = whole('a whole minute');
const span = pair(instant, '[from, to] in whole minutes').refine(([from, to]) => from <= to, {
  error: '[from, to], from before to',
});
const degrees = z
  .number({ error: 'a temperature in °C' })
  .min(-100, { error: 'a temperature in °C' })
  .max(2000, { error: 'a temperature in °C' });
const window = pair(degrees, '[lowest, highest] in °C').refine(([low, high]) => low <= high, {
  error: '[lowest, highest] in °C, the lower one first',
});
const minutes = wholeAtLeast(1, 'whole minutes, 1 or more');

const oven = object({
  id: name,
  area: above('an area above 0'),
  temperatureC: window.optional(),
  startTemperatureC: degrees.optional(),
  heatMinutesPerC: atLeast(0, 'minutes per °C, 0 or more').optional(),
  coolMinutesPerC: atLeast(0, 'minutes per °C, 0 or more').optional(),
  doorMinutes: wholeAtLeast(0, 'whole minutes, 0 or more').optional(),
  open: list(span, 'a list of [from, to] when someone is there').optional(),
  unattended: z.boolean({ error: 'true or false' }).optional(),
  freeAt: instant.optional(),
  startFamily: name.optional(),
  outOfOrder: list(span, 'a list of [from, to] when it is out of order').optional(),
});

const job = object({
  id: name,
  minutes: z.union([minutes, pair(minutes, '[least, most] in whole minutes')], {
    error: 'whole minutes, or [least, most] of them',
  }),
  temperatureC: window.optional(),
  area: above('an area above 0'),
  readyAt: instant.optional(),
  dueAt: instant.optional(),
  weight: atLeast(0, 'a weight, 0 or more').optional(),
  family: name.optional(),
  ovens: list(name, 'a list of ovens').optional(),
});

const fixed = object({
  oven: name,
  jobs: list(name, 'a list of jobs'),
  start: instant,
  end: instant,
  temperatureC: degrees.optional(),
});

const table = (of: z.ZodType<number>) =>
  list(list(of, 'a row of numbers'), 'a list of rows, one for each family before');
const weight = atLeast(0, 'a number, 0 or more').optional();

const planInput = object({
  timeUnit: z.enum(['minutes', 'minute', 'min'], { error: 'minutes: all times are whole minutes' }).optional(),
  objective: z.enum(objectiveNames, { error: `one of ${objectiveNames.join(', ')}` }).optional(),
  ovens: list(oven, 'a list of ovens').min(1, { error: 'at least one oven' }).max(30, { error: 'at most 30 ovens' }),
  jobs: list(job, 'a list of jobs').max(2000, { error: 'at most 2000 jobs' }),
  incompatible: list(pair(name, 'two families that may not share a batch'), 'a list of pairs of families').optional(),
  fixed: list(fixed, 'a list of batches that are fixed').optional(),
  setup: object({
    families: list(name, 'a list of families'),
    minutes: table(wholeAtLeast(0, 'whole minutes, 0 or more')),
    cost: table(atLeast(0, 'a cost, 0 or more')).optional(),
  }).optional(),
  familiesMix: z.boolean({ error: 'true or false' }).optional(),
  weights: object({ lateJobs: weight, ovenMinutes: weight, setupMinutes: weight, setupCost: weight }).optional(),
});

export type PlanInput = z.infer<typeof planInput>;

/** What a parsed file asks for; throws one sentence about the first thing that is wrong, with its path. */
export function planOvensInput(raw: unknown): PlanInput {
  const parsed = planInput.superRefine(consistent).safeParse(raw);
  if (!parsed.success) throw refusal(raw, parsed.error.issues);
  return parsed.data;
}
