// A need as it was said, to be said again.
import type { Need } from '../database/generated/sqlite/client.ts';
import type { Work } from '../work.ts';
import type { NeedSaid } from './said.ts';

/** Told again with what is different. */
export async function saidOf(work: Work, need: Need): Promise<Omit<NeedSaid, 'weekdays' | 'untilDay' | 'clientKey'>> {
  const { tx } = work;
  const sorbent = await tx.sorbent.findUniqueOrThrow({ where: { id: need.sorbentId } });
  const lot = need.isLotWished && need.lotId ? await tx.lot.findUnique({ where: { id: need.lotId } }) : null;
  const campaign = need.campaignId
    ? await tx.campaign.findFirst({ where: { id: need.campaignId, droppedAt: null } })
    : null;
  const room = need.roomId ? await tx.room.findUnique({ where: { id: need.roomId } }) : null;
  const { lotId: _, sorbentId: __, roomId: ___, obstacle: ____, campaignId: _____, weight, ...rest } = need;
  return {
    ...rest,
    priority: weight as 1 | 2 | 4 | 8,
    sorbent: sorbent.name,
    lotNumber: lot?.lotNumber ?? null,
    campaign: campaign?.id ?? null,
    room: room?.name ?? null,
  };
}
