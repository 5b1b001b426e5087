// Many items: column generation with a master programme, a bound from its prices, then polishing by turns.
import type { Highs } from 'highs';
import type { Found } from '../answer.ts';
import { type Model, mostTogether } from '../model.ts';
import { cheapest } from '../price/cheapest.ts';
import { type Charges, noCharges } from '../price/charges.ts';
import { gridOf } from '../price/grid.ts';
import { settle } from '../settle.ts';
import type { PurchaseWatch } from '../types.ts';
import { backOf, between, fair } from './bound.ts';
import { chargedOf, Pool } from './columns.ts';
import { master } from './master.ts';
import { costOf, turn, type Whole } from './respond.ts';

/** Shares of the time that is given. */
const [pricingShare, choosingShare] = [0.56, 0.78];
const [coarse, fine] = [800, 4000];

/** What the first plans are made at: shares of a delivery's fee and of the price of overflow. */
const first = [
  [0, 0],
  [0, 0.5],
  [0.5, 1],
  [1, 0.25],
] as const;

/** Branches of the choice among known plans, and turns of polishing: counted, so that the answer is always the same. */
const [nodes, turns] = [500, 8];

/** Rounds of pricing that the seconds buy on an ordinary machine; the clock is only the guard. */
const roundsOf = ({ items, weeks, problem }: Model): number =>
  Math.min(60, Math.ceil((problem.limits.seconds * 2000) / (items.length * weeks)));

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

export function largePlan(model: Model, highs: Highs, watch: PurchaseWatch): Found {
  const { seconds, gap } = model.problem.limits;
  const past = (share: number) => watch.cancelled() || watch.seconds() > share * seconds;
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

  const price = (charges: Charges, of = grids): void => {
    const asked = fair(model, charges);
    let figure = backOf(model, asked);
    for (const item of model.items) {
      let known = Infinity;
      for (const column of pool.columns) {
        if (column.item === item) known = Math.min(known, chargedOf(model, column, asked));
      }
      const found = cheapest(model, item, of[item.index]!, asked, known);
      figure += found.figure;
      if (found.plan) pool.add(item, settle(model, item, found.plan));
    }
    // What adding so many figures in floating point may have lost.
    figure -= 1e-9 * Math.abs(figure);
    if (figure > bound) {
      bound = figure;
      stable = asked;
    }
  };
  const stopped = () => watch.cancelled();
  const polish = (roomShare: number, share: number): void => {
    keep(
      turn(
        model,
        grids,
        best,
        roomShare,
        () => past(share),
        (index, settled) => pool.add(model.items[index]!, settled),
      ),
    );
  };
  // A first plan, whatever time there is: item by item, each beside those before it.
  polish(1, Infinity);
  for (const [share, room] of first) if (!past(pricingShare)) price(firstCharges(model, share, room));
  const rounds = roundsOf(model);
  for (let round = 0; round < rounds && !past(pricingShare); round++) {
    const solved = master(model, highs, pool.columns, false, { seconds, stopped });
    if (!solved) break;
    const { objective } = solved.solved;
    if (objective - bound < 1e-4 * Math.abs(objective)) break;
    price(between(stable, solved.charges, round % 2 === 1 ? 1 : 0.5));
    watch.progress((choosingShare * (round + 1)) / rounds);
  }
  // Once more in small cells: less is rounded up.
  if (!past(choosingShare - 0.05)) {
    price(
      stable,
      model.items.map((item) => gridOf(model, item, fine)),
    );
  }
  if (!past(choosingShare)) {
    const left = Math.max(0.2, (choosingShare + 0.08) * seconds - watch.seconds());
    const chosen = master(model, highs, pool.columns, true, { seconds: left, gap: 0.0005, nodes, stopped });
    if (chosen) {
      const taken = pool.columns.filter((_, i) => chosen.solved.values[i]! > 0.5);
      keep(model.items.map(({ index }) => taken.find(({ item }) => item.index === index)?.settled ?? nothing[index]!));
    }
  }
  const isNear = () => cost - bound <= gap * Math.abs(cost);
  for (let round = 0, before = Infinity; round < turns && !past(0.97) && !isNear(); round += 2) {
    if (before - cost < 1e-6) break;
    before = cost;
    polish(1, 0.97);
    polish(0.4, 0.97);
  }
  return {
    plans: best.map(({ plan }) => plan),
    uses: best.map(({ use }) => use),
    bound: model.items.every(({ campaigns }) => campaigns.length <= mostTogether) ? bound : null,
    status: watch.cancelled() ? 'cancelled' : isNear() || !past(0.97) ? 'gap' : 'time',
  };
}
