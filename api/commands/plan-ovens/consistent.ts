// What must fit together in a file of ovens and jobs: names said once, names that are known, tables that are square.
import type { z } from 'zod';
import type { PlanInput } from './input.ts';

type Wrong = (path: PropertyKey[], message: string) => void;

function once(ids: readonly string[], of: string, wrong: Wrong): void {
  ids.forEach((id, i) => {
    if (ids.indexOf(id) < i) wrong([of, i, 'id'], 'a name that no other has');
  });
}

function setup({ setup: table, jobs, ovens }: PlanInput, wrong: Wrong): void {
  if (!table) return;
  const size = table.families.length;
  for (const key of ['minutes', 'cost'] as const) {
    const rows = table[key];
    if (!rows) continue;
    if (rows.length !== size) wrong(['setup', key], `${size} rows, one for each family`);
    rows.forEach((row, i) => {
      if (row.length !== size) wrong(['setup', key, i], `${size} numbers, one for each family`);
    });
  }
  const known = (family: string | undefined) => family !== undefined && table.families.includes(family);
  const expected = `one of ${table.families.join(', ')}`;
  jobs.forEach(({ family }, i) => {
    if (!known(family)) wrong(['jobs', i, 'family'], expected);
  });
  ovens.forEach(({ startFamily }, i) => {
    if (startFamily !== undefined && !known(startFamily)) wrong(['ovens', i, 'startFamily'], expected);
  });
}

function fixed(input: PlanInput, wrong: Wrong): void {
  const all = input.fixed ?? [];
  const seen = new Set<string>();
  all.forEach(({ oven, jobs, start, end }, i) => {
    if (!input.ovens.some(({ id }) => id === oven)) wrong(['fixed', i, 'oven'], 'the id of an oven');
    if (end < start) wrong(['fixed', i, 'end'], 'an end that is not before the start');
    jobs.forEach((job, k) => {
      if (!input.jobs.some(({ id }) => id === job)) wrong(['fixed', i, 'jobs', k], 'the id of a job');
      if (seen.has(job)) wrong(['fixed', i, 'jobs', k], 'a job that is in no other fixed batch');
      seen.add(job);
    });
    const other = all.findIndex((one, k) => k < i && one.oven === oven && one.start < end && one.end > start);
    if (other >= 0) wrong(['fixed', i, 'start'], `a time outside fixed[${other}], which is in the same oven`);
  });
}

/** Adds an issue for each thing that does not fit; each message is what would be right. */
export function consistent(input: PlanInput, context: z.core.$RefinementCtx<PlanInput>): void {
  const wrong: Wrong = (path, message) => {
    context.issues.push({ code: 'custom', path, message, input });
  };
  once(
    input.ovens.map(({ id }) => id),
    'ovens',
    wrong,
  );
  once(
    input.jobs.map(({ id }) => id),
    'jobs',
    wrong,
  );
  input.jobs.forEach(({ minutes, ovens }, i) => {
    if (typeof minutes !== 'number' && minutes[0] > minutes[1]) {
      wrong(['jobs', i, 'minutes'], '[least, most] in whole minutes, the smaller one first');
    }
    ovens?.forEach((id, k) => {
      if (!input.ovens.some((oven) => oven.id === id)) wrong(['jobs', i, 'ovens', k], 'the id of an oven');
    });
  });
  setup(input, wrong);
  fixed(input, wrong);
}
