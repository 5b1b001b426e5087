// The cheapest plan of one item at given charges, by a dynamic programme over how much use is covered and which campaigns.
//
// Lots come in the order of their release, each covering the use that follows what is covered already. Holding is
// counted from week 1 (charges.ts), so a unit costs the same from whichever lot, and any real plan can be put into this
// order at no more than its cost: quantities are rounded up to cells, shelf lives only limit how much of a lot is of
// use, a lot in check counts as released, and what is left over at the end is worth the most it can be. So the least
// figure here is below the cost of every real plan, whatever it does.
import { type Allowance, endless } from '../budget.ts';
import { type Item, type Model, mostTogether } from '../model.ts';
import { type ItemPlan, type Order, tidy } from '../plan.ts';
import { type Charges, ratesOf } from './charges.ts';
import type { Grid } from './grid.ts';
import { openingsOf } from './openings.ts';
import { type Option, optionsOf, shelvesOf } from './options.ts';

export interface Cheapest {
  /** Minor units; no plan of the item costs less at these charges. −Infinity: it was not found out. */
  readonly figure: number;
  /** Null: none is better than the known one. */
  readonly plan: ItemPlan | null;
}

const shortage = -1;
/** Steps are told so many at a time. */
const countedSteps = 100_000;
/** Weeks of order that are looked at one by one where the shelf life counts. */
const nearby = 5;

/** The least that a lot adds, whatever becomes of it, and the most that own lots are worth at the end, in minor units. */
function leastLot({ source, offers, lots }: Item): { least: number; worth: number } {
  const value = source.endValueMicro / 1e6;
  let least = Infinity;
  for (const offer of offers) {
    for (let packs = 1; packs <= offer.most; packs++) {
      least = Math.min(least, source.check.cost + packs * (offer.priceOf[packs]! - value * offer.pack));
    }
  }
  return { least, worth: value * lots.reduce((sum, { quantity }) => sum + quantity, 0) };
}

/** What the use that is covered pays by the week it falls into, by cells, in minor units; never too much. */
function usePaid({ demand, cumulative }: Item, { cell, top }: Grid, use: Float64Array): Float64Array {
  const paid = new Float64Array(top + 1);
  let week = 1;
  let sum = 0;
  for (let at = 1; at <= top; at++) {
    while (week < demand.length && cumulative[week]! < at * cell) {
      sum += demand[week]! * use[week]!;
      week += 1;
    }
    const rest = week < demand.length ? at * cell - cumulative[week - 1]! : 0;
    paid[at] = sum + (rest > 0 ? rest * use[week]! : 0);
  }
  return paid;
}

/**
 * `ceiling`: what a known plan of the item costs at these charges; dearer ones are not followed to their end. Where the
 * allowance ends before, nothing is known.
 */
export function cheapest(
  model: Model,
  item: Item,
  grid: Grid,
  charges: Charges,
  ceiling: number,
  allowance: Allowance = endless,
): Cheapest {
  const { weeks } = model;
  const { cell, top, until, calm, safe, below } = grid;
  const { cumulative, source } = item;
  const campaigns = item.campaigns.slice(0, mostTogether);
  const rates = ratesOf(model, item, charges);
  const openings = openingsOf(model, item, rates);
  const sets = 1 << campaigns.length;
  const shelves = Math.max(1, shelvesOf(item).length);
  const step = sets * shelves;
  const wanted = cumulative[weeks]!;
  const { keep, withoutOld, weeks: checking } = source.check;

  // What is left over is worth the most it can be: kept to the end, or written off at once.
  let left = rates.end;
  for (const offer of item.offers) {
    const first = 1 + offer.lead + offer.lasts;
    if (first <= weeks) left = Math.min(left, rates.writeOff[first]!);
  }
  // A plan of more lots than `most` costs more than `dear`; one of so many has been rounded up by no more than `slack`.
  const { least: lotCost, worth } = leastLot(item);
  const most = cell === 1 ? 0 : Math.ceil((Math.max(0, ceiling) + worth) / Math.max(lotCost, 1e-9));
  const dear = cell === 1 ? Infinity : (most + 1) * lotCost - worth;
  const slack = cell === 1 ? 0 : Math.min(most + 2, 1e6) * cell;
  const over = (units: number): number => (left <= 0 ? units : Math.max(0, units - slack)) * left;
  const options = optionsOf(model, item, grid, rates, charges, left);

  const figure = new Float64Array((top + 1) * step).fill(Infinity);
  const before = new Int32Array((top + 1) * step).fill(-1);
  const by = new Int32Array((top + 1) * step).fill(shortage);
  const week = new Int32Array((top + 1) * step);
  openings.forEach(({ mask, useful, cost, perishing, rate }, i) => {
    const cells = Math.ceil(useful / cell) + (cell > 1 ? 1 : 0);
    // Own lots that expire may also be given up unused.
    for (let spared = 0; spared <= Math.min(cells, Math.floor(perishing / cell)); spared++) {
      const at = Math.min(top, cells - spared) * step + mask * shelves;
      const all = cost + spared * cell * rate + over(Math.max(0, useful - spared * cell - top * cell));
      if (all < figure[at]!) {
        figure[at] = all;
        by[at] = i;
      }
    }
  });

  const shortCost = cell * rates.short;
  const relax = (next: number, cost: number, state: number, option: number, when: number): void => {
    if (cost >= figure[next]!) return;
    figure[next] = cost;
    before[next] = state;
    by[next] = option;
    week[next] = when;
  };
  // How far a lot's use may come: to its end, and past it what older lots still hold then and live longer.
  const reachOf = ({ reach, longer, delay }: Option, t: number, covered: number): number =>
    Math.ceil(
      (reach[t]! + Math.min(longer[t]!, Math.max(0, covered - cumulative[Math.max(0, t + delay - 1)]!))) / cell,
    );
  // Every lot pays for itself, so what is still to come costs at least nothing beyond the use it covers.
  const paid = usePaid(item, grid, rates.use);
  const limit = options.every(({ paysItself }) => paysItself) ? ceiling + 1e-6 * Math.abs(ceiling) + 1 : Infinity;
  let steps = options.length * weeks;
  for (let at = 0; at <= top; at++) {
    if (at === 0 || steps > countedSteps) {
      if (!allowance.spend(steps)) return { figure: -Infinity, plan: null };
      steps = 0;
    }
    const covered = at * cell;
    for (let state = at * step; state < (at + 1) * step; state++) {
      const here = figure[state]!;
      if (here === Infinity || here + paid[at]! > limit) continue;
      const longest = state % shelves;
      const mask = (state - at * step - longest) / shelves;
      if (covered < wanted) {
        for (let release = safe[at]!; release <= until[at]!; release++) {
          const row = (release - 1) * (top + 1) + at;
          const there = here + shortCost - cell * rates.use[release]! + below[row]! - below[row + 1]!;
          relax(state + step, there, state, shortage, release);
        }
      }
      steps += options.length;
      for (let i = 0; i < options.length; i++) {
        const option = options[i]!;
        if ((option.mask & mask) !== 0) continue;
        // A pack more than what covers everything is only worth its price where it brings a lower one.
        if (option.fewer >= 0 && at + option.fewer >= top) continue;
        const latest = Math.min(option.to, until[at]! - option.delay);
        if (latest < option.from) continue;
        const full = at + option.cells;
        const end = full > top ? top : full;
        const row = (mask | option.mask) * shelves + (option.shelf > longest ? option.shelf : longest);
        const next = end * step + row;
        const from = here + over((full - end) * cell);
        const quiet = Math.min(latest, calm[at]! - option.delay);
        // Where no lot before lives longer, none of this one can be used after it has expired.
        const isHeld = option.shelf >= longest;
        // Weeks from here on are tried one by one; of those before, the least cost is taken with the furthest reach.
        let explicit = option.from;
        if (quiet >= option.from) {
          if (!isHeld || reachOf(option, quiet, covered) >= full) {
            if (next !== state) relax(next, from + option.least[quiet]!, state, i, option.when[quiet]!);
            explicit = quiet + 1;
          } else {
            explicit = Math.max(option.from, quiet - nearby);
            const past = explicit - 1;
            if (past >= option.from && option.least[past]! < Infinity) {
              const reached = Math.max(
                at,
                Math.min(full, Math.ceil((option.reach[past]! + option.longer[past]!) / cell)),
              );
              const held = reached > top ? top : reached;
              const wasted = Math.max(0, (full - reached) * cell - slack) * option.writeOff[option.from]!;
              const beyond = over((reached - held) * cell);
              const to = held * step + row;
              if (to !== state) relax(to, here + beyond + wasted + option.least[past]!, state, i, option.when[past]!);
            }
          }
        }
        if (latest >= explicit) steps += latest - explicit + 1;
        for (let t = explicit; t <= latest; t++) {
          const own = option.cost[t]!;
          if (own === Infinity) continue;
          const reached = isHeld ? Math.max(at, Math.min(full, reachOf(option, t, covered))) : full;
          const held = reached > top ? top : reached;
          const to = held * step + row;
          if (to === state) continue;
          const old = t + option.delay - 1;
          const line = old * (top + 1);
          const isAlone = checking > 0 && covered - cumulative[old]! < keep;
          const cost =
            here +
            own +
            over((reached - held) * cell) +
            Math.max(0, (full - reached) * cell - slack) * option.writeOff[t]! +
            below[line + at]! -
            below[line + held]! +
            (isAlone ? withoutOld : 0);
          relax(to, cost, state, i, t);
        }
      }
    }
  }

  allowance.spend(steps);

  const used = item.demand.reduce((sum, quantity, at) => sum + quantity * rates.use[at]!, 0);
  let least = Infinity;
  let last = 0;
  for (let at = Math.ceil(wanted / cell); at <= top; at++) {
    for (let state = at * step; state < (at + 1) * step; state++) {
      if (figure[state] === Infinity) continue;
      const mask = Math.floor((state - at * step) / shelves);
      const lost = campaigns.reduce((sum, { uncovered }, i) => sum + ((mask >> i) & 1 ? 0 : uncovered), 0);
      const all = figure[state]! + used + below[weeks * (top + 1) + at]! + over(at * cell - wanted) + lost;
      if (all < least) {
        least = all;
        last = state;
      }
    }
  }

  if (least === Infinity) return { figure: Math.min(ceiling, dear), plan: null };
  const orders: Order[] = [];
  const spare = new Array<number>(weeks + 1).fill(0);
  const given = campaigns.map((): number | null => null);
  let state = last;
  for (; before[state]! >= 0; state = before[state]!) {
    if (by[state] === shortage) {
      spare[week[state]!]! += cell;
      continue;
    }
    const option = options[by[state]!]!;
    campaigns.forEach((_, i) => {
      if ((option.mask >> i) & 1) given[i] = item.lots.length + orders.length;
    });
    orders.push({ offer: option.offer, week: week[state]!, packs: option.packs });
  }
  const opening = openings[by[state]!]!;
  const covered = item.campaigns.map((_, i) => opening.covered[i] ?? given[i] ?? null);
  return { figure: Math.min(least, dear), plan: tidy({ orders, covered, spare }, item.lots.length) };
}
