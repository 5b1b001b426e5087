// Brings containers up to date at once, in this thread: what was just written shows in the answer to who wrote it.
import { setImmediate as nextTurn } from 'node:timers/promises';
import { addMissingExposures } from '../database/exposures.ts';
import type { Database } from '../database/database.ts';
import { estimatesOf } from './estimate.ts';
import { groundsOf, type LabFacts } from './ground.ts';
import { storeEstimates } from './store.ts';

/** Containers read and stored together. */
const chunkSize = 50;
/** The thread is given free for other requests after so long, ms. */
const turnMs = 10;
/** Each round goes on later in time than the one before, so that there is an end; this many would be a fault. */
const mostRounds = 10_000;

/**
 * Estimates these containers at an instant, and then, round after round, those that were handed something else by them.
 * Ends when nothing of it is stale any more.
 */
export async function bringForward(
  database: Database,
  lab: LabFacts,
  ids: readonly string[],
  asOfMs: number,
): Promise<void> {
  const { engine } = database;
  const asked = new Set<string>();
  let turnEnds = performance.now() + turnMs;
  const pause = async () => {
    if (performance.now() < turnEnds) return;
    await nextTurn();
    turnEnds = performance.now() + turnMs;
  };
  let round = [...new Set(ids)];
  let unwaiting = false;
  for (let number = 0; round.length > 0; number++) {
    if (number === mostRounds) throw new Error(`exposures of ${round.length} containers never settle`);
    const grounds = await groundsOf(database, lab);
    const task = { reader: database, grounds, asOfMs, asked, unwaiting, pause };
    const next = new Set<string>();
    let moved = false;
    for (let from = 0; from < round.length; from += chunkSize) {
      const chunk = round.slice(from, from + chunkSize);
      const made = await estimatesOf(chunk, task);
      const stored = await database.write((tx) => storeEstimates(tx, engine, made));
      for (const id of stored.stale) next.add(id);
      moved ||= stored.moved;
    }
    const before = new Set(round);
    round = [...next];
    unwaiting = !moved && round.every((id) => before.has(id));
  }
}

/**
 * Drops everything derived of a lab's exposures and makes it anew: the same digits, to the last bit, as going on from
 * checkpoints gives at the same instant.
 */
export async function rebuildExposures(database: Database, lab: LabFacts, asOfMs: number): Promise<void> {
  await database.write(async (tx) => {
    const where = { labId: lab.id };
    await tx.checkpoint.deleteMany({ where });
    await tx.parcel.deleteMany({ where });
    await tx.exposure.deleteMany({ where });
    await addMissingExposures(tx, database.engine, lab.id);
  });
  const all = await database.select<{ id: string }>(
    'select c."id" from "Container" c where c."labId" = $1 order by c."cameInAt", c."id"',
    [lab.id],
  );
  await bringForward(
    database,
    lab,
    all.map(({ id }) => id),
    asOfMs,
  );
}
