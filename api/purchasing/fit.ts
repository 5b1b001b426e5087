// What is kept for campaigns cut down to what they still take: weeks go by, and needs give back what they had beyond a share.
import type { Campaign } from '../database/generated/sqlite/client.ts';
import { onReplan } from '../prep/service.ts';
import { nothingGrams, shareLeft } from '../stock/service.ts';
import type { Transaction, Work } from '../work.ts';
import { inOrder, type LabOf, stockOf, usableShare } from './keep.ts';
import { type Booking, bookingsOf, type Share, toComeOf, total } from './uses.ts';
import { dayOf } from './weeks.ts';

interface Cut {
  readonly share: Share;
  readonly left: number;
}

/** Of one campaign: the containers that were chosen last give first; what drying will lose stays kept. */
async function cutsOf(
  tx: Transaction,
  lab: LabOf,
  campaign: Campaign,
  booking: Booking,
  today: string,
): Promise<Cut[]> {
  const { shares } = booking;
  const wanted = total(toComeOf(campaign, booking, today));
  if (total(shares) <= wanted + nothingGrams) return [];
  const containers = (await stockOf(tx, lab, campaign)).flatMap((stock) => [...stock.containers]).sort(inOrder);
  const placeOf = new Map(containers.map(({ container }, place) => [container.id, place]));
  const usable = shares.map((share) => {
    const one = containers[placeOf.get(share.containerId) ?? -1];
    return { share, part: one ? usableShare(one) : 1, place: placeOf.get(share.containerId) ?? -1 };
  });
  let surplus = usable.reduce((sum, { share, part }) => sum + share.amount * part, 0) - wanted;
  const cuts: Cut[] = [];
  for (const { share, part } of usable.sort((a, b) => b.place - a.place)) {
    if (surplus <= nothingGrams || part === 0) continue;
    const most = campaign.backing === null ? surplus / part : Math.floor(surplus + nothingGrams);
    const cut = Math.min(share.amount, most);
    if (cut <= nothingGrams) continue;
    cuts.push({ share, left: share.amount - cut });
    surplus -= cut * part;
  }
  return cuts;
}

/** What is kept and no campaign takes any more. */
export async function surplusShares(tx: Transaction, lab: LabOf, now: Date): Promise<Cut[]> {
  const where = { labId: lab.id, droppedAt: null, lotId: { not: null } };
  const campaigns = await tx.campaign.findMany({ where });
  const bookingOf = await bookingsOf(
    tx,
    lab,
    campaigns.map(({ id }) => id),
  );
  const today = dayOf(now, lab.timeZone);
  const cuts: Cut[] = [];
  for (const campaign of campaigns) cuts.push(...(await cutsOf(tx, lab, campaign, bookingOf(campaign.id), today)));
  return cuts;
}

/** Lets go of that, within a larger act. */
export async function sharesFitted(work: Work, lab: LabOf): Promise<void> {
  for (const { share, left } of await surplusShares(work.tx, lab, work.now)) await shareLeft(work, share, left);
}

onReplan(sharesFitted);
