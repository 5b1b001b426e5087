// The lab's stock, use, campaigns, offers and rules as the purchase programme takes them: whole base units and whole minor
// units, weeks from this one on. Names are those that people use, so that its sentences can be read. Pure.
import type { Campaign, Offer, Order, StorageGroup, Supplier } from '../database/generated/sqlite/client.ts';
import type {
  PurchaseCampaign,
  PurchaseItem,
  PurchaseLot,
  PurchaseOffer,
  PurchaseProblem,
} from '../science/purchase/types.ts';
import { itemKey, itemName, quantityText, unitOf } from './item.ts';
import { type Packed, packsText } from './item-words.ts';
import type { ItemFacts } from './items.ts';
import { freeUsable, usableKeptFor } from './keep.ts';
import { pricesOf } from './offer.ts';
import { dryPerPack } from './packs.ts';
import { plannedWeeks } from './rules.ts';
import type { PurchaseSettings } from './settings.ts';
import { storageOf } from './room.ts';
import { total, type Wanted } from './uses.ts';
import { dayOf, daysAfter, weekOf } from './weeks.ts';

/** What is supposed: a supplier (or all of them) late or dearer, a lot rejected. */
export interface Supposed {
  readonly supplierId: string | null;
  readonly lateWeeks: number;
  readonly pricePercent: number;
  readonly rejectedLotId: string | null;
}

export interface PlanFacts {
  readonly items: readonly ItemFacts[];
  readonly suppliers: readonly Supplier[];
  readonly storage: readonly StorageGroup[];
  /** Asked for or bought, with the packs that are still to come. */
  readonly orders: readonly { readonly order: Order; readonly offer: Offer | null; readonly packs: number }[];
  /** What each campaign takes beside what its needs have of its lot, or of whatever other lot; and what is kept for it. */
  readonly toCome: ReadonlyMap<
    string,
    { readonly wanted: readonly Wanted[]; readonly ofAnother: readonly Wanted[]; readonly kept: number }
  >;
  /** Of needs to come, what nothing is kept for yet, by item. */
  readonly unkept: ReadonlyMap<string, readonly Wanted[]>;
  readonly settings: PurchaseSettings;
  readonly timeZone: string;
  /** The Monday of week 1. */
  readonly monday: string;
  readonly weeks: number;
  readonly seconds: number;
  readonly supposed: Supposed | null;
}

/** What the names of the problem stand for. */
export interface Names {
  items: Record<string, string>;
  offers: Record<string, string>;
  campaigns: Record<string, string>;
  /** A lot that is there, or an order on its way. */
  lots: Record<string, string>;
  /** Of those, orders on their way. */
  orders: Record<string, string>;
}

export interface Posed {
  readonly problem: PurchaseProblem;
  readonly names: Names;
  /** What was left out or taken for granted, one sentence each. */
  readonly notes: readonly string[];
}

/** Invented prices of what one would rather not have, and what is left at the end is worth; shares of the lowest unit price. */
const wasteShare = 0.1;
const belowSafetyShare = 0.05;
const endValueShare = 0.8;
/** An order may be so much larger than all that is wanted of an item: room for breaks of price and whole packs. */
const mostOfWanted = 1.3;
/** An order of which nobody knows the offer comes after so many weeks; invented. */
const unknownLeadWeeks = 4;

/** What is kept is short of what is wanted only by more than what rounding does to it. */
const roundingUnits = 0.5;

/** Nobody offers it: a price for what is missing all the same, 0.10 of a currency with two digits for each unit. */
const unknownUnitMicro = 10_000_000;
const gap = 0.005;

/** A name that no other has. */
function onlyOnce(taken: Record<string, string>, name: string, id: string): string {
  let own = name;
  for (let count = 2; own in taken; count++) own = `${name} (${count})`;
  taken[own] = id;
  return own;
}

/** Expected use in whole units, so that the sum over any weeks is right. */
export function wholeWeeks(mean: number, weeks: number): number[] {
  const until = (week: number) => Math.round(mean * week);
  return Array.from({ length: weeks }, (_, at) => until(at + 1) - until(at));
}

class Posing {
  readonly names: Names = { items: {}, offers: {}, campaigns: {}, lots: {}, orders: {} };
  readonly notes: string[] = [];
  readonly unchecked: string[] = [];
  readonly lots: PurchaseLot[] = [];
  readonly offers: PurchaseOffer[] = [];
  readonly campaigns: PurchaseCampaign[] = [];
  readonly facts: PlanFacts;

  constructor(facts: PlanFacts) {
    this.facts = facts;
  }

  private isSupposed(supplierId: string): boolean {
    const { supposed } = this.facts;
    return supposed !== null && (supposed.supplierId === null || supposed.supplierId === supplierId);
  }

  private lateWeeks(supplierId: string): number {
    return this.isSupposed(supplierId) ? (this.facts.supposed?.lateWeeks ?? 0) : 0;
  }

  /** Whole base units in a pack. */
  unitsOf({ dryShare }: ItemFacts, pack: Packed): number {
    return Math.max(1, Math.floor(dryPerPack(pack, dryShare)));
  }

  /** A campaign that needs a lot: it has none, or one that was rejected (or is supposed to be), or too little of one. */
  needsLot(of: ItemFacts, campaign: Campaign): boolean {
    const { wanted = [], ofAnother = [], kept = 0 } = this.facts.toCome.get(campaign.id) ?? {};
    if (ofAnother.length === 0) return false;
    return campaign.lotId === null || this.isRejected(of, campaign.lotId) || kept < total(wanted) - roundingUnits;
  }

  private isRejected({ stock }: ItemFacts, lotId: string): boolean {
    const its = stock?.lots.find(({ lot }) => lot.id === lotId);
    return its?.standing === 'REJECTED' || lotId === this.facts.supposed?.rejectedLotId;
  }

  prices(offer: Offer): { from: number; price: number }[] {
    const factor = this.isSupposed(offer.supplierId) ? 1 + (this.facts.supposed?.pricePercent ?? 0) / 100 : 1;
    return pricesOf(offer).map(({ from, minor }) => ({ from, price: Math.round(minor * factor) }));
  }

  /** The lowest price of a base unit, millionths of a minor unit. */
  unitMicro(facts: ItemFacts): number {
    const all = facts.offers.flatMap((offer) =>
      this.prices(offer).map(({ price }) => price / this.unitsOf(facts, offer)),
    );
    return all.length > 0 ? Math.min(...all) * 1e6 : unknownUnitMicro;
  }

  /** By week: what is expected, and what is booked and not kept yet. */
  private demandOf(of: ItemFacts): number[] {
    const { weeks, unkept } = this.facts;
    const demand = wholeWeeks(of.weekly.mean, weeks);
    for (const { week, amount } of unkept.get(of.key) ?? [])
      if (week >= 1 && week <= weeks) demand[week - 1] = (demand[week - 1] ?? 0) + Math.ceil(amount);
    return demand;
  }

  item(of: ItemFacts, name: string): PurchaseItem {
    const { settings } = this.facts;
    const { rule } = of;
    const unit = this.unitMicro(of);
    const demand = this.demandOf(of);
    const round = (micro: number) => Math.max(0, Math.round(micro));
    return {
      id: name,
      unit: unitOf(of.item),
      demand,
      safety: Math.round(of.reorder?.safetyStock ?? 0),
      check: {
        cost: rule.checkMinor,
        weeks: rule.checkWeeks,
        sample: rule.checkWeeks > 0 ? Math.round(rule.checkSample) : 0,
        keep: Math.round(rule.checkKeep),
        withoutOld: rule.checkWithoutMinor,
      },
      holdingMicro: round((unit * settings.holdingPercentAYear) / 100 / 52),
      // What is written off was paid for already: this is its disposal.
      wasteMicro: round(unit * wasteShare),
      shortMicro: round(unit * settings.shortTimesPrice),
      belowSafetyMicro: round(unit * belowSafetyShare),
      endValueMicro: Math.floor(of.offers.length > 0 ? endValueShare * unit : 0),
    };
  }

  ownLots(of: ItemFacts, name: string): void {
    const { monday, timeZone } = this.facts;
    for (const stock of of.stock?.lots ?? []) {
      const { lot } = stock;
      // What is kept for a campaign that gets a lot anew is free for that choice.
      const givenBack = total(
        of.campaigns
          .filter((campaign) => this.needsLot(of, campaign))
          .map(({ id }) => ({ amount: usableKeptFor(stock, id) })),
      );
      const quantity = Math.floor(freeUsable(stock) + givenBack);
      if (quantity <= 0) continue;
      const last = of.rule.isExpiring && lot.retestOn ? weekOf(monday, dayOf(lot.retestOn, timeZone)) : null;
      if (last !== null && last < 1) {
        this.notes.push(`${name}: lot ${lot.lotNumber} is past its date and is left out`);
        continue;
      }
      const inCheck = stock.standing === 'IN_CHECK';
      if (stock.standing === 'UNCHECKED') this.unchecked.push(lot.lotNumber);
      this.lots.push({
        id: onlyOnce(this.names.lots, lot.lotNumber, lot.id),
        item: name,
        quantity,
        from: inCheck ? 1 + of.rule.checkWeeks : 1,
        lastWeek: last,
        status: this.isRejected(of, lot.id) ? 'rejected' : inCheck ? 'in-check' : 'accepted',
      });
    }
  }

  /** What is asked for or bought is there once it came and was checked. */
  onTheWay(of: ItemFacts, name: string): void {
    const { monday, timeZone, orders, weeks } = this.facts;
    for (const { order, offer, packs } of orders) {
      if (itemKey(order) !== of.key || packs <= 0) continue;
      const asked = dayOf(order.boughtAt ?? order.askedAt, timeZone);
      const expected = order.expectedOn ?? daysAfter(asked, 7 * (offer ? plannedWeeks(offer) : unknownLeadWeeks));
      const arrives = Math.max(1, weekOf(monday, expected)) + this.lateWeeks(order.supplierId);
      const from = arrives + of.rule.checkWeeks;
      const quantity = packs * this.unitsOf(of, order) - Math.round(of.rule.checkWeeks > 0 ? of.rule.checkSample : 0);
      if (quantity <= 0 || from > weeks) continue;
      const lot = onlyOnce(this.names.lots, `order ${order.number}`, order.id);
      this.names.orders[lot] = order.id;
      const shelfWeeks = of.rule.isExpiring ? (offer?.shelfWeeks ?? null) : null;
      const lastWeek = shelfWeeks === null ? null : arrives + shelfWeeks - 1;
      this.lots.push({ id: lot, item: name, quantity, from, lastWeek, status: 'in-check' });
    }
  }

  /** A campaign with enough of a good lot keeps that; any other gets one from the plan. */
  itsCampaigns(of: ItemFacts, name: string): void {
    const { toCome, weeks, settings } = this.facts;
    const value = this.unitMicro(of) / 1e6;
    for (const campaign of of.campaigns) {
      if (!this.needsLot(of, campaign)) continue;
      const { wanted: ofLot = [], ofAnother: wanted = [], kept = 0 } = toCome.get(campaign.id) ?? {};
      const say = (amount: number) => quantityText(amount, of.item.backing);
      if (campaign.lotId !== null && !this.isRejected(of, campaign.lotId))
        this.notes.push(
          `${name}: only ${say(Math.floor(kept))} of the ${say(Math.ceil(total(ofLot)))} that ${campaign.name} still takes are kept for it`,
        );
      const sum = total(wanted);
      const within = wanted.filter(({ week }) => week <= weeks);
      if (within.length < wanted.length)
        this.notes.push(`${name}: ${campaign.name} goes on beyond the ${weeks} weeks that are planned`);
      if (within.length === 0) continue;
      this.campaigns.push({
        id: onlyOnce(this.names.campaigns, campaign.name, campaign.id),
        item: name,
        uses: within.map(({ week, amount }) => ({ week, quantity: Math.max(1, Math.ceil(amount)) })),
        uncovered: campaign.uncoveredMinor ?? Math.round(sum * value * settings.shortTimesPrice),
      });
    }
  }

  /** What there is, and what is on its way, does not last as long as is planned. */
  isShort(of: ItemFacts, name: string): boolean {
    const usable = this.lots.filter(({ item, status }) => item === name && status !== 'rejected');
    const there = usable.reduce((sum, { quantity }) => sum + quantity, 0);
    return there < this.demandOf(of).reduce((sum, amount) => sum + amount, 0);
  }

  itsOffers(of: ItemFacts, name: string): void {
    const { suppliers, toCome } = this.facts;
    const campaigns = of.campaigns.reduce((sum, { id }) => sum + total(toCome.get(id)?.ofAnother ?? []), 0);
    const demand = this.demandOf(of).reduce((sum, amount) => sum + amount, 0);
    const all = demand + campaigns + (of.reorder?.safetyStock ?? 0);
    for (const offer of of.offers) {
      const supplier = suppliers.find(({ id }) => id === offer.supplierId)?.name ?? '';
      const pack = this.unitsOf(of, offer);
      const most = Math.max(1, Math.ceil((mostOfWanted * all) / pack) + 1, pricesOf(offer).at(-1)?.from ?? 1);
      this.offers.push({
        id: onlyOnce(
          this.names.offers,
          `${packsText(1, offer).replace(/^1 /, '')} of ${name} from ${supplier}`,
          offer.id,
        ),
        item: name,
        supplier,
        pack,
        prices: this.prices(offer),
        leadWeeks: plannedWeeks(offer) + this.lateWeeks(offer.supplierId),
        shelfWeeks: of.rule.isExpiring ? offer.shelfWeeks : null,
        maxPacks: Math.min(offer.mostPacks ?? most, most),
      });
    }
  }
}

/** Something of it is used, wanted or to be there: else there is nothing to plan. */
const isPlanned = (of: ItemFacts, { unkept }: PlanFacts): boolean =>
  of.weekly.mean > 0 || of.campaigns.length > 0 || (unkept.get(of.key)?.length ?? 0) > 0;

/** Null where there is nothing to plan. */
export function posed(facts: PlanFacts): Posed | null {
  const posing = new Posing(facts);
  const planned = new Map<string, ItemFacts>();
  for (const of of facts.items) {
    const name = itemName(of.sorbent.name, of.item.backing);
    if (of.asksForWeekly && (of.stock?.lots.length ?? 0) > 0)
      posing.notes.push(`${name}: too little history; say what a week uses`);
    if (!isPlanned(of, facts)) continue;
    planned.set(onlyOnce(posing.names.items, name, of.key), of);
  }
  const items = [...planned].map(([name, of]) => {
    posing.ownLots(of, name);
    posing.onTheWay(of, name);
    posing.itsCampaigns(of, name);
    posing.itsOffers(of, name);
    if (of.offers.length === 0 && posing.isShort(of, name))
      posing.notes.push(`${name}: there is no offer of it; add one`);
    return posing.item(of, name);
  });
  if (items.length === 0) return null;
  const { unchecked } = posing;
  if (unchecked.length > 0)
    posing.notes.push(`not checked, and planned as if they were accepted: ${unchecked.join(', ')}`);
  const used = new Set(posing.offers.map(({ supplier }) => supplier));
  const { currency } = facts.settings;
  const problem: PurchaseProblem = {
    currency: currency.code,
    minorDigits: currency.minorDigits,
    weeks: facts.weeks,
    items,
    lots: posing.lots,
    campaigns: posing.campaigns,
    suppliers: facts.suppliers
      .filter(({ name }) => used.has(name))
      .map(({ name, deliveryFeeMinor, minOrderMinor }) => ({
        id: name,
        deliveryFee: deliveryFeeMinor,
        minOrder: minOrderMinor,
      })),
    offers: posing.offers,
    storage: storageOf(facts, planned),
    limits: { seconds: facts.seconds, gap },
  };
  return { problem, names: posing.names, notes: posing.notes };
}
