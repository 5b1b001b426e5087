// Whose estimates a change of a room's air touches.
import { markStaleFrom } from '../database/exposures.ts';
import type { Engine } from '../database/client.ts';
import { Prisma } from '../database/generated/sqlite/client.ts';
import { instant } from '../database/reader.ts';
import type { Work } from '../work.ts';

/** So many are brought up to date before the answer; of more, the background pass takes care within minutes. */
const atOnce = 200;

/**
 * Marks every container that may have stood in the room since an instant: those that stand there, and those that were
 * ever moved at all. A few too many are estimated again for nothing; one too few would be wrong.
 */
export async function staleRoom(work: Work, engine: Engine, roomId: string, from: Date): Promise<number> {
  const since = Prisma.raw(instant(engine, String(from.getTime())));
  const rows = await work.tx.$queryRaw<{ id: string }[]>(Prisma.sql`
    select c."id" from "Container" c
    where c."labId" = ${work.labId} and (c."finishedAt" is null or c."finishedAt" >= ${since})
      and (c."roomId" = ${roomId} or exists (
        select 1 from "Event" e where e."containerId" = c."id" and e."type" = 'MOVED'))`);
  if (rows.length <= atOnce) for (const { id } of rows) work.stale(id, from);
  else
    await markStaleFrom(
      work.tx,
      engine,
      rows.map(({ id }) => [id, from.getTime()]),
    );
  return rows.length;
}
