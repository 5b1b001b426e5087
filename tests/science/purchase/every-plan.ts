// The least cost by trying every plan: every number of packs in every week, every lot for every campaign, every use and
// waste. Written from the paper, apart from the programme; for a handful of units and weeks. In millionths of a minor unit.
import type { PurchaseItem, PurchaseProblem } from '../../../api/science/purchase/types.ts';

interface Lot {
  quantity: number;
  arrive: number;
  release: number;
  last: number;
  isNew: boolean;
}

interface Choice {
  /** Money by supplier and week, where something is ordered. */
  spent: Map<string, number>;
  micro: number;
}

const noEnd = 999;

/** All ways to take 0 to most[i] of each, as long as `total` allows. */
function* vectors(most: readonly number[], total: number): Generator<number[]> {
  if (most.length === 0) {
    yield [];
    return;
  }
  const [first = 0, ...rest] = most;
  for (let taken = 0; taken <= Math.min(first, total); taken++) {
    for (const others of vectors(rest, total - taken)) yield [taken, ...others];
  }
}

/** The least cost of using these lots, campaigns being given theirs. */
function leastUse(
  problem: PurchaseProblem,
  item: PurchaseItem,
  lots: readonly Lot[],
  covered: readonly number[],
): number {
  const { weeks } = problem;
  const campaigns = problem.campaigns.filter((campaign) => campaign.item === item.id);
  const own = lots.map((_, lot) => campaigns.filter((_, i) => covered[i] === lot).flatMap(({ uses }) => uses));
  const free = lots.map(({ quantity }, lot) => quantity - own[lot]!.reduce((sum, use) => sum + use.quantity, 0));
  if (free.some((quantity) => quantity < 0)) return Infinity;
  let least = Infinity;
  // What is written off is chosen beforehand; what is left of a lot that does not expire is there at the end.
  const mayWaste = free.map((quantity, lot) => (lots[lot]!.last <= weeks ? quantity : 0));
  for (const rest of vectors(mayWaste, Infinity)) {
    least = Math.min(
      least,
      leastOf(
        rest,
        free.map((quantity, lot) => quantity - rest[lot]!),
      ),
    );
  }
  return least;

  function leastOf(rest: readonly number[], useful: readonly number[]): number {
    const known = new Map<string, number>();
    return rest.reduce((sum, quantity) => sum + quantity * item.wasteMicro, 0) + from(1, [...useful]);

    function from(week: number, left: readonly number[]): number {
      if (week > weeks) return -item.endValueMicro * left.reduce((sum, quantity) => sum + quantity, 0);
      const key = `${week}:${left.join(',')}`;
      const before = known.get(key);
      if (before !== undefined) return before;
      // The lots of this week's peak, before use.
      const stock = (at: number, lot: number, of: readonly number[], isAfter: boolean): number => {
        const { arrive, last } = lots[lot]!;
        if (at < arrive || at > last || (isAfter && at === last)) return 0;
        const kept = own[lot]!.filter((use) => (isAfter ? use.week > at : use.week >= at));
        return of[lot]! + rest[lot]! + kept.reduce((sum, use) => sum + use.quantity, 0);
      };
      let peakCost = 0;
      for (const { capacity, overMicro, volume } of problem.storage) {
        const each = volume[item.id] ?? 0;
        if (each === 0) continue;
        const all = lots.reduce((sum, _, lot) => sum + stock(week, lot, left, false), 0);
        peakCost += Math.max(0, each * all - capacity) * overMicro;
      }
      const demand = item.demand[week - 1]!;
      const usable = left.map((quantity, lot) =>
        week >= lots[lot]!.release && week <= lots[lot]!.last ? quantity : 0,
      );
      let least = Infinity;
      for (const taken of vectors(usable, demand)) {
        const next = left.map((quantity, lot) => quantity - taken[lot]!);
        if (next.some((quantity, lot) => quantity > 0 && week >= lots[lot]!.last)) continue;
        const used = taken.reduce((sum, quantity) => sum + quantity, 0);
        const held = lots.reduce((sum, _, lot) => sum + stock(week, lot, next, true), 0);
        const reserve = lots.reduce((sum, { release }, lot) => sum + (release <= week ? next[lot]! : 0), 0);
        const alone = lots.filter(({ isNew, release }) => isNew && release - 1 === week).length;
        least = Math.min(
          least,
          peakCost +
            (demand - used) * item.shortMicro +
            held * item.holdingMicro +
            Math.max(0, item.safety - reserve) * item.belowSafetyMicro +
            (item.check.weeks > 0 && reserve < item.check.keep ? alone * item.check.withoutOld * 1e6 : 0) +
            from(week + 1, next),
        );
      }
      known.set(key, least);
      return least;
    }
  }
}

/** Every plan of one item: what it orders from whom, and the least it costs then. */
function choicesOf(problem: PurchaseProblem, item: PurchaseItem, ceiling: number): Choice[] {
  const slots = problem.offers
    .filter((offer) => offer.item === item.id)
    .flatMap((offer) => {
      const last = problem.weeks - offer.leadWeeks;
      return Array.from({ length: Math.max(0, last) }, (_, i) => ({ offer, week: i + 1 }));
    });
  const campaigns = problem.campaigns.filter((campaign) => campaign.item === item.id);
  const old: Lot[] = problem.lots
    .filter((lot) => lot.item === item.id && lot.status !== 'rejected')
    .map(({ quantity, from, lastWeek }) => ({
      quantity,
      arrive: 1,
      release: from,
      last: lastWeek ?? noEnd,
      isNew: false,
    }));
  const best = new Map<string, Choice>();
  for (const packs of vectors(
    slots.map(({ offer }) => offer.maxPacks),
    Infinity,
  )) {
    const lots = [...old];
    const spent = new Map<string, number>();
    let money = 0;
    packs.forEach((count, i) => {
      if (count === 0) return;
      const { offer, week } = slots[i]!;
      const price = offer.prices.findLast(({ from }) => from <= count)!.price;
      const key = `${offer.supplier}|${week}`;
      spent.set(key, (spent.get(key) ?? 0) + count * price);
      money += count * price + item.check.cost;
      const arrive = week + offer.leadWeeks;
      lots.push({
        quantity: count * offer.pack - item.check.sample,
        arrive,
        release: arrive + item.check.weeks,
        last: offer.shelfWeeks === null ? noEnd : arrive + offer.shelfWeeks - 1,
        isNew: true,
      });
    });
    if (lots.some(({ quantity }) => quantity < 0)) continue;
    const units = lots.reduce((sum, { quantity }) => sum + quantity, 0);
    if (money * 1e6 - units * item.endValueMicro > ceiling) continue;
    let micro = Infinity;
    for (const covered of vectors(
      campaigns.map(() => lots.length),
      Infinity,
    )) {
      const suits = covered.every((lot, i) => {
        const weeks = campaigns[i]!.uses.map(({ week }) => week);
        return (
          lot === lots.length || (lots[lot]!.release <= Math.min(...weeks) && lots[lot]!.last >= Math.max(...weeks))
        );
      });
      if (!suits) continue;
      const lost = campaigns.reduce((sum, { uncovered }, i) => sum + (covered[i] === lots.length ? uncovered : 0), 0);
      micro = Math.min(micro, lost * 1e6 + leastUse(problem, item, lots, covered));
    }
    const key = JSON.stringify([...spent]);
    const choice = { spent, micro: micro + money * 1e6 };
    if (choice.micro < (best.get(key)?.micro ?? Infinity)) best.set(key, choice);
  }
  return [...best.values()];
}

export function leastByTrying(problem: PurchaseProblem): number {
  const feeOf = (supplier: string, week: number): number => {
    const { deliveryFee } = problem.suppliers.find(({ id }) => id === supplier)!;
    return typeof deliveryFee === 'number' ? deliveryFee : deliveryFee[week - 1]!;
  };
  // Ordering nothing is a plan; no other need cost more, and none is worth more than what is left of the own lots.
  const nothing = { ...problem, offers: [] };
  const worth = problem.lots.reduce(
    (sum, { quantity, item: of }) => sum + quantity * problem.items.find(({ id }) => id === of)!.endValueMicro,
    0,
  );
  const ceiling =
    worth + problem.items.reduce((sum, item) => sum + (choicesOf(nothing, item, Infinity)[0]?.micro ?? 0), 0);
  const choices = problem.items.map((item) => choicesOf(problem, item, ceiling));
  let least = Infinity;
  const add = (item: number, spent: Map<string, number>, micro: number): void => {
    if (item < choices.length) {
      for (const choice of choices[item]!) {
        const all = new Map(spent);
        for (const [key, money] of choice.spent) all.set(key, (all.get(key) ?? 0) + money);
        add(item + 1, all, micro + choice.micro);
      }
      return;
    }
    let total = micro;
    for (const [key, money] of spent) {
      const [supplier = '', week] = key.split('|');
      if (money < problem.suppliers.find(({ id }) => id === supplier)!.minOrder) return;
      total += feeOf(supplier, Number(week)) * 1e6;
    }
    least = Math.min(least, total);
  };
  add(0, new Map(), 0);
  return least;
}
