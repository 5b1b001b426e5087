// Why a line of the plan is as it is: what would cost more were it ordered a week later, or one pack less of it.
import { firstExpiryFirst, freeOf } from './allocate.ts';
import { deliveriesOf, supplierOf, weekOf } from './exact.ts';
import type { Item, Model } from './model.ts';
import { type ItemPlan, lotName, lotsOf, type Order, releaseWeek, suits, tidy } from './plan.ts';
import { reserveOf, type Tally, tallyOf } from './tally.ts';
import { amount, weeksText } from './words.ts';

type Part = 'check' | 'campaign' | 'safety' | 'shortage' | 'break' | 'minimum' | 'fee';

/** The plan with one order changed, or left out; a campaign that its lot no longer covers goes uncovered. */
function changed(model: Model, item: Item, plan: ItemPlan, at: number, order: Order | null): ItemPlan {
  const own = item.lots.length;
  const lot = own + at;
  const arrives = order !== null && order.week <= order.offer.latest && order.packs > 0;
  const orders = arrives
    ? plan.orders.map((old, i) => (i === at ? order : old))
    : plan.orders.filter((_, i) => i !== at);
  const covered = plan.covered.map((of) => (of === null || arrives || of < lot ? of : of === lot ? null : of - 1));
  const next = tidy({ orders, covered }, own);
  const lots = lotsOf(item, next);
  const kept = [...next.covered];
  kept.forEach((of, i) => {
    if (of !== null && !suits(lots[of]!, item.campaigns[i]!)) kept[i] = null;
  });
  for (let i = kept.length - 1; i >= 0; i--) {
    const of = kept[i];
    if (typeof of === 'number' && freeOf(item, { ...next, covered: kept }, lots)[of]! < 0) kept[i] = null;
  }
  return { ...next, covered: kept };
}

interface Rise {
  readonly part: Part;
  readonly micro: number;
}

function rises(
  model: Model,
  plans: readonly ItemPlan[],
  item: Item,
  before: Tally,
  after: ItemPlan,
  at: number,
): Rise[] {
  const { source, index } = item;
  const tally = tallyOf(model, item, after, firstExpiryFirst(model, item, after));
  const others = plans.map((plan, i) => (i === index ? after : plan));
  const order = plans[index]!.orders[at]!;
  const moved = after.orders.find(({ offer }) => offer === order.offer && after.orders.length > 0);
  const packs = (plan: ItemPlan) => plan.orders.reduce((sum, { offer, packs: of }) => sum + of * offer.pack, 0);
  const lost = packs(plans[index]!) - packs(after);
  const fees = (of: readonly ItemPlan[]) =>
    [...deliveriesOf(model, of).keys()].reduce(
      (sum, key) => sum + model.fee[supplierOf(model, key)]![weekOf(model, key)]!,
      0,
    );
  const short = [...deliveriesOf(model, others)].reduce(
    (sum, [key, spent]) => sum + Math.max(0, model.minimum[supplierOf(model, key)]! - spent),
    0,
  );
  // A pack less saves its price; a price break is what the others then cost more.
  const saved = moved && lost > 0 ? (lost / order.offer.pack) * order.offer.priceOf[order.packs]! : 0;
  return [
    { part: 'check', micro: (tally.withoutOld - before.withoutOld) * 1e6 },
    { part: 'campaign', micro: (tally.uncovered - before.uncovered) * 1e6 },
    { part: 'safety', micro: (tally.belowSafety - before.belowSafety) * source.belowSafetyMicro },
    { part: 'shortage', micro: (tally.shortage - before.shortage) * source.shortMicro },
    { part: 'break', micro: moved && lost > 0 ? (tally.goods - before.goods + saved) * 1e6 : 0 },
    { part: 'minimum', micro: short * 1e6 },
    { part: 'fee', micro: (fees(others) - fees(plans)) * 1e6 },
  ];
}

const most = (all: readonly Rise[]): Rise => all.reduce((best, rise) => (rise.micro > best.micro ? rise : best));

function firstWeek(of: readonly number[], below: number): number {
  return Math.max(
    1,
    of.findIndex((quantity, week) => week > 0 && quantity < below),
  );
}

/** What is said of the part that rises most. */
function sentence(
  model: Model,
  item: Item,
  plans: readonly ItemPlan[],
  at: number,
  part: Part,
  after: ItemPlan,
  change: string,
): string {
  const plan = plans[item.index]!;
  const order = plan.orders[at]!;
  const { unit, check, safety } = item.source;
  const use = firstExpiryFirst(model, item, after);
  const lots = lotsOf(item, after);
  const missing = item.demand.map((wanted, week) =>
    week === 0 ? 0 : wanted - use.reduce((sum, of) => sum + of[week]!, 0),
  );
  switch (part) {
    case 'check': {
      const release = releaseWeek(item, order.offer, order.week);
      const before = firstExpiryFirst(model, item, plan);
      const old = lotsOf(item, plan)
        .map((lot, i) => ({ lot, i, until: before[i]!.findLastIndex((quantity) => quantity > 0) }))
        .filter(({ lot, i, until }) => i !== item.lots.length + at && lot.release < release && until > 0)
        .reduce<{ i: number; until: number } | null>(
          (last, one) => (last && last.until >= one.until ? last : one),
          null,
        );
      const ends = old ? `lot ${lotName(item, plan, old.i)} ends in week ${old.until}` : 'the old lot ends';
      return `${change}, ${ends} before the check, which takes ${weeksText(check.weeks)}, is done.`;
    }
    case 'campaign': {
      const lost = item.campaigns.find((_, i) => plan.covered[i] !== null && after.covered[i] === null);
      return lost
        ? `${change}, it would not cover campaign ${lost.id}, which needs ${amount(lost.quantity, unit)} of one lot from week ${lost.first} to ${lost.last}.`
        : `${change}, a campaign would go uncovered.`;
    }
    case 'shortage': {
      const week = Math.max(
        1,
        missing.findIndex((quantity) => quantity > 0),
      );
      return `${change}, ${amount(
        missing.reduce((sum, quantity) => sum + quantity, 0),
        unit,
      )} would be missing from week ${week} on.`;
    }
    case 'safety': {
      const left = lots.map(({ quantity, last }, lot) =>
        last <= model.weeks ? 0 : quantity - use[lot]!.reduce((sum, of) => sum + of, 0),
      );
      const week = firstWeek(reserveOf(model.weeks, lots, use, left), safety);
      return `${change}, stock would be below its safety of ${amount(safety, unit)} in week ${week}.`;
    }
    case 'break':
      return `${change}, the price of ${order.offer.priceOf[order.packs]! < order.offer.priceOf[1]! ? 'so many packs' : 'a pack'} would be lost.`;
    case 'minimum':
      return `${change}, the order would be below the minimum of ${model.problem.suppliers[order.offer.supplier]!.id}.`;
    case 'fee':
      return `${change}, it would need a delivery of its own: it comes with others of ${model.problem.suppliers[order.offer.supplier]!.id}.`;
  }
}

export function reasonOf(model: Model, plans: readonly ItemPlan[], item: Item, at: number): string {
  const plan = plans[item.index]!;
  const order = plan.orders[at]!;
  const before = tallyOf(model, item, plan, firstExpiryFirst(model, item, plan));
  const later = changed(model, item, plan, at, { ...order, week: order.week + 1 });
  const fewer = changed(model, item, plan, at, order.packs > 1 ? { ...order, packs: order.packs - 1 } : null);
  const byLater = most(rises(model, plans, item, before, later, at));
  if (byLater.micro > 0) return sentence(model, item, plans, at, byLater.part, later, 'Ordered a week later');
  const byFewer = most(rises(model, plans, item, before, fewer, at));
  const change = order.packs > 1 ? 'With one pack fewer' : 'Without it';
  if (byFewer.micro > 0) return sentence(model, item, plans, at, byFewer.part, fewer, change);
  return 'Neither a later order nor a smaller one costs more by itself; together with the other orders this is the cheapest found.';
}
