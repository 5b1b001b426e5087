/** UTC instants of a section's rows: order of dates and zone decided, the repeated autumn hour told apart by the order of the rows. */
import type { DateOrder, LeftOut } from './file.ts';
import type { Rows } from './gather.ts';
import { leaveOutMisplaced } from './misplaced.ts';
import type { Dates } from './moment.ts';
import { midnightOf } from './order.ts';
import { wallClock } from './zone.ts';
import type { Zone } from './zone.ts';

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

/** `at` is NaN for a row that is left out. `skipped` rows name an hour that the zone's clocks never showed. */
export type Instants = { at: Float64Array; leftOut: LeftOut[]; skipped: number };

export function instantsOf(rows: Rows, dates: Dates, order: DateOrder, zone: Zone): Instants {
  const midnights = Float64Array.from(dates.written, (date) => midnightOf(date, order));
  const texts = [...dates.places.keys()];
  const clock = wallClock(zone);
  const at = new Float64Array(rows.line.length);
  const leftOut: LeftOut[] = [];
  const twice: Twice[] = [];
  let skipped = 0;
  for (let row = 0; row < at.length; row++) {
    const place = rows.date[row] ?? -1;
    const wall = (rows.ms[row] ?? NaN) + (place >= 0 ? (midnights[place] ?? NaN) : 0);
    const offset = rows.offset[row] ?? NaN;
    const line = rows.line[row] ?? 0;
    at[row] = NaN;
    if (Number.isNaN(wall)) leftOut.push({ line, why: `${texts[place] ?? 'its date'} is no date from 1990 to 2099` });
    else if (rows.absolute) at[row] = wall;
    else if (!Number.isNaN(offset)) at[row] = wall - offset * MINUTE_MS;
    else {
      const instant = clock(wall);
      if ('once' in instant) at[row] = instant.once;
      else if ('twice' in instant) twice.push({ row, wall, early: instant.twice[0], late: instant.twice[1] });
      else {
        skipped++;
        leftOut.push({ line, why: `${wallText(wall)} was skipped in ${zone.name}: clocks went forward` });
      }
    }
  }
  for (const run of runsOf(twice, rows)) tellApart(run, at);
  leftOut.push(...leaveOutMisplaced(rows, at));
  return { at, leftOut, skipped };
}

type Twice = { row: number; wall: number; early: number; late: number };

/** Ambiguous rows of one sensor and one autumn night, in order of time even where the file runs backwards. */
function runsOf(twice: readonly Twice[], rows: Rows): Twice[][] {
  const runs = new Map<string, Twice[]>();
  for (const one of twice) {
    const key = `${rows.group[one.row] ?? 0} ${Math.floor(one.early / DAY_MS)}`;
    const run = runs.get(key);
    if (run) run.push(one);
    else runs.set(key, [one]);
  }
  const backwards = runsBackwards(rows);
  return [...runs.values()].map((run) => (backwards ? run.reverse() : run));
}

/** Where the wall clock steps back, or an hourly one stands still, the second pass begins. */
function tellApart(run: readonly Twice[], at: Float64Array): void {
  const stepBack = run.findIndex((one, index) => index > 0 && one.wall < (run[index - 1]?.wall ?? one.wall));
  const standsStill = new Set(run.map(({ wall }) => wall)).size === 1 && run.length > 1 ? 1 : -1;
  const second = stepBack > 0 ? stepBack : standsStill;
  run.forEach(({ row, early, late }, index) => {
    at[row] = second > 0 && index >= second ? late : early;
  });
}

/** Newest first: more steps back than forward, counted on whole wall-clock times. */
function runsBackwards(rows: Rows): boolean {
  let steps = 0;
  for (let row = 1; row < rows.line.length; row++) {
    const days = (rows.date[row] ?? 0) - (rows.date[row - 1] ?? 0);
    if (days === 0 && rows.group[row] === rows.group[row - 1])
      steps += Math.sign((rows.ms[row] ?? 0) - (rows.ms[row - 1] ?? 0));
  }
  return steps < 0;
}

function wallText(ms: number): string {
  return new Date(ms).toISOString().slice(0, 16).replace('T', ' ');
}
