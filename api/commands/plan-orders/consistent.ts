// What must fit together in a file of purchases: names said once, names that are known, weeks that are there, prices in order.
import type { z } from 'zod';
import type { PlanOrdersInput } from './input.ts';

type Wrong = (path: PropertyKey[], message: string) => void;
type Named = readonly { readonly id: string }[];

function once(all: Named, of: string, wrong: Wrong): void {
  const seen = new Set<string>();
  all.forEach(({ id }, i) => {
    if (seen.has(id)) wrong([of, i, 'id'], 'a name that no other has');
    seen.add(id);
  });
}

const has = (all: Named, wanted: string): boolean => all.some(({ id }) => id === wanted);

function offers({ offers: all, items, suppliers }: PlanOrdersInput, wrong: Wrong): void {
  all.forEach(({ item, supplier, prices, pack }, i) => {
    const path = ['offers', i];
    if (!has(items, item)) wrong([...path, 'item'], 'the id of an item');
    if (!has(suppliers, supplier)) wrong([...path, 'supplier'], 'the id of a supplier');
    prices.forEach(({ from, price }, k) => {
      const before = prices[k - 1]?.from ?? 0;
      if (k === 0 && from !== 1) wrong([...path, 'prices', k, 'from'], '1 for the first price');
      else if (from <= before) wrong([...path, 'prices', k, 'from'], `more than ${before} packs`);
      const worth = items.find(({ id }) => id === item)?.endValueMicro ?? 0;
      if (worth > 0 && worth * pack >= price * 1e6) {
        wrong([...path, 'prices', k, 'price'], 'a price above what the goods are worth at the end');
      }
    });
  });
}

/** Adds an issue for each thing that does not fit; each message is what would be right. */
export function consistent(input: PlanOrdersInput, context: z.core.$RefinementCtx<PlanOrdersInput>): void {
  const wrong: Wrong = (path, message) => {
    context.issues.push({ code: 'custom', path, message, input });
  };
  const { weeks, items, lots, campaigns, suppliers, storage } = input;
  for (const of of ['items', 'lots', 'campaigns', 'suppliers', 'offers', 'storage'] as const)
    once(input[of], of, wrong);
  items.forEach(({ demand }, i) => {
    if (demand.length !== weeks) wrong(['items', i, 'demand'], `${weeks} figures, one for each week`);
  });
  lots.forEach(({ item }, i) => {
    if (!has(items, item)) wrong(['lots', i, 'item'], 'the id of an item');
  });
  campaigns.forEach(({ item, uses }, i) => {
    if (!has(items, item)) wrong(['campaigns', i, 'item'], 'the id of an item');
    uses.forEach(({ week }, k) => {
      if (week > weeks) wrong(['campaigns', i, 'uses', k, 'week'], `a week, 1 to ${weeks}`);
    });
  });
  suppliers.forEach(({ deliveryFee }, i) => {
    if (typeof deliveryFee !== 'number' && deliveryFee.length !== weeks) {
      wrong(['suppliers', i, 'deliveryFee'], `${weeks} fees, one for each week`);
    }
  });
  offers(input, wrong);
  storage.forEach(({ volume }, i) => {
    for (const item of Object.keys(volume)) if (!has(items, item)) wrong(['storage', i, 'volume', item], 'the id of an item'); // prettier-ignore
  });
}
