// What a certificate says of a lot's water was put right: stock that came in by it begins anew, on its timeline.
import type { Lot } from '../database/generated/sqlite/client.ts';
import type { Work } from '../work.ts';
import { restated } from './correct.ts';
import { saidOf } from './details.ts';
import { certificateWater } from './water.ts';
import { percent } from './words.ts';

/** Corrects the arrival of each container whose beginning rests on the certificate; gives notes. */
export async function certificateRestated(work: Work, before: Lot, after: Lot): Promise<string[]> {
  const old = certificateWater(before);
  const now = certificateWater(after);
  if (old.waterFraction === now.waterFraction && old.assumed === now.assumed) return [];
  const arrivals = await work.tx.event.findMany({
    where: { labId: work.labId, type: 'CAME_IN', stands: true, container: { lotId: after.id } },
    orderBy: { recordedSeq: 'asc' },
  });
  let count = 0;
  for (const event of arrivals) {
    const told = saidOf(event.type, event.detail);
    if (told.type !== 'CAME_IN' || told.detail.startWaterFrom === 'GIVEN' || told.detail.grams === null) continue;
    const startWaterFraction = now.assumed ? null : now.waterFraction;
    const startWaterFrom = now.assumed ? 'NOWHERE' : 'CERTIFICATE';
    const changes = { startWaterFraction, startWaterFrom, bookedWaterFraction: now.waterFraction };
    await restated(work, event, changes, 'the certificate was put right');
    count += 1;
  }
  const touched = await work.tx.container.findMany({
    where: { lotId: after.id, isVoid: false },
    select: { id: true, cameInAt: true },
  });
  for (const { id, cameInAt } of touched) work.stale(id, cameInAt);
  if (count === 0) return [];
  const said = now.assumed ? 'unknown water' : `${percent(now.waterFraction)} (dry basis)`;
  return [
    `${count} ${count === 1 ? 'arrival now begins' : 'arrivals now begin'} with ${said}; the old one stays on the timeline`,
  ];
}
