// The ledger's lines brought up to the last thing told: whoever reads first after a change has the timelines it touched
// folded again. The outbox says which.
import type { Context } from '../context.ts';
import { insertRows } from '../database/bulk.ts';
import { lotsAddedUp } from '../database/ledger.ts';
import type { LedgerState } from '../database/generated/sqlite/client.ts';
import { baseOf, entryOf, standing } from '../stock/service.ts';
import type { Transaction } from '../work.ts';
import { linesOf } from './rules.ts';
import { weekNames, type WeekOf } from './week.ts';

/** Containers in one transaction, so that others can write in between. */
const atOnce = 50;
/** The state is written without need when it lies so many changes back. */
const farBack = 2_000;

/** Throws away what these containers' lines were, and writes what they are. */
async function foldedAgain(tx: Transaction, { database, lab }: Context, ids: string[], weekOf: WeekOf): Promise<void> {
  const containers = await tx.container.findMany({ where: { id: { in: ids }, labId: lab.id } });
  const events = await tx.event.findMany(standing(ids));
  const rows = containers.flatMap((container) => {
    const own = events.filter(({ containerId, otherContainerId }) =>
      [containerId, otherContainerId].includes(container.id),
    );
    if (own.length === 0) return [];
    const lines = linesOf({
      container: container.id,
      base: baseOf(container),
      entries: own.map((event) => entryOf(event, container.id)),
    });
    return lines.map(({ event, container: containerId, ...line }, at) => ({
      ...{ containerId, eventId: event, labId: lab.id, lotId: container.lotId, week: weekOf(line.at), ...line },
      part: lines[at - 1]?.event === event ? 1 : 0,
      isPlates: container.kind === 'PLATE_BOX',
    }));
  });
  await tx.ledgerLine.deleteMany({ where: { containerId: { in: ids } } });
  await insertRows(tx, database.engine, {
    table: 'LedgerLine',
    columns: {
      ...{ containerId: 'text', eventId: 'text', part: 'integer', labId: 'text', lotId: 'text' },
      ...{ isPlates: 'boolean', isStock: 'boolean', account: 'text', at: 'time', week: 'text' },
      ...{ dryGrams: 'real', plates: 'integer', asReceivedGrams: 'real', why: 'text' },
    },
    rows,
  });
  await lotsAddedUp(tx, database.engine, [...new Set(containers.map(({ lotId }) => lotId))]);
}

async function lastChange(reader: Pick<Transaction, 'change'>, labId: string): Promise<number> {
  const last = await reader.change.findFirst({ where: { labId }, orderBy: { id: 'desc' }, select: { id: true } });
  return last?.id ?? 0;
}

/** Changes looked through in one transaction. */
const changesAtOnce = 2_000;

interface Changed {
  readonly containerIds: readonly string[];
  /** Up to this change they are all. */
  readonly upTo: number;
}

/** The next containers that changed after a change, so many that others can write in between. */
async function changedSince(reader: Pick<Transaction, 'change'>, labId: string, id: number): Promise<Changed> {
  const last = await lastChange(reader, labId);
  const rows = await reader.change.findMany({
    where: { labId, entity: 'Container', id: { gt: id } },
    orderBy: { id: 'asc' },
    take: changesAtOnce,
    select: { id: true, entityId: true },
  });
  const ids = new Set<string>();
  for (const [i, { entityId }] of rows.entries()) {
    if (ids.size === atOnce && !ids.has(entityId)) return { containerIds: [...ids], upTo: rows[i - 1]?.id ?? id };
    ids.add(entityId);
  }
  return { containerIds: [...ids], upTo: rows.length < changesAtOnce ? last : (rows.at(-1)?.id ?? last) };
}

/** Begins from nothing: what is told from now on is found in the outbox afterwards. */
async function begun(tx: Transaction, { id: labId, timeZone }: Context['lab']): Promise<LedgerState> {
  await tx.ledgerLine.deleteMany({ where: { labId } });
  await tx.ledgerWeek.deleteMany({ where: { labId } });
  const data = { changeNumber: await lastChange(tx, labId), madeUpTo: null, isWhole: false, timeZone };
  return tx.ledgerState.upsert({ where: { labId }, create: { labId, ...data }, update: data });
}

/** The next part of making it for the first time. */
async function madeFurther(tx: Transaction, context: Context, state: LedgerState, weekOf: WeekOf): Promise<void> {
  const { labId, madeUpTo } = state;
  const next = await tx.container.findMany({
    where: { labId, ...(madeUpTo === null ? {} : { id: { gt: madeUpTo } }) },
    orderBy: { id: 'asc' },
    take: atOnce,
    select: { id: true },
  });
  const ids = next.map(({ id }) => id);
  if (ids.length > 0) await foldedAgain(tx, context, ids, weekOf);
  const data = { madeUpTo: ids.at(-1) ?? madeUpTo, isWhole: ids.length < atOnce };
  await tx.ledgerState.update({ where: { labId }, data });
}

/** Brings the ledger up to now; does nothing when nothing was told since. */
export async function ledgerBroughtUp(context: Context): Promise<void> {
  const { database, lab } = context;
  const labId = lab.id;
  const weekOf = weekNames(lab.timeZone);
  const { read } = database;
  for (;;) {
    const seen = await read.ledgerState.findUnique({ where: { labId } });
    const last = await lastChange(read, labId);
    if (seen?.isWhole && seen.timeZone === lab.timeZone) {
      if (seen.changeNumber >= last) return;
      const { containerIds } = await changedSince(read, labId, seen.changeNumber);
      if (containerIds.length === 0 && last - seen.changeNumber < farBack) return;
    }
    await database.write(async (tx) => {
      const there = await tx.ledgerState.findUnique({ where: { labId } });
      const state = there?.timeZone === lab.timeZone ? there : await begun(tx, lab);
      if (!state.isWhole) return madeFurther(tx, context, state, weekOf);
      const { containerIds, upTo } = await changedSince(tx, labId, state.changeNumber);
      if (containerIds.length > 0) await foldedAgain(tx, context, [...containerIds], weekOf);
      await tx.ledgerState.update({ where: { labId }, data: { changeNumber: upTo } });
    });
  }
}
