// The exposure room's door for the other rooms.
import type { Context } from '../context.ts';
import { readerInside } from '../database/inside.ts';
import { onWater } from '../stock/service.ts';
import { onStale, type Transaction } from '../work.ts';
import type { LabFacts } from './ground.ts';
import { bringForward } from './refresh.ts';
import { scoopWaterAt } from './water.ts';

export { driedAtBefore, lastDriedAt } from './dried-at.ts';
export { scoopWatersIn } from './water.ts';
export { bringForward, rebuildExposures } from './refresh.ts';
export type { LabFacts } from './ground.ts';
export { numbersOf, type Numbers } from './numbers.ts';
export { ovenLoadOf, type OvenLoad } from './weighed.ts';
export { storiesOf, type Stories, type Story } from './stories.ts';
export { inAir, type InAir } from './outside.ts';
export { workingHoursOf } from './hours.ts';

/** Of more than these the background pass takes care within minutes; nobody waits for them. */
const mostAtOnce = 500;

/** Brings containers up to now, before whoever wrote about them is answered. */
export async function refresh(context: Context, containerIds: string[]): Promise<void> {
  if (containerIds.length > mostAtOnce) return;
  await bringForward(context.database, context.lab, containerIds, context.now().getTime());
}

onStale(refresh);

/** Water of a container's next scoop at an instant, as grams as received are booked by; null where it is unknown. */
export async function waterFractionAt(
  tx: Transaction,
  containerId: string,
  at: Date,
): Promise<{ waterFraction: number; assumed: boolean } | null> {
  const container = await tx.container.findUniqueOrThrow({ where: { id: containerId }, select: { lab: true } });
  const lab: LabFacts = container.lab;
  const waterFraction = await scoopWaterAt(readerInside(tx), lab, containerId, at);
  return waterFraction === null ? null : { waterFraction, assumed: false };
}

onWater(waterFractionAt);
