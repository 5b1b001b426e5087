// What a recorded event does to the list: a drying answers what waits, a correction of it lets it wait again,
// and what is finished waits no longer.
import type { Event, Prisma } from '../database/generated/sqlite/client.ts';
import { invalid } from '../errors.ts';
import { onRecorded, saidOf } from '../stock/service.ts';
import type { Work } from '../work.ts';
import { requestEnded } from './ended.ts';
import { howDried } from './how-dried.ts';

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
    if (data.state !== 'WAITING') await requestEnded(work, id);
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

/** The temperature that an earlier statement of the same drying gave; undefined where there is none. */
async function saidBefore(work: Work, correctsId: string | null): Promise<number | null | undefined> {
  if (!correctsId) return undefined;
  const before = await work.tx.event.findUniqueOrThrow({ where: { id: correctsId } });
  const said = saidOf(before.type, before.detail);
  return said.type === 'DRIED' ? said.detail.temperatureC : undefined;
}

/** An oven hotter than the material stands is refused; one that was written down already is only spoken of. */
async function checkHeat(work: Work, event: Event): Promise<string[]> {
  const said = saidOf(event.type, event.detail);
  if (said.type !== 'DRIED' || said.detail.temperatureC === null) return [];
  const { temperatureC } = said.detail;
  const container = await work.tx.container.findUniqueOrThrow({ where: { id: event.containerId } });
  const hot = (await howDried(work.tx, container)).refusal(temperatureC);
  if (!hot) return [];
  if ((await saidBefore(work, event.correctsId)) === temperatureC) return [`${temperatureC} °C is too hot: ${hot}`];
  throw invalid(event.correctsId ? 'input.replacement.temperatureC' : 'input.temperatureC', temperatureC, hot);
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
  return [...(await checkHeat(work, event)), ...(await withdrawnWhereFinished(work, event))];
});
