// What a plan is made of, read from the database.
import type { Context } from '../context.ts';
import type { Hold } from '../database/generated/sqlite/client.ts';
import { campaignsBroughtUp } from './campaigns.ts';
import { type ItemFacts, itemsOf, thisMonday } from './items.ts';
import type { PlanFacts, Supposed } from './problem.ts';
import { purchaseSettingsOf } from './settings.ts';
import { keptOf } from './shelf.ts';
import { stillOut } from './shelve.ts';
import { bookingsOf, toComeOf, total, type Wanted } from './uses.ts';
import { dayOf, weekOf } from './weeks.ts';

/** Of the needs of an item, what nothing is kept for. */
function unkeptOf(items: readonly ItemFacts[], holds: readonly Hold[], monday: string): Map<string, Wanted[]> {
  const keptFor = new Map<string, number>();
  for (const hold of holds) if (hold.needId) keptFor.set(hold.needId, (keptFor.get(hold.needId) ?? 0) + keptOf(hold));
  return new Map(
    items.map(({ key, needs, amountOf }) => [
      key,
      needs
        .map((need) => ({ week: weekOf(monday, need.day), amount: amountOf(need) - (keptFor.get(need.id) ?? 0) }))
        .filter(({ amount }) => amount > 1e-6),
    ]),
  );
}

/** What campaigns take still, with their lot and without one, and what is kept for them. */
async function toComeIn({ database, lab, now }: Context, items: readonly ItemFacts[]): Promise<PlanFacts['toCome']> {
  const campaigns = items.flatMap(({ campaigns }) => campaigns);
  const ids = campaigns.map(({ id }) => id);
  const bookingOf = await bookingsOf(database.read, lab, ids);
  const today = dayOf(now(), lab.timeZone);
  return new Map(
    campaigns.map((campaign) => {
      const booking = bookingOf(campaign.id);
      const wanted = toComeOf(campaign, booking, today);
      return [
        campaign.id,
        { wanted, ofAnother: toComeOf(campaign, booking, today, null), kept: total(booking.shares) },
      ];
    }),
  );
}

export async function planFactsOf(
  context: Context,
  asked: { weeks: number | null; seconds: number | null; supposed: Supposed | null },
): Promise<PlanFacts> {
  await campaignsBroughtUp(context);
  const { database, lab } = context;
  const { read } = database;
  const labId = lab.id;
  const settings = purchaseSettingsOf(lab.settings);
  const monday = thisMonday(context);
  const items = await itemsOf(context);
  const [suppliers, storage, orders, holds, toCome] = await Promise.all([
    read.supplier.findMany({ where: { labId }, orderBy: { name: 'asc' } }),
    read.storageGroup.findMany({ where: { labId, removedAt: null }, orderBy: { name: 'asc' } }),
    read.order.findMany({
      where: { labId, state: { in: ['ASKED_FOR', 'BOUGHT'] } },
      include: { offer: true, deliveries: { where: { takenBackAt: null } } },
      orderBy: { number: 'asc' },
    }),
    read.hold.findMany({ where: { labId, releasedAt: null, needId: { not: null } } }),
    toComeIn(context, items),
  ]);
  return {
    ...{ items, suppliers, storage, settings, monday, timeZone: lab.timeZone, supposed: asked.supposed },
    orders: orders.map((order) => ({ order, offer: order.offer, packs: stillOut(order) })),
    toCome,
    unkept: unkeptOf(items, holds, monday),
    weeks: asked.weeks ?? settings.weeks,
    seconds: asked.seconds ?? settings.seconds,
  };
}
