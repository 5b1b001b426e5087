// How hot containers were last dried, as their estimates reckon with it.
import DataLoader from 'dataloader';
import type { Context } from '../context.ts';
import { checkpointsBefore, eventsAfter } from '../database/fleet.ts';
import { onceARequest } from '../once.ts';
import { driedAtOf } from '../science/checkpoint.ts';
import { courseOf } from '../science/exposure.ts';
import { foldInputAt } from './water.ts';

// An event's bed is kept for days, and every midnight's after it, so that the last one knows of the last drying.
const lastBeds = onceARequest(({ database }) =>
  Promise.resolve(
    new DataLoader(
      async (wanted: readonly { containerId: string; asOf: Date }[]) => {
        const instants = wanted.map(({ containerId, asOf }) => [containerId, asOf.getTime() + 1] as const);
        const rows = await checkpointsBefore(database, instants);
        const found = new Map(rows.map(({ containerId, data }) => [containerId, driedAtOf({ bytes: data })]));
        return wanted.map(({ containerId }) => found.get(containerId) ?? null);
      },
      { cacheKeyFn: ({ containerId }) => containerId },
    ),
  ),
);

/** As an exposure has it, °C; null where nobody said. */
export const lastDriedAt = async (context: Context, of: { containerId: string; asOf: Date }): Promise<number | null> =>
  (await lastBeds(context)).load(of);

interface Wanted {
  readonly containerId: string;
  readonly at: Date;
}

/** The last beds before each instant that are kept, where nothing happened in between; the others are folded one by one. */
async function driedAtOfEach({ database, lab }: Context, wanted: readonly Wanted[]): Promise<(number | null)[]> {
  const instants = wanted.map(({ containerId, at }) => [containerId, at.getTime() + 1] as const);
  const beds = await checkpointsBefore(database, instants);
  const bedOf = ({ containerId, at }: Wanted) =>
    beds
      .filter((bed) => bed.containerId === containerId && bed.at <= at.getTime())
      .reduce<(typeof beds)[number] | null>((last, bed) => (last && last.at >= bed.at ? last : bed), null);
  const firsts = new Map<string, number>();
  for (const bed of beds) firsts.set(bed.containerId, Math.min(bed.at, firsts.get(bed.containerId) ?? Infinity));
  const events = await eventsAfter(database, [...firsts]);
  return Promise.all(
    wanted.map(async (one) => {
      const { containerId, at } = one;
      const bed = bedOf(one);
      const isSame = (from: number): boolean =>
        !events.some((event) => event.id === containerId && event.at > from && event.at <= at.getTime());
      if (bed && isSame(bed.at)) return driedAtOf({ bytes: bed.data });
      const found = await foldInputAt(database, lab, containerId, at.getTime());
      return found && courseOf(found.input).condition.driedAtC;
    }),
  );
}

const bedsThen = onceARequest((context) =>
  Promise.resolve(
    new DataLoader((wanted: readonly Wanted[]) => driedAtOfEach(context, wanted), {
      cacheKeyFn: ({ containerId, at }) => `${containerId} ${at.getTime()}`,
    }),
  ),
);

/** Before an instant, however long ago, °C; null where nobody said. */
export const driedAtBefore = async (context: Context, containerId: string, at: Date): Promise<number | null> =>
  (await bedsThen(context)).load({ containerId, at });
