// Whose estimates a change of a room's air touches.
import { markStaleFrom } from '../database/exposures.ts';
import type { Engine } from '../database/client.ts';
import { Prisma } from '../database/generated/sqlite/client.ts';
import { instant } from '../database/reader.ts';
import type { Work } from '../work.ts';
import { dayMs } from './series.ts';

/** Days of containers that are estimated before the answer, about half a second; of more the background pass takes care within minutes. */
const daysAtOnce = 3000;

const daysSince = (from: Date, cameInAtMs: number, now: Date): number =>
  1 + Math.max(0, now.getTime() - Math.max(from.getTime(), cameInAtMs)) / dayMs;

/**
 * Marks every container that may have stood in the room since an instant: those that stand there, and those that were
 * ever moved at all. A few too many are estimated again for nothing; one too few would be wrong.
 */
export async function staleRoom(work: Work, engine: Engine, roomId: string, from: Date): Promise<number> {
  const since = Prisma.raw(instant(engine, String(from.getTime())));
  const rows = await work.tx.$queryRaw<{ id: string; cameInAt: Date | number | bigint }[]>(Prisma.sql`
    select c."id", c."cameInAt" from "Container" c
    where c."labId" = ${work.labId} and (c."finishedAt" is null or c."finishedAt" >= ${since})
      and (c."roomId" = ${roomId} or exists (
        select 1 from "Event" e where e."containerId" = c."id" and e."type" = 'MOVED'))`);
  const days = rows.reduce((sum, { cameInAt }) => sum + daysSince(from, Number(cameInAt), work.now), 0);
  if (days <= daysAtOnce) for (const { id } of rows) work.stale(id, from);
  else {
    const instants = rows.map(({ id }): [string, number] => [id, from.getTime()]);
    await markStaleFrom(work.tx, engine, instants);
  }
  return rows.length;
}
