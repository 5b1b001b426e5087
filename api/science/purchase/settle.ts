// A plan of one item made ready to be held against others: feasible, with the sparing of old lots that pays.
import { firstExpiryFirst, fits, freeOf, type Use } from './allocate.ts';
import type { Item, Model } from './model.ts';
import { type ItemPlan, lotsOf, releaseWeek, suits } from './plan.ts';
import { ownMicro, type Tally, tallyOf } from './tally.ts';

export interface Settled {
  readonly plan: ItemPlan;
  readonly use: Use;
  readonly tally: Tally;
  /** Minor units, without fees and overflow. */
  readonly own: number;
}

/** Campaigns that their lot cannot cover go uncovered. */
export function feasible(item: Item, plan: ItemPlan): ItemPlan {
  if (fits(item, plan)) return plan;
  const lots = lotsOf(item, plan);
  const covered = plan.covered.map((lot, i) => (lot !== null && suits(lots[lot]!, item.campaigns[i]!) ? lot : null));
  for (let i = covered.length - 1; i >= 0; i--) {
    const lot = covered[i];
    if (typeof lot === 'number' && freeOf(item, { ...plan, covered }, lots)[lot]! < 0) covered[i] = null;
  }
  return { ...plan, covered };
}

export function countedOf(model: Model, item: Item, plan: ItemPlan): Settled {
  const use = firstExpiryFirst(model, item, plan);
  const tally = tallyOf(model, item, plan, use);
  return { plan, use, tally, own: ownMicro(item, tally) / 1e6 };
}

/** For each check that lacks an old lot: what it lacks is spared in the weeks before, where that costs less. */
function withOld(model: Model, item: Item, from: Settled): Settled {
  const { keep, weeks: checking } = item.source.check;
  if (from.tally.withoutOld === 0 || checking === 0) return from;
  let best = from;
  for (let i = 0; i < from.plan.orders.length; i++) {
    const { offer, week: ordered } = best.plan.orders[i]!;
    const before = releaseWeek(item, offer, ordered) - 1;
    if (before > model.weeks) continue;
    let lacking = keep - best.tally.reserve[before]!;
    if (lacking <= 0) continue;
    const spare = [...(best.plan.spare ?? item.demand.map(() => 0))];
    for (let week = before; week > 0; week--) {
      const missing = best.tally.missing[week]!;
      const more = Math.min(Math.max(0, lacking), item.demand[week]! - missing);
      // What is short already stays short, or it would take what is spared.
      spare[week] = missing + more;
      lacking -= more;
    }
    const next = countedOf(model, item, { ...best.plan, spare });
    if (next.own < best.own) best = next;
  }
  return best;
}

/** A campaign that is left over gets a lot that has enough to spare, where that costs less. */
function covering(model: Model, item: Item, from: Settled): Settled {
  let best = from;
  from.plan.covered.forEach((lot, campaign) => {
    if (lot !== null) return;
    for (let other = 0; other < item.lots.length + best.plan.orders.length; other++) {
      const plan = { ...best.plan, covered: best.plan.covered.map((of, i) => (i === campaign ? other : of)) };
      if (!fits(item, plan)) continue;
      const next = countedOf(model, item, plan);
      if (next.own < best.own) best = next;
    }
  });
  return best;
}

export function settle(model: Model, item: Item, plan: ItemPlan): Settled {
  const spared = countedOf(model, item, feasible(item, plan));
  const met = plan.spare?.some((quantity) => quantity > 0)
    ? countedOf(model, item, { ...spared.plan, spare: item.demand.map(() => 0) })
    : spared;
  return withOld(model, item, covering(model, item, met.own <= spared.own ? met : spared));
}
