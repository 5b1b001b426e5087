// How hot containers were last dried, as their estimates reckon with it.
import DataLoader from 'dataloader';
import type { Context } from '../context.ts';
import { checkpointsBefore } from '../database/fleet.ts';
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

/** Before an instant, however long ago, °C; null where nobody said. */
export async function driedAtBefore({ database, lab }: Context, containerId: string, at: Date): Promise<number | null> {
  const found = await foldInputAt(database, lab, containerId, at.getTime());
  return found && courseOf(found.input).condition.driedAtC;
}
