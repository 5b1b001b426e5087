// Why a batch stands where it stands, in one sentence.
import type { Model } from './model.ts';
import type { ScheduledBatch } from './schedule.ts';

function setup({ setupMinutes, cools }: ScheduledBatch): string {
  if (setupMinutes === 0) return 'no set-up';
  return `${setupMinutes} min to ${cools ? 'cool down' : 'heat up'}`;
}

function start(batch: ScheduledBatch, opens: readonly number[]): string {
  const { start: at, end, ovenReady, lastReady, leastMinutes } = batch;
  if (end - at > leastMinutes) return 'Stays until somebody is there again, since it would be done while nobody is';
  if (lastReady && at === lastReady.at) return `Starts as soon as ${lastReady.job} is ready`;
  if (at === ovenReady) {
    return batch.doorMinutes > 0
      ? `Follows the batch before it, ${batch.doorMinutes} min at the door and ${setup(batch)} later`
      : `Starts as soon as the oven is free, with ${setup(batch)}`;
  }
  if (opens.includes(at)) return 'Starts when somebody is there again';
  if (opens.includes(end)) return 'Starts as late as it can to be done when somebody is there again';
  return 'Starts later than it could, which spares oven time or keeps what was planned before';
}

function ending(batch: ScheduledBatch, dueOf: ReadonlyMap<string, number>): string {
  const dues = batch.jobs.flatMap((job) => {
    const due = dueOf.get(job);
    return due === undefined ? [] : [{ job, spare: due - batch.end }];
  });
  const tightest = dues.reduce<(typeof dues)[number] | null>(
    (least, one) => (least === null || one.spare < least.spare ? one : least),
    null,
  );
  if (tightest === null) return 'nothing in it has to be ready by a time';
  if (tightest.spare < 0) return `${tightest.job} is ${-tightest.spare} min late`;
  return tightest.spare === 0 ? `${tightest.job} is just on time` : `on time with ${tightest.spare} min to spare`;
}

export function reasonOf(model: Model, batch: ScheduledBatch): string {
  const dueOf = new Map(
    model.problem.jobs.flatMap(({ id, dueAt }) => (dueAt === undefined ? [] : [[id, dueAt] as const])),
  );
  const oven = model.ovens[model.ovenId.indexOf(batch.oven)];
  const first = batch.isFixed ? 'Fixed: it has begun or was put here' : start(batch, Array.from(oven?.openFrom ?? []));
  return `${first}; ${ending(batch, dueOf)}.`;
}
