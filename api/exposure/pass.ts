// One pass: every container in use brought up to now by worker threads, then, round after round, those whose sources changed.
import { addMissingExposures } from '../database/exposures.ts';
import type { Database } from '../database/database.ts';
import type { LabFacts } from './ground.ts';
import { noteProgress, progressOf } from './progress.ts';
import type { Share } from './round.ts';
import { storeEstimates } from './store.ts';
import type { Thread } from './thread.ts';

/** A batch is sized so that storing it keeps the thread, and so the API, for about so long, ms. */
const batchMs = 15;
const sizes = { least: 5, most: 400 };

export interface Passing {
  readonly database: Database;
  readonly lab: LabFacts;
  /** As many as the pass may use. */
  readonly threads: readonly Thread[];
  readonly now: () => Date;
  readonly stopped: () => boolean;
}

interface Round {
  moved: boolean;
  asked: string[];
}

async function roundOf(
  { database, threads }: Passing,
  share: Omit<Share, 'part' | 'parts'>,
  asked: string[],
): Promise<Round> {
  let moved = false;
  const store: Parameters<Thread['work']>[2] = {
    total: (count) => noteProgress(database, { total: progressOf(database).total + count }),
    async store(made, containers) {
      let tookMs = 0;
      const stored = await database.write(async (tx) => {
        const began = performance.now();
        const result = await storeEstimates(tx, database.engine, made);
        tookMs = performance.now() - began;
        return result;
      });
      moved ||= stored.moved;
      noteProgress(database, { done: progressOf(database).done + containers });
      const fitting = (made.estimates.length * batchMs) / Math.max(0.1, tookMs);
      return Math.round(Math.min(sizes.most, Math.max(sizes.least, fitting)));
    },
  };
  const parts = threads.length;
  const asks = await Promise.all(threads.map((thread, part) => thread.work({ ...share, part, parts }, asked, store)));
  return { moved, asked: [...new Set(asks.flat())] };
}

async function anyStale({ database, lab }: Passing): Promise<number> {
  const [row] = await database.select<{ count: number }>(
    'select count(*) as "count" from "Exposure" where "labId" = $1 and "staleFrom" is not null',
    [lab.id],
  );
  return row?.count ?? 0;
}

/** Gives every container without an exposure an unknown one; a write only where there are such. */
async function addMissing({ database, lab }: Passing): Promise<void> {
  const missing = await database.select(
    `select c."id" from "Container" c where c."labId" = $1
     and not exists (select 1 from "Exposure" e where e."containerId" = c."id") limit 1`,
    [lab.id],
  );
  if (missing.length > 0) await database.write((tx) => addMissingExposures(tx, database.engine, lab.id));
}

/** Runs a pass; ends when nothing is stale, or nothing moves any more. */
export async function runPass(passing: Passing): Promise<void> {
  const { database, now } = passing;
  const { id, timeZone, settings } = passing.lab;
  noteProgress(database, { running: true, done: 0, total: 0, startedAt: now() });
  try {
    await addMissing(passing);
    const share = { lab: { id, timeZone, settings }, asOfMs: now().getTime() };
    let { moved, asked } = await roundOf(passing, { ...share, only: 'all', unwaiting: false }, []);
    let unwaiting = false;
    for (let left = await anyStale(passing); left > 0 && !passing.stopped(); left = await anyStale(passing)) {
      // Nothing moved although nobody was waited for: the rest changes under our hands and is for the next pass.
      if (!moved && unwaiting) break;
      unwaiting = !moved;
      ({ moved, asked } = await roundOf(passing, { ...share, only: 'stale', unwaiting }, asked));
    }
  } finally {
    noteProgress(database, { running: false, finishedAt: now() });
  }
}
