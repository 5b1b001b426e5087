// A seeded year of purchases of a separations lab: 16 kinds of plate and 24 sorbents from three suppliers. Invented.
import { diceOf } from '../../api/science/ovens/dice.ts';
import type { PurchaseItem, PurchaseLot, PurchaseOffer, PurchaseProblem } from '../../api/science/purchase/types.ts';

const suppliers = ['Marlpit Chemicals', 'Osier & Tarn', 'Fallow Bank Supply'] as const;

/** What stands at a place of a list that is never empty, counted round. */
const at = <T>(all: readonly [T, ...T[]], i: number): T => all[i % all.length] ?? all[0];

export function yearOfPurchases(
  seed: number,
  { plates = 16, sorbents = 24, weeks = 52, seconds = 10 } = {},
): PurchaseProblem {
  const { unit, below } = diceOf(seed * 104_729 + 17);
  const between = (low: number, high: number) => low + below(high - low + 1);
  const spread = (low: number, high: number) => low * (high / low) ** unit();
  const items: PurchaseItem[] = [];
  const offers: PurchaseOffer[] = [];
  const lots: PurchaseLot[] = [];
  const campaigns: PurchaseProblem['campaigns'][number][] = [];
  const volume: [Record<string, number>, Record<string, number>] = [{}, {}];
  const stored: [number, number] = [0, 0];

  for (let i = 0; i < plates + sorbents; i++) {
    const isPlate = i < plates;
    const id = isPlate ? `plate ${i + 1}` : `sorbent ${i - plates + 1}`;
    const weekly = isPlate ? spread(4, 40) : spread(60, 900);
    // Many weeks use nothing.
    const busy = 0.35 + 0.6 * unit();
    const demand = Array.from({ length: weeks }, () =>
      unit() < busy ? Math.max(1, Math.round((weekly / busy) * (0.4 + 1.2 * unit()))) : 0,
    );
    const centsEach = isPlate ? spread(150, 900) : spread(6, 40);
    const safety = Math.round(weekly * (0.5 + 1.5 * unit()));
    const check = {
      cost: between(60, 250) * 100,
      weeks: below(3),
      sample: isPlate ? between(2, 8) : between(20, 150),
      keep: isPlate ? between(2, 8) : between(20, 150),
      withoutOld: between(40, 300) * 100,
    };
    const packs = (isPlate ? [25, 50, 100, 200] : [500, 1000, 2500, 5000, 10_000, 25_000]).filter(
      // Nobody buys a pack that lasts longer than what is in it keeps.
      (pack) => pack <= weekly * 26 && pack >= weekly / 2,
    );
    const mine = Array.from({ length: between(2, 3) }, (_, k): PurchaseOffer => {
      const pack = packs[Math.min(packs.length - 1, below(packs.length))] ?? (isPlate ? 25 : 500);
      // A larger pack costs less each.
      const price = Math.round(pack * centsEach * (0.9 + 0.2 * unit()) * (pack / (weekly * 8)) ** -0.08);
      return {
        id: `${id} ${'abc'[k]}`,
        item: id,
        supplier: at(suppliers, i + k + below(2)),
        pack,
        prices: [
          { from: 1, price },
          { from: 3, price: Math.round(price * 0.95) },
          { from: 8, price: Math.round(price * 0.89) },
        ],
        leadWeeks: between(1, 5),
        shelfWeeks: at<number | null>([26, 40, null], below(3)),
        maxPacks: 20,
      };
    });
    offers.push(...mine);
    const lowest = Math.min(...mine.map(({ pack, prices }) => (prices.at(-1)?.price ?? Infinity) / pack));
    items.push({
      id,
      unit: isPlate ? 'plates' : 'g',
      demand,
      safety,
      check,
      holdingMicro: Math.round((lowest * 0.25 * 1e6) / 52),
      wasteMicro: Math.round(lowest * (0.05 + 0.2 * unit()) * 1e6),
      shortMicro: Math.round(lowest * (3 + 4 * unit()) * 1e6),
      belowSafetyMicro: Math.round(lowest * (0.03 + 0.05 * unit()) * 1e6),
      endValueMicro: Math.round(lowest * (0.5 + 0.3 * unit()) * 1e6),
    });
    for (let k = between(1, 3), n = 0; n < k; n++) {
      lots.push({
        id: `${id} lot ${n + 1}`,
        item: id,
        quantity: Math.round((weekly * (4 + 8 * unit())) / k),
        from: n > 0 && below(4) === 0 ? between(2, 4) : 1,
        lastWeek: below(3) === 0 ? null : between(10, weeks),
        status: n > 0 && below(4) === 0 ? 'in-check' : 'accepted',
      });
    }
    for (let k = below(3), n = 0; n < k; n++) {
      const first = between(6, weeks - 6);
      campaigns.push({
        id: `${id} campaign ${n + 1}`,
        item: id,
        uses: Array.from({ length: between(1, 4) }, (_, use) => ({
          week: first + use,
          quantity: Math.max(1, Math.round(weekly * (0.4 + unit()))),
        })),
        uncovered: Math.round(lowest * weekly * (6 + 10 * unit())),
      });
    }
    const group = isPlate ? 0 : 1;
    volume[group][id] = isPlate ? between(8, 20) : between(1, 3);
    stored[group] += volume[group][id] * weekly * 9;
  }
  return {
    currency: 'EUR',
    minorDigits: 2,
    weeks,
    items,
    lots,
    campaigns,
    suppliers: suppliers.map((id) => ({ id, deliveryFee: between(18, 45) * 100, minOrder: between(50, 150) * 100 })),
    offers,
    storage: ['cupboard', 'store'].map((id, group) => ({
      id,
      capacity: Math.round((stored[group] ?? 0) * (0.9 + 0.3 * unit())),
      overMicro: between(2, 20) * 10_000,
      volume: volume[group as 0 | 1],
    })),
    limits: { seconds, gap: 0.001 },
  };
}
