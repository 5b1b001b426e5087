// Why a line of the plan is as it is: what would cost more were it ordered a week later, or one pack less of it.
import { belowMinimums, deliveriesOf, feesOf } from './exact.ts';
import type { Item, Model } from './model.ts';
import { fewestPacks, type ItemPlan, lotName, lotsOf, type Order, releaseWeek, tidy } from './plan.ts';
import { countedOf, feasible, type Settled } from './settle.ts';
import type { Tally } from './tally.ts';
import { amount, inWeek, ofLot, type Sentence, sentence, span, weeksText } from './words.ts';

type Part = 'check' | 'campaign' | 'safety' | 'shortage' | 'break' | 'minimum' | 'fee';

/** The plan with one order changed, or left out; a campaign that its lot no longer covers goes uncovered. */
function changed(item: Item, plan: ItemPlan, at: number, order: Order | null): ItemPlan {
  const own = item.lots.length;
  const lot = own + at;
  const arrives = order !== null && order.week <= order.offer.latest && order.packs > 0;
  const orders = arrives
    ? plan.orders.map((old, i) => (i === at ? order : old))
    : plan.orders.filter((_, i) => i !== at);
  const covered = plan.covered.map((of) => (of === null || arrives || of < lot ? of : of === lot ? null : of - 1));
  return feasible(item, tidy({ ...plan, orders, covered }, own));
}

interface Rise {
  readonly part: Part;
  readonly micro: number;
}

function rises(
  model: Model,
  plans: readonly ItemPlan[],
  item: Item,
  { tally: before }: Settled,
  { plan: after, tally }: Settled,
  order: Order,
): Rise[] {
  const { source, index } = item;
  const deliveries = deliveriesOf(
    model,
    plans.map((plan, i) => (i === index ? after : plan)),
  );
  const moved = after.orders.some(({ offer }) => offer === order.offer);
  const packs = (plan: ItemPlan) => plan.orders.reduce((sum, { offer, packs: of }) => sum + of * offer.pack, 0);
  const lost = packs(plans[index]!) - packs(after);
  // A pack less saves its price; a price break is what the others then cost more.
  const saved = moved && lost > 0 ? (lost / order.offer.pack) * order.offer.priceOf[order.packs]! : 0;
  return [
    { part: 'check', micro: (tally.withoutOld - before.withoutOld) * 1e6 },
    { part: 'campaign', micro: (tally.uncovered - before.uncovered) * 1e6 },
    { part: 'safety', micro: (tally.belowSafety - before.belowSafety) * source.belowSafetyMicro },
    { part: 'shortage', micro: (tally.shortage - before.shortage) * source.shortMicro },
    { part: 'break', micro: moved && lost > 0 ? (tally.goods - before.goods + saved) * 1e6 : 0 },
    { part: 'minimum', micro: belowMinimums(model, deliveries) * 1e6 },
    { part: 'fee', micro: (feesOf(model, deliveries) - feesOf(model, deliveriesOf(model, plans))) * 1e6 },
  ];
}

const most = (all: readonly Rise[]): Rise => all.reduce((best, rise) => (rise.micro > best.micro ? rise : best));

/** The first week that is worse than without the change. */
const firstWorse = (weeks: number, before: (week: number) => number, after: (week: number) => number): number =>
  Array.from({ length: weeks }, (_, i) => i + 1).find((week) => after(week) > before(week)) ?? 1;

/** What is said of the part that rises most. */
function saidOf(
  model: Model,
  item: Item,
  plans: readonly ItemPlan[],
  at: number,
  part: Part,
  before: Settled,
  after: Settled,
  change: string,
): Sentence {
  const plan = plans[item.index]!;
  const order = plan.orders[at]!;
  const { unit, check, safety } = item.source;
  const { supplier } = order.offer;
  switch (part) {
    case 'check': {
      const release = releaseWeek(item, order.offer, order.week);
      const old = lotsOf(item, plan)
        .map((lot, i) => ({ lot, i, until: before.use[i]!.findLastIndex((quantity) => quantity > 0) }))
        .filter(({ lot, i, until }) => i !== item.lots.length + at && lot.release < release && until > 0)
        .reduce<{ i: number; until: number } | null>(
          (last, one) => (last && last.until >= one.until ? last : one),
          null,
        );
      const ends = old
        ? sentence`${ofLot(lotName(item, plan, old.i))} ends in ${inWeek(old.until)}`
        : sentence`the old lot ends`;
      return sentence`${change}, ${ends} before the check, which takes ${weeksText(check.weeks)}, is done.`;
    }
    case 'campaign': {
      const lost = item.campaigns.find((_, i) => plan.covered[i] !== null && after.plan.covered[i] === null);
      return lost
        ? sentence`${change}, it would not cover campaign ${lost.id}, which needs ${amount(lost.quantity, unit)} of one lot in ${span(lost.first, lost.last)}.`
        : sentence`${change}, a campaign would go uncovered.`;
    }
    case 'shortage': {
      const of = (tally: Tally) => (week: number) => tally.missing[week]!;
      const week = firstWorse(model.weeks, of(before.tally), of(after.tally));
      const more = amount(after.tally.shortage - before.tally.shortage, unit);
      return sentence`${change}, ${more}${before.tally.shortage > 0 ? ' more' : ''} would be missing from ${inWeek(week)} on.`;
    }
    case 'safety': {
      const of = (tally: Tally) => (week: number) => Math.max(0, safety - tally.reserve[week]!);
      const week = firstWorse(model.weeks, of(before.tally), of(after.tally));
      const further = of(before.tally)(week) > 0 ? 'further ' : '';
      return sentence`${change}, stock would be ${further}below its safety of ${amount(safety, unit)} in ${inWeek(week)}.`;
    }
    case 'break': {
      const packs = order.offer.priceOf[order.packs]! < order.offer.priceOf[1]! ? 'so many packs' : 'a pack';
      return sentence`${change}, the price of ${packs} would be lost.`;
    }
    case 'minimum':
      return sentence`${change}, the order would be below the minimum of ${model.problem.suppliers[supplier]!.id}.`;
    case 'fee': {
      const others = plans.flatMap(({ orders }) =>
        orders.filter((other) => other !== order && other.week === order.week && other.offer.supplier === supplier),
      );
      return others.length > 0
        ? sentence`${change}, it would need a delivery of its own: it comes with others of ${model.problem.suppliers[supplier]!.id}.`
        : sentence`${change}, its delivery would cost more.`;
    }
  }
}

export function reasonOf(model: Model, plans: readonly ItemPlan[], item: Item, at: number): Sentence {
  const plan = plans[item.index]!;
  const order = plan.orders[at]!;
  const before = countedOf(model, item, plan);
  const changedTo = (other: Order | null) => countedOf(model, item, changed(item, plan, at, other));
  const later = changedTo({ ...order, week: order.week + 1 });
  const byLater = most(rises(model, plans, item, before, later, order));
  if (byLater.micro > 0) {
    return saidOf(model, item, plans, at, byLater.part, before, later, 'Ordered a week later');
  }
  const isMore = order.packs > fewestPacks(item, order.offer);
  const fewer = changedTo(isMore ? { ...order, packs: order.packs - 1 } : null);
  const byFewer = most(rises(model, plans, item, before, fewer, order));
  const change = isMore ? 'With one pack fewer' : 'Without it';
  if (byFewer.micro > 0) return saidOf(model, item, plans, at, byFewer.part, before, fewer, change);
  return sentence`Neither a later order nor a smaller one costs more by itself; together with the other orders this is the cheapest found.`;
}
