// What a recorded event does to the list: a drying answers what waits, a correction of it lets it wait again,
// and what is finished waits no longer.
import type { Event, Prisma } from '../database/generated/sqlite/client.ts';
import { onRecorded, saidOf } from '../stock/service.ts';
import type { Work } from '../work.ts';
import { tooHot } from './recipes.ts';

async function changed(
  work: Work,
  where: Prisma.DryingRequestWhereInput,
  data: Prisma.DryingRequestUncheckedUpdateInput,
): Promise<number> {
  const requests = await work.tx.dryingRequest.findMany({
    where: { labId: work.labId, ...where },
    select: { id: true },
  });
  for (const { id } of requests) {
    await work.tx.dryingRequest.update({ where: { id }, data });
    work.changed('DryingRequest', id, 'CHANGED');
  }
  return requests.length;
}

/** A drying that was corrected or taken back: what it answered waits again, or is answered by what stands instead. */
async function corrected(work: Work, event: Event): Promise<void> {
  const line = await work.tx.event.findMany({ where: { labId: work.labId, place: event.place } });
  const stands = line.find((each) => each.stands && each.type === 'DRIED');
  const where = { eventId: { in: line.map(({ id }) => id) } };
  if (stands) await changed(work, where, { eventId: stands.id, endedAt: stands.at });
  else await changed(work, where, { state: 'WAITING', eventId: null, endedAt: null });
}

/** An oven hotter than the material stands is kept, since it happened, and said. */
async function heatNote(work: Work, event: Event): Promise<string[]> {
  const said = saidOf(event.type, event.detail);
  if (said.type !== 'DRIED' || said.detail.temperatureC === null) return [];
  const { tx } = work;
  const container = await tx.container.findUniqueOrThrow({
    where: { id: event.containerId },
    include: { lot: { include: { sorbent: true } } },
  });
  const hot = tooHot(container.lot.sorbent.sorbentClass, container.backing, said.detail.temperatureC);
  return hot ? [hot.why] : [];
}

async function withdrawnWhereFinished(work: Work, event: Event): Promise<string[]> {
  const ids = [event.containerId, ...(event.otherContainerId ? [event.otherContainerId] : [])];
  const finished = await work.tx.container.findMany({ where: { id: { in: ids }, finishedAt: { not: null } } });
  const where = { containerId: { in: finished.map(({ id }) => id) }, state: 'WAITING' as const };
  const count = await changed(work, where, { state: 'WITHDRAWN', endedAt: work.now });
  return count > 0 ? ['it no longer waits to be dried: nothing is left in it'] : [];
}

onRecorded(async (work, event) => {
  if (event.correctsId) await corrected(work, event);
  else if (event.type === 'DRIED') {
    const where = { containerId: event.containerId, state: 'WAITING' as const };
    await changed(work, where, { state: 'DRIED', endedAt: event.at, eventId: event.id });
  }
  return [...(await heatNote(work, event)), ...(await withdrawnWhereFinished(work, event))];
});
