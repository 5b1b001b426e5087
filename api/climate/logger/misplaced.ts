/** Rows whose time was damaged: it does not fit where the row stands, and the place where it stands lacks just one row. */
import type { LeftOut } from './file.ts';
import type { Rows } from './gather.ts';

const DAY_MS = 86_400_000;

/** A row that leaps this far from neighbours that follow on each other within two days is a fault in any file. */
const LEAP_MS = 30 * DAY_MS;
const FOLLOWING_MS = 2 * DAY_MS;

/** The way a file runs: 1 forward, -1 newest first, 0 neither; its usual step [ms], or NaN where the steps differ. */
type Run = { direction: number; stepMs: number };

/** Marks such rows NaN in `at` and names them. A late row is none of them: where it stands, nothing is lacking. */
export function leaveOutMisplaced(rows: Rows, at: Float64Array): LeftOut[] {
  // Nearly every file is in order, and a million rows are looked at once instead of five times.
  if (isInOrder(at)) return [];
  return rowsByGroup(rows, at).flatMap((group) => misplacedIn(group, rows, at));
}

function isInOrder(at: Float64Array): boolean {
  let before = -Infinity;
  for (const here of at) {
    if (here < before) return false;
    if (here > before) before = here;
  }
  return true;
}

function rowsByGroup({ group }: Rows, at: Float64Array): Uint32Array[] {
  const groups = group.reduce((most, one) => Math.max(most, one + 1), 1);
  const timed = Uint32Array.from(at, (_, row) => row).filter((row) => !Number.isNaN(at[row] ?? NaN));
  if (groups === 1) return [timed];
  const sorted = Array.from({ length: groups }, (): number[] => []);
  for (const row of timed) sorted[group[row] ?? 0]?.push(row);
  return sorted.map((of) => Uint32Array.from(of));
}

function misplacedIn(group: Uint32Array, rows: Rows, at: Float64Array): LeftOut[] {
  const times = Float64Array.from(group, (row) => at[row] ?? NaN);
  const run = runOf(times);
  if (run.direction === 0) return [];
  const leftOut: LeftOut[] = [];
  for (let place = 0; place < times.length; place++) {
    if (isInPlace(times, place, run)) continue;
    const row = group[place] ?? 0;
    at[row] = NaN;
    const when = new Date(times[place] ?? 0).toISOString().slice(0, 16).replace('T', ' ');
    leftOut.push({ line: rows.line[row] ?? 0, why: `its time, ${when} UTC, does not fit between the rows beside it` });
  }
  return leftOut;
}

function isInPlace(times: Float64Array, place: number, { direction, stepMs }: Run): boolean {
  const [here, before = NaN, after = NaN] = [times[place] ?? NaN, times[place - 1], times[place + 1]];
  const behind = (here - before) * direction < 0;
  const beyond = (after - here) * direction < 0;
  if (!behind && !beyond) return true;
  const hole = (after - before) * direction;
  if (hole > 1.5 * stepMs && hole < 2.5 * stepMs) return false;
  const far = (other: number): boolean => Math.abs(here - other) > LEAP_MS;
  if (place > 0 && place < times.length - 1) return !(far(before) && far(after) && Math.abs(hole) < FOLLOWING_MS);
  // At either end only a leap against time is a fault: a first test, weeks before the rest, is none.
  const [next, overNext] = place === 0 ? [after, times[2] ?? NaN] : [before, times[place - 2] ?? NaN];
  return !(far(next) && Math.abs(overNext - next) < FOLLOWING_MS);
}

/** Steps looked at to learn how a file runs. */
const LOOKED_AT = 2000;

function runOf(times: Float64Array): Run {
  const every = Math.max(1, Math.floor(times.length / LOOKED_AT));
  const steps: number[] = [];
  for (let place = 1; place < times.length; place += every)
    steps.push((times[place] ?? NaN) - (times[place - 1] ?? NaN));
  const forward = steps.filter((step) => step > 0).length;
  const back = steps.filter((step) => step < 0).length;
  const direction = forward >= 9 * back && forward > 1 ? 1 : back >= 9 * forward && back > 1 ? -1 : 0;
  const sizes = steps.map(Math.abs).sort((one, other) => one - other);
  const usual = sizes[Math.floor(sizes.length / 2)] ?? NaN;
  const alike = sizes.filter((size) => Math.abs(size - usual) <= usual * 0.2).length;
  return { direction, stepMs: alike >= sizes.length * 0.8 ? usual : NaN };
}
