// Stores a fit as the next version, and says which estimates stand on other numbers now and since when.
import { insertRows } from '../database/bulk.ts';
import type { Engine, Transaction } from '../database/client.ts';
import { markStaleFrom } from '../database/exposures.ts';
import { newestLearned, learnedRows, type LearnedRow } from '../database/learned.ts';
import { readerInside } from '../database/inside.ts';
import type { Taught } from '../science/calibration/taught.ts';
import { newId } from '../work.ts';
import type { Fit } from './fit.ts';

/** Stands in every version, also where nothing is left to learn from; names what the fit was made of. */
export const fitName = 'fit';

/** Versions that are kept, so that one can see what the last weighing changed. */
const kept = 5;

const factorColumns = {
  id: 'text',
  labId: 'text',
  factor: 'text',
  version: 'integer',
  lnValue: 'real',
  lnSd: 'real',
  madeAt: 'time',
  because: 'json',
} as const;

const weighingColumns = {
  eventId: 'text',
  labId: 'text',
  containerId: 'text',
  at: 'time',
  of: 'text',
  counts: 'text',
  found: 'real',
  noiseSd: 'real',
  expectedBefore: 'real',
  sdBefore: 'real',
  expectedNow: 'real',
  sigmas: 'real',
  why: 'text',
  bearsOn: 'json',
} as const;

/** Correlations to the sixth place: below that nothing changes, and a row is a third as long. */
const rounded = (row: Taught): Taught => ({
  ...row,
  because: {
    ...row.because,
    with: Object.fromEntries(Object.entries(row.because.with).map(([name, value]) => [name, Number(value.toFixed(6))])),
  },
});

const isOwn = (factor: string): boolean => /^(container|start|salt|receipt):/.test(factor);
const ownerOf = (factor: string): string => factor.slice(factor.indexOf(':') + 1).split('@')[0] ?? '';

/** Containers whose own factors changed; null where a factor that all share did. */
function movedBy(
  before: readonly LearnedRow[],
  after: readonly Pick<Taught, 'factor' | 'lnValue' | 'lnSd'>[],
): Set<string> | null {
  const [was, is] = [before, after].map(
    (rows) => new Map(rows.map(({ factor, lnValue, lnSd }) => [factor, [lnValue, lnSd]])),
  );
  const moved = new Set<string>();
  for (const name of new Set([...(was?.keys() ?? []), ...(is?.keys() ?? [])])) {
    if (name === fitName) continue;
    const [one, other] = [was?.get(name), is?.get(name)];
    if (one && other && one[0] === other[0] && one[1] === other[1]) continue;
    if (!isOwn(name)) return null;
    moved.add(ownerOf(name));
  }
  return moved;
}

/** Stores the fit; every estimate that stands on it becomes stale from its container's beginning. */
export async function stored(tx: Transaction, engine: Engine, labId: string, fit: Fit, now: Date): Promise<void> {
  const reader = readerInside(tx);
  const newest = await newestLearned(reader, labId);
  const before = newest ? await learnedRows(reader, labId, newest.version) : [];
  const version = (newest?.version ?? 0) + 1;
  const weighings = fit.weighings;
  const count = (what: string): number => weighings.filter(({ counts }) => counts === what).length;
  const head = {
    factor: fitName,
    lnValue: 0,
    lnSd: 0,
    because: {
      basis: fit.basis,
      weighings: count('USED') + count('CONFIRMED'),
      leftOut: count('LEFT_OUT'),
      iterations: fit.iterations,
    },
  };
  const rows = [head, ...fit.factors.map(rounded)].map((row) => ({ ...row, id: newId(), labId, version, madeAt: now }));
  const seen = await tx.learnedWeighing.findMany({
    where: { labId },
    select: { eventId: true, counts: true, containerId: true },
  });
  await insertRows<keyof typeof factorColumns>(tx, engine, { table: 'LearnedFactor', columns: factorColumns, rows });
  await tx.learnedFactor.deleteMany({ where: { labId, version: { lte: version - kept } } });
  await tx.learnedWeighing.deleteMany({ where: { labId } });
  await insertRows<keyof typeof weighingColumns>(tx, engine, {
    table: 'LearnedWeighing',
    columns: weighingColumns,
    rows: weighings.map((row) => ({ ...row, labId })),
  });
  const moved = movedBy(before, rows);
  const takenIn = (counts: string): boolean => counts !== 'UNUSABLE';
  const was = new Map(seen.map((one) => [one.eventId, takenIn(one.counts)]));
  const turned = weighings.filter(({ eventId, counts }) => (was.get(eventId) ?? false) !== takenIn(counts));
  const only = moved && [...new Set([...moved, ...turned.map(({ containerId }) => containerId)])];
  const concerned = await tx.container.findMany({
    where: { labId, isVoid: false, ...(only && { id: { in: only } }) },
    select: { id: true, cameInAt: true },
  });
  await markStaleFrom(
    tx,
    engine,
    concerned.map(({ id, cameInAt }) => [id, cameInAt.getTime()] as const),
  );
}
