// Runs are written down: of a check or of a day, each with what it ran on and around.
import type { Context } from '../context.ts';
import type { Lot, Prisma } from '../database/generated/sqlite/client.ts';
import { invalid, Refused, type Problem } from '../errors.ts';
import { newId, type Work } from '../work.ts';
import { aroundsOf, type Around } from './filled.ts';
import type { Retention, RunSaid } from './said.ts';
import { spotRead, type SpotRead } from './spots.ts';
import { problemOfRow, refusedTable } from './table-refusal.ts';
import type { TableRun } from './table.ts';

export interface Told {
  readonly run: RunSaid;
  /** Where in the input. */
  readonly path: string;
  /** Of a table; null where it was told by a form. */
  readonly line: number | null;
}
export interface Placed extends Told {
  readonly around: Around;
  readonly spots: readonly SpotRead[];
}

/** What was said for all of them, where a run says nothing itself. */
function withCommon(run: RunSaid, common: Partial<RunSaid>): RunSaid {
  const said = Object.entries(common).filter(([, value]) => value != null);
  const own = Object.entries(run).filter(([, value]) => value != null);
  return { ...Object.fromEntries(said), ...Object.fromEntries(own) } as RunSaid;
}

/** Runs of a form, each with its place in the input. */
export const toldRuns = (runs: readonly RunSaid[], common: Partial<RunSaid>): Told[] =>
  runs.map((run, i) => ({ run: withCommon(run, common), path: `input.runs.${i}`, line: null }));

/** Runs of a table. */
export const toldRows = (rows: readonly TableRun[], common: Partial<RunSaid>): Told[] =>
  rows.map(({ line, ...run }) => ({ run: withCommon(run, common), path: 'input', line }));

/** Does the same with each of them; what rows of a table are refused for is told together, by line. */
async function eachOf<One extends Told, Made>(all: readonly One[], make: (one: One) => Promise<Made>): Promise<Made[]> {
  const made: Made[] = [];
  const problems: Problem[] = [];
  for (const one of all) {
    try {
      made.push(await make(one));
    } catch (error) {
      if (one.line === null || !(error instanceof Refused)) throw error;
      problems.push(problemOfRow(error, one.line));
    }
  }
  if (problems.length > 0) throw refusedTable(problems);
  return made;
}

/** What is around each of them and what was read on it, found before anything is written. */
export function placed(context: Context, retention: Retention, told: readonly Told[]): Promise<Placed[]> {
  const around = aroundsOf(
    context,
    told.flatMap(({ run }) => run.at ?? []),
  );
  return eachOf(told, async (one) => ({
    ...one,
    spots: one.run.spots.map((spot, i) => spotRead(spot, retention, `${one.path}.spots.${i}`)),
    around: await around(one.run, one.path),
  }));
}

export interface Owner {
  readonly checkId: string | null;
  readonly sorbentId: string;
  readonly retention: Retention;
  /** The lot that a run names, or its container is of. */
  readonly lotFor: (one: Placed) => Promise<Lot>;
}

/** Keeps runs; gives their ids. */
export async function runsKept(work: Work, all: readonly Placed[], owner: Owner): Promise<string[]> {
  const { tx, labId } = work;
  const rows = await eachOf(all, async (one): Promise<Prisma.RetentionRunCreateManyInput> => {
    const { run, path, around, spots } = one;
    const { container, prepared, by, at } = around;
    const lot = await owner.lotFor(one);
    if (container && container.lotId !== lot.id)
      throw invalid(`${path}.label`, container.label, `a container of lot ${lot.lotNumber}`);
    return {
      ...{ id: newId(), labId, checkId: owner.checkId, sorbentId: owner.sorbentId, lotId: lot.id },
      ...{ containerId: container?.id ?? null, retention: owner.retention, at },
      ...{ tank: run.tank ?? null, plate: run.plate ?? null, box: run.box ?? null },
      spots: spots.map((spot) => ({ ...spot })),
      ...{ chamber: run.chamber ?? null, isLined: run.isLined ?? null },
      ...{ saturationMinutes: run.saturationMinutes ?? null, eluent: run.eluent ?? null },
      ...{ eluentBatch: run.eluentBatch ?? null, stabiliser: run.stabiliser ?? null },
      ...{ temperatureC: around.temperatureC, humidityPercent: around.humidityPercent },
      ...{ isAirFilled: around.isAirFilled, distanceMm: run.distanceMm ?? null, ...prepared },
      ...{ ranById: by?.id ?? work.actorId, note: run.note, madeAt: work.now },
    };
  });
  await tx.retentionRun.createMany({ data: rows });
  for (const { id } of rows) work.changed('RetentionRun', id, 'MADE');
  return rows.map(({ id }) => id);
}
