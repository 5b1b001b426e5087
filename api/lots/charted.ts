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
/** Fewer than these give limits that still move much. */
const fewForLimits = 12;
const usualLast = 120;
const mostLast = 1000;
/** Runs looked at for one compound. */
const mostRows = 5000;

export interface Charted {
  readonly sorbent: Sorbent;
  readonly compound: string;
  readonly retention: Retention;
  readonly points: readonly { readonly run: RetentionRun; readonly value: number }[];
  /** Null of fewer than two values. */
  readonly chart: Chart | null;
  readonly sentence: string;
}

export interface ChartAsked {
  readonly sorbent: string;
  readonly compound: string;
  readonly retention?: Retention | null | undefined;
  readonly last?: number | null | undefined;
  readonly restsOn?: number | null | undefined;
}

/** Runs of a sorbent in which the compound was run, in the order in which they were made, with the mean of its spots. */
export async function valuesOf(
  { database, lab }: Context,
  sorbentId: string,
  compound: string,
  retention: Retention,
): Promise<{ run: RetentionRun; value: number }[]> {
  const rows = await database.read.retentionRun.findMany({
    where: {
      labId: lab.id,
      sorbentId,
      retention,
      takenBackAt: null,
      OR: [{ checkId: null }, { check: { takenBackAt: null } }],
    },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take: mostRows,
  });
  const wanted = compound.trim().toLowerCase();
  // What was run at one time stands lot by lot.
  const inOrder = rows.sort(
    (one, other) => one.at.getTime() - other.at.getTime() || (one.lotId < other.lotId ? -1 : 1),
  );
  return inOrder.flatMap((run) => {
    const spots = spotsOf(run.spots);
    const name = spots.find((spot) => spot.compound.toLowerCase() === wanted)?.compound;
    const value = name === undefined ? null : meanOf(spots, name);
    return value === null ? [] : [{ run, value }];
  });
}

export async function charted(context: Context, asked: ChartAsked): Promise<Charted> {
  const { database, lab } = context;
  const sorbent = await sorbentOf({ tx: database.read, labId: lab.id }, asked.sorbent, 'sorbent');
  const retention = asked.retention ?? 'RF';
  const last = Math.min(Math.max(asked.last ?? usualLast, 1), mostLast);
  const points = (await valuesOf(context, sorbent.id, asked.compound, retention)).slice(-last);
  const rests = Math.min(Math.max(asked.restsOn ?? usualRests, 2), points.length);
  const chart = chartOf(
    points.map(({ run, value }) => ({ value, lot: run.lotId })),
    rests,
  );
  return {
    sorbent,
    compound: asked.compound,
    retention,
    points,
    chart,
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
  const early = chart.rests < fewForLimits ? ` Limits rest on ${chart.rests} values yet and will still move.` : '';
  const outside = out === 0 ? 'none outside' : `${out} outside`;
  return `${count} values, ${outside} ${figure(low)} to ${figure(high)} ${unitOf[retention]} about ${figure(centre)}.${now}${drifts}${early}`;
}
