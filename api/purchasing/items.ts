// Every item that is kept, offered or wanted, with what it uses a week, what is booked of it and when to order again.
import type { Context } from '../context.ts';
import type { BoughtItem, Campaign, Need, Offer, Sorbent } from '../database/generated/sqlite/client.ts';
import { weeklyUse } from '../ledger/service.ts';
import { fewestWeeks, forecastOf, type Forecast } from '../science/demand/forecast.ts';
import { leadDemand, type Lead, type LeadDemand } from '../science/demand/lead.ts';
import { reorderFor, type Reorder } from '../science/demand/service.ts';
import { onceARequest } from '../once.ts';
import { needAmounts } from '../prep/service.ts';
import { type Item, itemKey } from './item.ts';
import { packAmount } from './item-words.ts';
import { pricesOf } from './offer.ts';
import { dryShareOf } from './packs.ts';
import { leadChances } from './rules.ts';
import { purchaseSettingsOf, type PurchaseSettings } from './settings.ts';
import { type ItemStock, shelfOf } from './shelf.ts';
import { dayOf, daysAfter, mondayOf, weekOf } from './weeks.ts';

/** What counts for one item: the lab's rule where nothing of its own is set. */
interface ItemRule {
  serviceLevel: number;
  checkWeeks: number;
  checkMinor: number;
  checkSample: number;
  checkKeep: number;
  checkWithoutMinor: number;
  isExpiring: boolean;
  storageId: string | null;
  /** Of 1 kg dry sorbent, or 100 plates. */
  litres: number | null;
}

export interface ItemFacts {
  key: string;
  item: Item;
  sorbent: Sorbent;
  rule: ItemRule;
  own: BoughtItem | null;
  stock: ItemStock | null;
  /** Open offers of it, the cheapest unit first. */
  offers: Offer[];
  campaigns: Campaign[];
  /** Needs to come that are of no campaign, or of one that was dropped. */
  needs: Need[];
  /** What they take: dry grams or plates. */
  amountOf: (need: Need) => number;
  /** Dry grams in a gram as received, by the certificate of its last lot. */
  dryShare: number;
  /** Unbooked use by week, the last whole week last. */
  history: number[];
  firstWeek: string | null;
  forecast: Forecast | null;
  /** Unbooked use expected of a week, dry g or plates, and its variance. */
  weekly: { mean: number; variance: number };
  /** Too little history, and nobody said what a week uses. */
  asksForWeekly: boolean;
  /** From order to release by the cheapest offer, and a week to notice it; null without an offer. */
  lead: Lead | null;
  leadTime: LeadDemand | null;
  reorder: Reorder | null;
}

function ruleOf(settings: PurchaseSettings, item: Item, own: BoughtItem | null): ItemRule {
  const sample = own?.checkSample ?? (item.backing === null ? settings.checkGrams : settings.checkPlates);
  const minor = own?.checkMinor ?? settings.checkMinor;
  return {
    serviceLevel: own?.serviceLevel ?? settings.serviceLevel,
    checkWeeks: own?.checkWeeks ?? settings.checkWeeks,
    checkMinor: minor,
    checkSample: sample,
    checkKeep: own?.checkKeep ?? sample,
    checkWithoutMinor: own?.checkWithoutMinor ?? minor,
    isExpiring: own?.isExpiring ?? false,
    storageId: own?.storageId ?? null,
    litres: own?.litres ?? null,
  };
}

/** Price of a base unit, minor, at the fewest packs. */
const unitPrice = (offer: Offer): number => (pricesOf(offer)[0]?.minor ?? 0) / (packAmount(offer) || 1);

/** What of a week's use was booked before: needs that were met then. */
function unbooked(weeks: readonly number[], firstWeek: string, met: readonly { day: string; amount: number }[]) {
  const left = [...weeks];
  for (const { day, amount } of met) {
    const at = weekOf(firstWeek, day) - 1;
    if (at >= 0 && at < left.length) left[at] = Math.max(0, (left[at] ?? 0) - amount);
  }
  return left;
}

async function rowsOf(context: Context) {
  const { database, lab } = context;
  const { read } = database;
  const labId = lab.id;
  const [shelf, offers, campaigns, own, sorbents, lots, uses] = await Promise.all([
    shelfOf(read, lab),
    read.offer.findMany({ where: { labId, removedAt: null }, orderBy: { addedAt: 'asc' } }),
    read.campaign.findMany({ where: { labId, droppedAt: null }, orderBy: { madeAt: 'asc' } }),
    read.boughtItem.findMany({ where: { labId } }),
    read.sorbent.findMany({ where: { labId } }),
    read.lot.findMany({
      where: { labId },
      select: { sorbentId: true, certificateWaterFraction: true, certificateMaxWaterFraction: true },
      orderBy: [{ receivedAt: 'asc' }, { id: 'asc' }],
    }),
    weeklyUse(context),
  ]);
  // What was met before the first week of any history was booked in none; a day more, whatever the lab's clock.
  const first = uses.map(({ firstWeek }) => firstWeek).sort()[0];
  const since = first === undefined ? null : new Date(`${daysAfter(first, -1)}T00:00:00Z`);
  const needs = await read.need.findMany({
    where: {
      ...{ labId, droppedAt: null },
      OR: [{ metAt: null, at: { gt: context.now() } }, ...(since === null ? [] : [{ metAt: { gte: since } }])],
    },
  });
  const dryShares = new Map(lots.map((lot) => [lot.sorbentId, dryShareOf(lot)]));
  const amountOf = await needAmounts(read, lab, needs);
  return { shelf, offers, campaigns, own, sorbents, needs, uses, dryShares, amountOf };
}

/** All items, by the name of their sorbent. */
export async function itemsOf(context: Context): Promise<ItemFacts[]> {
  const settings = purchaseSettingsOf(context.lab.settings);
  const zone = context.lab.timeZone;
  const rows = await rowsOf(context);
  const live = new Set(rows.campaigns.map(({ id }) => id));
  const items = new Map<string, Item>();
  const add = ({ sorbentId, backing }: Item) => items.set(itemKey({ sorbentId, backing }), { sorbentId, backing });
  for (const { item } of rows.shelf) add(item);
  for (const some of [rows.offers, rows.campaigns, rows.own]) for (const one of some) add(one);
  const backingsOf = (sorbentId: string) =>
    [...items.values()].filter((item) => item.sorbentId === sorbentId && item.backing !== null);
  const facts = [...items].flatMap(([key, item]): ItemFacts[] => {
    const sorbent = rows.sorbents.find(({ id }) => id === item.sorbentId);
    if (!sorbent) return [];
    const is = (of: Item) => itemKey(of) === key;
    const own = rows.own.find((one) => one.item === key) ?? null;
    const rule = ruleOf(settings, item, own);
    const isPlates = item.backing !== null;
    const needs = rows.needs.filter(
      (need) =>
        need.sorbentId === item.sorbentId &&
        (need.kind === 'PLATES') === isPlates &&
        (!isPlates || (need.backing ?? backingsOf(item.sorbentId)[0]?.backing) === item.backing),
    );
    const use = rows.uses.find((of) => of.sorbentId === item.sorbentId && of.isPlates === isPlates);
    // Plates of one sorbent on several backings are one line of the ledger: evenly, where nobody can tell.
    const among = isPlates ? Math.max(1, backingsOf(item.sorbentId).length) : 1;
    const firstWeek = use?.firstWeek ?? null;
    const met = needs.flatMap((need) =>
      need.metAt ? [{ day: dayOf(need.metAt, zone), amount: rows.amountOf(need) }] : [],
    );
    const weeks = (use?.weeks ?? []).map((amount) => amount / among);
    const history = firstWeek === null ? [] : unbooked(weeks, firstWeek, met);
    const offers = rows.offers.filter(is).sort((a, b) => unitPrice(a) - unitPrice(b));
    const [cheapest] = offers;
    const lead = cheapest
      ? leadChances(cheapest).map(({ weeks, chance }) => ({ weeks: weeks + rule.checkWeeks + 1, chance }))
      : null;
    const forecast = forecastOf(history, lead ?? [{ weeks: 4, chance: 1 }]);
    const said = own?.weeklyUse ?? null;
    // A figure that somebody said is as uncertain as it is large: nobody knows better.
    const weekly =
      said !== null && forecast === null
        ? { mean: said, variance: said ** 2 }
        : { mean: forecast?.rate ?? 0, variance: forecast?.variance ?? 0 };
    const leadTime = lead && leadDemand(lead, weekly);
    return [
      {
        ...{ key, item, sorbent, rule, own, offers, history, firstWeek, forecast, weekly, lead, leadTime },
        stock: rows.shelf.find((one) => one.key === key) ?? null,
        campaigns: rows.campaigns.filter(is),
        needs: needs.filter(({ metAt, campaignId }) => metAt === null && !(campaignId && live.has(campaignId))),
        amountOf: rows.amountOf,
        dryShare: rows.dryShares.get(item.sorbentId) ?? dryShareOf(undefined),
        asksForWeekly: forecast === null && said === null && history.length < fewestWeeks,
        reorder: leadTime && weekly.mean > 0 ? reorderFor(leadTime, rule.serviceLevel) : null,
      },
    ];
  });
  return facts.sort((a, b) => (a.sorbent.name < b.sorbent.name ? -1 : a.sorbent.name > b.sorbent.name ? 1 : 0));
}

/** The same, worked out once a request however many ask. */
export const itemsNow = onceARequest(itemsOf);

/** The Monday of this week on the lab's clock. */
export const thisMonday = ({ lab, now }: Pick<Context, 'lab' | 'now'>): string => mondayOf(dayOf(now(), lab.timeZone));
