// What a plan is made of, read from the database.
import type { Context } from '../context.ts';
import { certificateWater } from '../stock/service.ts';
import { campaignsBroughtUp, keptBy } from './campaigns.ts';
import { amountsOfNeeds, itemsOf, thisMonday } from './items.ts';
import type { PlanFacts, Supposed } from './problem.ts';
import { purchaseSettingsOf } from './settings.ts';
import { stillOut } from './shelve.ts';
import { toComeOf, type Wanted } from './uses.ts';
import { dayOf, weekOf } from './weeks.ts';

/** Dry grams in a gram as received, by the certificate of each sorbent's last lot. */
async function dryShares({ database, lab }: Context): Promise<Map<string, number>> {
  const lots = await database.read.lot.findMany({ where: { labId: lab.id }, orderBy: { receivedAt: 'asc' } });
  return new Map(lots.map((lot) => [lot.sorbentId, 1 / (1 + certificateWater(lot).waterFraction)]));
}

/** Of the needs of an item, what nothing is kept for. */
function unkeptOf(
  items: Awaited<ReturnType<typeof itemsOf>>,
  holds: readonly { needId: string | null; dryGrams: number | null; plates: number | null }[],
  monday: string,
): Map<string, Wanted[]> {
  const amountOf = amountsOfNeeds(holds);
  const keptFor = new Map<string, number>();
  for (const { needId, dryGrams, plates } of holds)
    if (needId) keptFor.set(needId, (keptFor.get(needId) ?? 0) + (plates ?? dryGrams ?? 0));
  return new Map(
    items.map(({ key, needs }) => [
      key,
      needs
        .map((need) => ({ week: weekOf(monday, need.day), amount: amountOf(need) - (keptFor.get(need.id) ?? 0) }))
        .filter(({ amount }) => amount > 1e-6),
    ]),
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
  const [suppliers, storage, orders, holds, dryShare] = await Promise.all([
    read.supplier.findMany({ where: { labId }, orderBy: { name: 'asc' } }),
    read.storageGroup.findMany({ where: { labId, removedAt: null }, orderBy: { name: 'asc' } }),
    read.order.findMany({
      where: { labId, state: { in: ['ASKED_FOR', 'BOUGHT'] } },
      include: { offer: true, deliveries: { where: { takenBackAt: null } } },
      orderBy: { number: 'asc' },
    }),
    read.hold.findMany({ where: { labId, releasedAt: null, needId: { not: null } } }),
    dryShares(context),
  ]);
  const toCome: [string, { wanted: Wanted[]; kept: number }][] = [];
  for (const campaign of items.flatMap(({ campaigns }) => campaigns)) {
    const wanted = await toComeOf(read, campaign, dayOf(context.now(), lab.timeZone));
    toCome.push([campaign.id, { wanted, kept: (await keptBy(context, campaign.id))?.amount ?? 0 }]);
  }
  return {
    ...{ items, suppliers, storage, dryShare, settings, monday, timeZone: lab.timeZone, supposed: asked.supposed },
    orders: orders.map((order) => ({ order, offer: order.offer, packs: stillOut(order) })),
    toCome: new Map(toCome),
    unkept: unkeptOf(items, holds, monday),
    weeks: asked.weeks ?? settings.weeks,
    seconds: asked.seconds ?? settings.seconds,
  };
}
