// Handed over: taken from what is kept, to where it is needed. The need is met; what it was given stays kept for it, so that
// nobody else is promised it.
import {
  happened,
  holdMade,
  needLetGo,
  nothingGrams,
  platesMoved,
  portionPoured,
  takePlatesSaid,
  takePortionSaid,
} from '../stock/service.ts';
import { keptLast } from './overdue.ts';
import { type Doing, keptFor, noted } from './doing.ts';

export async function handedOver(doing: Doing): Promise<void> {
  const { work, need, by } = doing;
  const now = await keptFor(doing);
  const rows = now.length > 0 ? now : await keptLast(work, need);
  // What went back into its campaign's share meanwhile is taken of that again.
  if (now.length === 0)
    for (const { containerId, dryGrams, plates, campaignId } of rows)
      if (campaignId)
        await holdMade(work, {
          ...{ containerId, dryGrams, plates, campaignId, needId: need.id },
          ...{ forWhat: need.forWhom, until: null },
        });
  if (rows.length === 0)
    doing.notes.push(`nothing is kept for ${need.forWhom} any more: record from where it was taken`);
  await needLetGo(work, need.id, true);
  const given = async (containerId: string | null, dryGrams: number | null, plates: number | null): Promise<void> => {
    if (containerId === null) return;
    await holdMade(work, { containerId, dryGrams, plates, forWhat: need.forWhom, until: null, needId: need.id });
  };
  for (const { container, dryGrams, plates } of rows) {
    const isPart =
      plates !== null ? plates < (container.plates ?? 0) : (dryGrams ?? 0) < container.dryGrams - nothingGrams;
    if (isPart && plates !== null) {
      const room = need.roomId ? await work.tx.room.findUnique({ where: { id: need.roomId } }) : null;
      const input = takePlatesSaid.parse({
        label: container.label,
        plates,
        at: by.at,
        closure: 'WELL_CLOSED',
        room: room?.name,
      });
      const moved = await platesMoved(work, input);
      noted(doing, moved);
      await given(moved.madeId, null, plates);
    } else if (isPart && container.kind !== 'COLUMN') {
      const said = { label: container.label, grams: dryGrams, basis: 'DRY', at: by.at, note: by.note };
      const poured = await portionPoured(work, takePortionSaid.parse(said));
      noted(doing, poured);
      await given(poured.madeId, dryGrams, null);
    } else {
      await given(container.id, dryGrams, plates);
      if (need.roomId && need.roomId !== container.roomId) {
        const said = { roomId: need.roomId };
        noted(doing, await happened(work, { type: 'MOVED', container, at: by.at, note: by.note ?? null, said }));
      }
    }
  }
  await work.tx.need.update({ where: { id: need.id }, data: { metAt: by.at, changedAt: work.now } });
  work.changed('Need', need.id, 'CHANGED');
}
