// The lab's own choices put right: checked, written, and whatever rests on them estimated anew.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { markStaleFrom } from '../database/exposures.ts';
import { invalid, missing } from '../errors.ts';
import { leastHoodHoursSaid, usualLeastHoodHours } from '../stock/service.ts';
import { write, type Work } from '../work.ts';
import { usualHours } from './hours.ts';
import { refresh } from './service.ts';
import { choices, usualSettings } from './settings.ts';

const chance = z.number('a chance').min(0.01, '0.01 or more').max(0.99, '0.99 or less');
const clock = z.string('a time such as 08:00').regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time such as 08:00');

/** Each may be left out (stays) or null (back to its default). */
export const labSettingsSaid = z.object({
  name: z.string('a name').trim().min(1, 'a name').max(120, 'at most 120 signs').nullish(),
  redryChance: chance.nullish(),
  useSoonChance: chance.nullish(),
  useSoonHours: z.number('hours').min(0, '0 h or more').max(2160, 'at most 2160 h (90 days)').nullish(),
  tooDryChance: chance.nullish(),
  scoopGrams: z.number('grams').min(0.1, '0.1 g or more').max(10_000, 'at most 10000 g').nullish(),
  topMm: z.number('mm').min(1, '1 mm or more').max(200, 'at most 200 mm').nullish(),
  filmMmPerS: z.number('mm/s').min(0.5, '0.5 mm/s or more').max(30, 'at most 30 mm/s').nullish(),
  pressurePa: z.number('Pa').min(50_000, '50000 Pa or more').max(110_000, 'at most 110000 Pa').nullish(),
  workingFrom: clock.nullish(),
  workingTo: clock.nullish(),
  workingDays: z
    .array(z.int('Monday 1 to Sunday 7').min(1, 'Monday 1 to Sunday 7').max(7, 'Monday 1 to Sunday 7'))
    .min(1, 'at least one working day')
    .max(7, 'at most seven days')
    .nullish(),
  desiccantDays: z.int('a whole number of days').min(1, '1 day or more').max(365, 'at most 365 days').nullish(),
  leastHoodHours: leastHoodHoursSaid.nullish(),
  equilibratedBandPercent: z.number('% RH').min(1, '1 % RH or more').max(30, 'at most 30 % RH').nullish(),
  clientKey: z.string().nullish(),
});
type LabSettingsSaid = z.output<typeof labSettingsSaid>;

/** After so many days a desiccant is due, until the lab says otherwise (invented default). */
const usualDesiccantDays = 30;
const everyDay = [1, 2, 3, 4, 5, 6, 7];

const stored = z
  .object({
    ...choices.shape,
    workingHours: z.object({ from: z.string(), to: z.string() }),
    workingDays: z.array(z.number()).min(1),
    desiccantDays: z.number(),
    leastHoodHours: z.number(),
  })
  .partial();

/** What counts now, and which of it the lab has set itself. */
export function labSettingsOf(settings: unknown) {
  const read = stored.safeParse(settings);
  const set = read.success ? read.data : {};
  const { workingHours = usualHours, workingDays = everyDay, desiccantDays = usualDesiccantDays, ...more } = set;
  const { leastHoodHours = usualLeastHoodHours, ...rest } = more;
  const own = Object.keys(set).flatMap((name) => (name === 'workingHours' ? ['workingFrom', 'workingTo'] : [name]));
  return {
    ...usualSettings,
    ...rest,
    workingFrom: workingHours.from,
    workingTo: workingHours.to,
    workingDays: [...new Set(workingDays)].sort((one, other) => one - other),
    desiccantDays,
    leastHoodHours,
    own,
  };
}
export type LabSettings = ReturnType<typeof labSettingsOf>;

/** These only judge what was estimated; the others change the water itself. */
const judging: ReadonlySet<string> = new Set([
  'redryChance',
  'useSoonChance',
  'useSoonHours',
  'tooDryChance',
  'topMm',
  'equilibratedBandPercent',
]);
/** Nothing is estimated by these. */
const beside: ReadonlySet<string> = new Set(['desiccantDays', 'leastHoodHours']);

type Plain = Record<string, unknown>;

function nextSettings(before: Plain, said: LabSettingsSaid): Plain {
  const { name: _, clientKey: __, workingFrom, workingTo, ...rest } = said;
  const next: Plain = { ...before };
  for (const [key, value] of Object.entries(rest)) {
    if (value === null) delete next[key];
    else if (value !== undefined) next[key] = value;
  }
  if (workingFrom !== undefined || workingTo !== undefined) {
    const now = labSettingsOf(before);
    const from = workingFrom === undefined ? now.workingFrom : (workingFrom ?? usualHours.from);
    const to = workingTo === undefined ? now.workingTo : (workingTo ?? usualHours.to);
    if (from === to) throw invalid('input.workingTo', to, `another time than ${from}`);
    if (from === usualHours.from && to === usualHours.to) delete next['workingHours'];
    else next['workingHours'] = { from, to };
  }
  const { useSoonChance, redryChance } = labSettingsOf(next);
  if (useSoonChance > redryChance) {
    const path = said.useSoonChance == null ? 'input.redryChance' : 'input.useSoonChance';
    const expected = 'use soon at a smaller chance than redry, or the same';
    throw invalid(path, said.useSoonChance ?? redryChance, expected);
  }
  return next;
}

async function staleLab(context: Context, work: Work, since: 'beginning' | 'now'): Promise<string[]> {
  const touched = await work.tx.container.findMany({
    where: { labId: work.labId, isVoid: false, ...(since === 'now' ? { finishedAt: null } : {}) },
    select: { id: true, cameInAt: true },
  });
  const instants = touched.map(({ id, cameInAt }): [string, number] => [
    id,
    since === 'now' ? work.now.getTime() : cameInAt.getTime(),
  ]);
  await markStaleFrom(work.tx, context.database.engine, instants);
  return touched.map(({ id }) => id);
}

/** Writes the lab's choices. Estimates of a small lab follow before the answer, those of a large one within minutes. */
export async function labSettingsSet(context: Context, input: LabSettingsSaid): Promise<{ labId: string }> {
  let touched: string[] = [];
  const answer = await write({ ...context, estimateLater: true }, 'setLabSettings', input, async (work) => {
    const lab = await work.tx.lab.findUniqueOrThrow({ where: { id: work.labId } });
    const before = (lab.settings ?? {}) as Plain;
    if (Object.keys(input).every((key) => key === 'clientKey')) throw missing('input', 'what the lab sets');
    const settings = nextSettings(before, input);
    const name = input.name ?? lab.name;
    await work.tx.lab.update({ where: { id: lab.id }, data: { name, settings: settings as Record<string, string> } });
    work.changed('Lab', lab.id, 'CHANGED');
    const keys = [...new Set([...Object.keys(before), ...Object.keys(settings)])];
    const changed = keys.filter(
      (key) => !beside.has(key) && JSON.stringify(before[key]) !== JSON.stringify(settings[key]),
    );
    touched =
      changed.length === 0
        ? []
        : await staleLab(context, work, changed.every((key) => judging.has(key)) ? 'now' : 'beginning');
    return { labId: lab.id };
  });
  const { name, settings } = await context.database.read.lab.findUniqueOrThrow({ where: { id: context.lab.id } });
  // One process, one lab in memory: the passes and every later request read it there.
  Object.assign(context.lab, { name, settings });
  if (!context.estimateLater) await refresh(context, touched);
  return answer;
}
