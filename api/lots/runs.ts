// Runs are written down: of a check or of a day, each with what it ran on and around.
import type { Context } from '../context.ts';
import type { Lot, Prisma } from '../database/generated/sqlite/client.ts';
import { invalid } from '../errors.ts';
import { personOf } from '../stock/service.ts';
import { newId, type Work } from '../work.ts';
import { aroundOf, preparedAt, type Around } from './filled.ts';
import type { Retention, RunSaid } from './said.ts';
import { spotRead } from './spots.ts';

export interface Told {
  readonly run: RunSaid;
  /** Where in the input. */
  readonly path: string;
}
export interface Placed extends Told {
  readonly around: Around;
}

/** What was said for all of them, where a run says nothing itself. */
export function withCommon(run: RunSaid, common: Partial<RunSaid>): RunSaid {
  const said = Object.entries(common).filter(([, value]) => value != null);
  const own = Object.entries(run).filter(([, value]) => value != null);
  return { ...Object.fromEntries(said), ...Object.fromEntries(own) } as RunSaid;
}

export async function placed(context: Context, told: readonly Told[]): Promise<Placed[]> {
  const all: Placed[] = [];
  for (const one of told) all.push({ ...one, around: await aroundOf(context, one.run, one.path) });
  return all;
}

export interface Owner {
  readonly checkId: string | null;
  readonly sorbentId: string;
  readonly retention: Retention;
  /** The lot that a run names, or its container is of. */
  readonly lotFor: (one: Placed) => Promise<Lot>;
}

/** Checks and keeps runs; gives their ids. */
export async function runsKept(work: Work, all: readonly Placed[], owner: Owner): Promise<string[]> {
  const { tx, labId } = work;
  const rows: Prisma.RetentionRunCreateManyInput[] = [];
  for (const one of all) {
    const { run, path, around } = one;
    const spots = run.spots.map((spot, i) => spotRead(spot, owner.retention, `${path}.spots.${i}`));
    const lot = await owner.lotFor(one);
    if (around.container && around.container.lotId !== lot.id)
      throw invalid(`${path}.label`, around.container.label, `a container of lot ${lot.lotNumber}`);
    const by = run.by ? await personOf(work, run.by, `${path}.by`) : null;
    const { regime = null, ...prepared } = await preparedAt(work, run, around);
    rows.push({
      ...{ id: newId(), labId, checkId: owner.checkId, sorbentId: owner.sorbentId, lotId: lot.id },
      ...{ containerId: around.container?.id ?? null, retention: owner.retention, at: around.at },
      ...{ tank: run.tank ?? null, plate: run.plate ?? null, box: run.box ?? null },
      spots: spots.map((spot) => ({ ...spot })),
      ...{ chamber: run.chamber ?? null, isLined: run.isLined ?? null },
      ...{ saturationMinutes: run.saturationMinutes ?? null, eluent: run.eluent ?? null },
      ...{ eluentBatch: run.eluentBatch ?? null, stabiliser: run.stabiliser ?? null },
      ...{ temperatureC: around.temperatureC, humidityPercent: around.humidityPercent },
      ...{ isAirFilled: around.isAirFilled, distanceMm: run.distanceMm ?? null, regime, ...prepared },
      ...{ ranById: by?.id ?? work.actorId, note: run.note, madeAt: work.now },
    });
  }
  await tx.retentionRun.createMany({ data: rows });
  for (const { id } of rows) work.changed('RetentionRun', id, 'MADE');
  return rows.map(({ id }) => id);
}
