// Many items: column generation with a master programme, a bound from its prices, then polishing by turns.
import type { Highs } from 'highs';
import type { Found } from '../answer.ts';
import { type Allowance, Budget } from '../budget.ts';
import { type Model, mostOneByOne, mostTogether } from '../model.ts';
import { cheapest } from '../price/cheapest.ts';
import { type Charges, noCharges } from '../price/charges.ts';
import { cellsOf, gridOf } from '../price/grid.ts';
import { settle } from '../settle.ts';
import type { PurchaseWatch } from '../types.ts';
import { backOf, between, fair } from './bound.ts';
import { chargedOf, Pool } from './columns.ts';
import { master } from './master.ts';
import { costOf, turn, type Whole } from './respond.ts';

/** Shares of the steps that are given: up to the last prices, with the bound in small cells or without; polishing has the rest. */
const [fineShare, pricingShare] = [0.93, 0.77];
/** Below so much of the steps, the bound in small cells leaves time for prices. */
const fineWorth = 0.5;
const [coarse, fine] = [800, 4000];

/** What the first plans are made at: shares of a delivery's fee and of the price of overflow. */
const first = [
  [0, 0],
  [0.5, 1],
] as const;

/** Rounds of pricing, branches of the choice among known plans, turns of polishing, at the most. */
const [rounds, nodes, turns] = [60, 500, 4];

function firstCharges(model: Model, share: number, room: number): Charges {
  const charges = noCharges(model);
  for (const offer of model.offers) {
    for (let week = 1; week <= model.weeks; week++) {
      charges.share[offer.index]![week] = share * model.fee[offer.supplier]![week]!;
    }
  }
  model.problem.storage.forEach(({ overMicro }, group) => charges.room[group]!.fill((room * overMicro) / 1e6));
  return charges;
}

/** Whether the bound holds: every choice that a plan has was looked at. */
const isProven = ({ items, offers }: Model): boolean =>
  items.every(({ campaigns }) => campaigns.length <= mostTogether) && offers.every(({ most }) => most <= mostOneByOne);

export function largePlan(model: Model, highs: Highs, watch: PurchaseWatch, share = 1): Found {
  const budget = new Budget(model, watch, share);
  const grids = model.items.map((item) => gridOf(model, item, coarse));
  const pool = new Pool(model);
  // Ordering nothing is a plan of every item.
  const nothing = model.items.map((item) =>
    settle(model, item, { orders: [], covered: item.campaigns.map(() => null) }),
  );
  model.items.forEach((item) => pool.add(item, nothing[item.index]!));

  let best: Whole = nothing;
  let cost = costOf(model, best);
  const keep = (whole: Whole): void => {
    const next = costOf(model, whole);
    if (next < cost) [best, cost] = [whole, next];
  };
  let bound = -Infinity;
  let stable: Charges = firstCharges(model, 0, 0);

  /** The steps it took. */
  const price = (charges: Charges, share: number, of = grids): number => {
    const from = budget.used;
    const asked = fair(model, charges);
    let figure = backOf(model, asked);
    for (const item of model.items) {
      let known = Infinity;
      for (const column of pool.columns) {
        if (column.item === item) known = Math.min(known, chargedOf(model, column, asked));
      }
      const found = cheapest(model, item, of[item.index]!, asked, known, budget.upTo(share));
      figure += found.figure;
      if (found.plan) pool.add(item, settle(model, item, found.plan));
    }
    // What adding so many figures in floating point may have lost.
    figure -= 1e-9 * Math.abs(figure);
    if (figure > bound) {
      bound = figure;
      stable = asked;
    }
    return budget.used - from;
  };
  const solving = () => ({ seconds: budget.secondsOfSolver, stopped: () => budget.isStopped });
  const polish = (roomShare: number, allowance: Allowance): void => {
    keep(turn(model, grids, best, roomShare, allowance, (index, settled) => pool.add(model.items[index]!, settled)));
  };
  // A first plan, whatever there is to spend: item by item, each beside those before it.
  polish(1, budget.upTo(Infinity));
  let took = 0;
  for (const [share, room] of first) {
    if (budget.has(pricingShare, took)) took = price(firstCharges(model, share, room), pricingShare);
  }
  // Once more in small cells, at the end: less is rounded up.
  const cells = (most: number) => model.items.reduce((sum, item) => sum + cellsOf(item, most).top + 1, 0);
  const fineSteps = (took * cells(fine)) / cells(coarse);
  const isFine = cells(fine) > cells(coarse) && budget.has(fineWorth, fineSteps);
  const hasRound = () => (isFine ? budget.has(fineShare, took + fineSteps) : budget.has(pricingShare, took));
  let isConverged = false;
  for (let round = 0; round < rounds && hasRound(); round++) {
    const solved = master(model, highs, pool.columns, false, solving());
    if (!solved) break;
    const { objective } = solved.solved;
    isConverged = objective - bound < 1e-4 * Math.abs(objective);
    if (isConverged) break;
    took = price(between(stable, solved.charges, round % 2 === 1 ? 1 : 0.5), fineShare);
  }
  if (isFine) {
    price(
      stable,
      fineShare,
      model.items.map((item) => gridOf(model, item, fine)),
    );
  }
  if (budget.has(Infinity)) {
    const chosen = master(model, highs, pool.columns, true, { ...solving(), gap: 0.0005, nodes });
    if (chosen) {
      const taken = pool.columns.filter((_, i) => chosen.solved.values[i]! > 0.5);
      keep(model.items.map(({ index }) => taken.find(({ item }) => item.index === index)?.settled ?? nothing[index]!));
    }
  }
  const { gap } = model.problem.limits;
  const isNear = () => cost - bound <= gap * Math.abs(cost);
  let before = Infinity;
  for (let round = 0; round < turns && budget.has(1) && !isNear() && before - cost >= 1e-6; round++) {
    before = cost;
    polish(1, budget.upTo(1));
    polish(0.4, budget.upTo(1));
  }
  const isDone = isNear() || (isConverged && budget.has(1));
  return {
    plans: best.map(({ plan }) => plan),
    uses: best.map(({ use }) => use),
    bound: isProven(model) ? bound : null,
    status: watch.cancelled() ? 'cancelled' : isDone ? 'gap' : 'time',
  };
}
