// The lines of a plan: what to order when, of what an order is left, and what is due this week.
import type { Context } from '../context.ts';
import type { Delivery, Offer, Order, PurchasePlan } from '../database/generated/sqlite/client.ts';
import { unitOf } from './item.ts';
import { packsText } from './item-words.ts';
import { itemsNow, type ItemFacts, thisMonday } from './items.ts';
import { freeOfLots } from './keep.ts';
import { pricesOf } from './offer.ts';
import { dryPerPack } from './packs.ts';
import { currentPlan, type PlanRead, planRead } from './plan.ts';
import type { Ordered } from './moved.ts';
import { fridayOf, lineSentence, orderBy, said } from './plan-words.ts';
import { coverWeeks } from './policy.ts';
import { plannedWeeks, priceFor } from './rules.ts';
import { stillOut } from './shelve.ts';
import { dayOf, daysAfter, daySaid, mondayOfWeek, weekOf } from './weeks.ts';

export interface PlanLine {
  readonly offer: Offer;
  readonly packs: number;
  /** Of those, what was asked for or bought since the plan was made. */
  readonly asked: number;
  readonly priceMinor: number;
  readonly orderWeek: number;
  readonly orderBy: string;
  readonly arrivesOn: string;
  readonly releasedOn: string;
  readonly sentence: string;
  /** What is not asked for yet: its packs at the price of so many, and the sentence for them. */
  readonly left: { readonly packs: number; readonly priceMinor: number; readonly sentence: string };
  readonly campaignIds: readonly string[];
}

/** Packs of each offer that were asked for since, up to an instant where one is given. */
async function askedSince({ database, lab }: Context, since: Date, until?: Date): Promise<Map<string, number>> {
  const askedAt = { gte: since, ...(until && { lt: until }) };
  const orders = await database.read.order.findMany({
    where: { labId: lab.id, askedAt, state: { not: 'CALLED_OFF' } },
  });
  const packs = new Map<string, number>();
  for (const { offerId, packs: of } of orders) if (offerId) packs.set(offerId, (packs.get(offerId) ?? 0) + of);
  return packs;
}

/** The lines by week; what was asked for since counts for the earliest ones. */
export async function linesOf(context: Context, read: PlanRead): Promise<PlanLine[]> {
  const { plan, answer, names, problem } = read;
  const calendar = { monday: plan.fromDay, today: dayOf(context.now(), context.lab.timeZone) };
  const ids = [...new Set(answer.orders.flatMap(({ offer }) => names.offers[offer] ?? []))];
  const offers = await context.database.read.offer.findMany({ where: { id: { in: ids } } });
  const asked = await askedSince(context, plan.madeAt);
  return answer.orders.flatMap((order): PlanLine[] => {
    const offer = offers.find(({ id }) => id === names.offers[order.offer]);
    if (!offer) return [];
    const given = Math.min(order.packs, asked.get(offer.id) ?? 0);
    asked.set(offer.id, (asked.get(offer.id) ?? 0) - given);
    const by = orderBy(order.orderWeek, calendar);
    const lot = `${order.offer}@${order.orderWeek}`;
    const named = { offers: problem.offers, orders: names.orders };
    const reason = said(order.reasonParts, named, calendar);
    const sentenceFor = (packs: number) => lineSentence(packsText(packs, offer), by, reason, calendar);
    const prices = problem.offers.find(({ id }) => id === order.offer)?.prices ?? [];
    const left = order.packs - given;
    return [
      {
        offer,
        packs: order.packs,
        asked: given,
        priceMinor: order.price,
        orderWeek: order.orderWeek,
        orderBy: by,
        arrivesOn: mondayOfWeek(plan.fromDay, order.arriveWeek),
        releasedOn: mondayOfWeek(plan.fromDay, order.releaseWeek),
        sentence: sentenceFor(order.packs),
        left: {
          packs: left,
          priceMinor: priceFor(
            prices.map(({ from, price }) => ({ from, minor: price })),
            left,
          ),
          sentence: sentenceFor(left),
        },
        campaignIds: answer.campaigns.flatMap((of) => (of.lot === lot ? (names.campaigns[of.id] ?? []) : [])),
      },
    ];
  });
}

/** The orders of a plan that were not asked for until then. */
export async function orderedBy(context: Context, { plan, answer, names }: PlanRead, until: Date): Promise<Ordered[]> {
  const asked = await askedSince(context, plan.madeAt, until);
  return answer.orders.flatMap(({ offer, orderWeek, packs }) => {
    const offerId = names.offers[offer];
    if (offerId === undefined) return [];
    const given = Math.min(packs, asked.get(offerId) ?? 0);
    asked.set(offerId, (asked.get(offerId) ?? 0) - given);
    const monday = mondayOfWeek(plan.fromDay, orderWeek);
    return packs > given ? [{ offerId, monday, by: fridayOf(monday), packs: packs - given }] : [];
  });
}

export interface Due {
  readonly basis: 'PLAN' | 'REORDER_POINT';
  readonly offer: Offer;
  readonly packs: number;
  readonly priceMinor: number;
  readonly orderBy: string;
  readonly arrivesOn: string;
  readonly sentence: string;
}

/** What is on its way of an item: dry grams, or plates. */
const onTheWay = (orders: readonly (Order & { deliveries: Delivery[] })[], { dryShare }: ItemFacts): number =>
  orders.reduce((sum, order) => sum + stillOut(order) * dryPerPack(order, dryShare), 0);

/** By the simple rule, where there is no plan: what is free and on its way has come down to the reorder point. */
function dueByPoint(of: ItemFacts, coming: number, today: string): Due[] {
  const [offer] = of.offers;
  const { reorder } = of;
  if (!offer || !reorder) return [];
  const free = freeOfLots(of.stock?.lots ?? []);
  if (free + coming > reorder.point) return [];
  const wanted = Math.ceil((coverWeeks * of.weekly.mean) / dryPerPack(offer, of.dryShare));
  const packs = Math.min(offer.mostPacks ?? Infinity, Math.max(1, wanted));
  const unit = unitOf(of.item);
  const sentence = `Order ${packsText(packs, offer)} by ${daySaid(today, today)}: ${Math.floor(free)} ${unit} are free and ${Math.floor(coming)} ${unit} on their way, and the reorder point is ${reorder.point} ${unit}.`;
  return [
    {
      ...{ basis: 'REORDER_POINT' as const, offer, packs, orderBy: today, sentence },
      priceMinor: priceFor(pricesOf(offer), packs),
      arrivesOn: daysAfter(today, 7 * plannedWeeks(offer)),
    },
  ];
}

/** What to order this week, the most urgent first: by the plan that counts, else by reorder points. */
export async function ordersDue(context: Context, weeksAhead: number): Promise<Due[]> {
  const today = dayOf(context.now(), context.lab.timeZone);
  const plan = await currentPlan(context);
  if (plan) {
    const week = weekOf(plan.fromDay, today) + weeksAhead;
    return (await linesOf(context, planRead(plan)))
      .filter(({ orderWeek, left }) => orderWeek <= week && left.packs > 0)
      .map(({ offer, left, orderBy: by, arrivesOn }) => ({
        ...{ basis: 'PLAN' as const, offer, orderBy: by, arrivesOn },
        ...left,
      }));
  }
  const orders = await context.database.read.order.findMany({
    where: { labId: context.lab.id, state: { in: ['ASKED_FOR', 'BOUGHT'] } },
    include: { deliveries: { where: { takenBackAt: null } } },
  });
  return (await itemsNow(context)).flatMap((of) => {
    const its = orders.filter(
      ({ sorbentId, backing }) => sorbentId === of.item.sorbentId && backing === of.item.backing,
    );
    return dueByPoint(of, onTheWay(its, of), today);
  });
}

/** Why a plan should be made anew, in sentences; empty while it holds. */
export async function planDue(context: Context, plan: PurchasePlan): Promise<string[]> {
  const { read } = context.database;
  const since = { labId: context.lab.id, changedAt: { gt: plan.madeAt } };
  const [offers, campaigns, items, decided] = await Promise.all([
    read.offer.count({ where: since }),
    read.campaign.count({ where: since }),
    read.boughtItem.count({ where: since }),
    read.lotDecision.count({ where: { labId: context.lab.id, at: { gt: plan.madeAt } } }),
  ]);
  return [
    ...(plan.fromDay < thisMonday(context) ? ['it was made in another week'] : []),
    ...(offers > 0 ? ['an offer changed'] : []),
    ...(campaigns > 0 ? ['a campaign changed'] : []),
    ...(items > 0 ? ['what counts for an item changed'] : []),
    ...(decided > 0 ? ['a lot was decided on'] : []),
  ];
}
