// The chart of one sorbent and compound over time, daily checks and lot checks alike, with lots marked.
import type { Context } from '../context.ts';
import type { RetentionRun, Sorbent } from '../database/generated/sqlite/client.ts';
import { chartOf, type Chart } from '../science/charts/chart.ts';
import { sorbentOf } from '../stock/service.ts';
import type { Retention } from './said.ts';
import { meanOf, spotsOf } from './spots.ts';
import { figure, unitOf } from './words.ts';

/** Limits rest on so many of the first values shown, where nobody says otherwise. */
const usualRests = 20;
/** Fewer than these give limits that still move much; an invented default. */
export const fewestForLimits = 12;
const usualLast = 120;
/** Runs read in one go for the values of a compound; most of a day's check have it. */
const rowsAtOnce = 250;
/** Looked through at most. */
const mostRows = 2000;

export interface Point {
  readonly run: RetentionRun;
  readonly value: number;
}

export interface Charted {
  readonly sorbent: Sorbent;
  readonly compound: string;
  readonly retention: Retention;
  readonly points: readonly Point[];
  /** Null of fewer than two values. */
  readonly chart: Chart | null;
  /** Limits rest on too few values to say much yet. */
  readonly tooFew: boolean;
  readonly sentence: string;
}

export interface ChartAsked {
  readonly sorbent: string;
  readonly compound: string;
  readonly retention?: Retention | null | undefined;
  readonly last?: number | null | undefined;
  readonly restsOn?: number | null | undefined;
}

/** By time; what was run at one time stands lot by lot. */
const inOrder = ({ run: one }: Point, { run: other }: Point): number => {
  const [first, second] = [`${one.lotId} ${one.id}`, `${other.lotId} ${other.id}`];
  return one.at.getTime() - other.at.getTime() || (first < second ? -1 : first > second ? 1 : 0);
};

/** The newest runs of a sorbent in which the compound was run, by time, with the mean of its spots. */
export async function valuesOf(
  { database, lab }: Context,
  { sorbentId, compound, retention }: { sorbentId: string; compound: string; retention: Retention },
  last: number,
): Promise<Point[]> {
  const found: Point[] = [];
  let before: string | null = null;
  for (let looked = 0; found.length < last && looked < mostRows; looked += rowsAtOnce) {
    const rows: RetentionRun[] = await database.read.retentionRun.findMany({
      where: {
        ...{ labId: lab.id, sorbentId, retention, takenBackAt: null },
        OR: [{ checkId: null }, { check: { takenBackAt: null } }],
      },
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
      take: rowsAtOnce,
      ...(before !== null && { cursor: { id: before }, skip: 1 }),
    });
    for (const run of rows) {
      const value = meanOf(spotsOf(run.spots), compound);
      if (value !== null) found.push({ run, value });
    }
    before = rows.at(-1)?.id ?? null;
    if (rows.length < rowsAtOnce) break;
  }
  return found.slice(0, last).sort(inOrder);
}

export async function charted(context: Context, asked: ChartAsked): Promise<Charted> {
  const { database, lab } = context;
  const sorbent = await sorbentOf({ tx: database.read, labId: lab.id }, asked.sorbent, 'sorbent');
  const retention = asked.retention ?? 'RF';
  const of = { sorbentId: sorbent.id, compound: asked.compound, retention };
  const points = await valuesOf(context, of, asked.last ?? usualLast);
  const rests = Math.min(Math.max(asked.restsOn ?? usualRests, 2), points.length);
  const chart = chartOf(
    points.map(({ run, value }) => ({ value, lot: run.lotId })),
    rests,
  );
  return {
    ...{ sorbent, compound: asked.compound, retention, points, chart },
    tooFew: (chart?.rests ?? points.length) < fewestForLimits,
    sentence: sentenceOf(points.length, chart, retention),
  };
}

/** What the chart says, for who does not see it. */
function sentenceOf(count: number, chart: Chart | null, retention: Retention): string {
  if (!chart) return count === 0 ? 'Nothing was run of it yet.' : 'One value; limits need two.';
  const out = chart.points.filter(({ valueOutside }) => valueOutside).length;
  const newest = chart.points.at(-1);
  const { low, centre, high } = chart.values;
  const drifts = newest?.averageOutside
    ? ` The weighted average has left its limits: it drifts ${newest.average > centre ? 'up' : 'down'}.`
    : '';
  const now = newest?.valueOutside ? ` The newest, ${figure(newest.value)}, is outside.` : '';
  const early = chart.rests < fewestForLimits ? ` Limits rest on ${chart.rests} values yet and will still move.` : '';
  const outside = out === 0 ? 'none outside' : `${out} outside`;
  return `${count} values, ${outside} ${figure(low)} to ${figure(high)} ${unitOf[retention]} about ${figure(centre)}.${now}${drifts}${early}`;
}
