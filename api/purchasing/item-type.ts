// Items with what is left of them by lot, what they use a week and when to order again, as GraphQL shows and takes them.
import { builder } from '../builder.ts';
import type { Context } from '../context.ts';
import { addMutation } from '../mutation.ts';
import { BackingEnum, fresh } from '../stock/schema.ts';
import { LotRef, SorbentRef, there } from '../stock/refs.ts';
import { chanceOfLasting, lastDay } from './cover.ts';
import { itemName, unitOf } from './item.ts';
import { type ItemFacts, itemsNow, itemsOf } from './items.ts';
import { freeForUse, freeOfLots, freeUsable } from './keep.ts';
import { amountText, money, MoneyRef } from './money-type.ts';
import { OfferRef, StorageGroupRef } from './refs.ts';
import { setStockItemSaid } from './said.ts';
import type { LotStock } from './shelf.ts';
import { stockItemSet } from './terms.ts';
import { dayOf } from './weeks.ts';

interface Line {
  stock: LotStock;
  lastsUntil: string | null;
}

export const UnitEnum = builder.enumType('StockUnit', {
  description: 'What an item is counted in.',
  values: { GRAMS: { description: 'Dry grams.' }, PLATES: { description: 'Plates.' } },
});

const amounts = 'dry sorbent, g; or plates';

const LineRef = builder.objectRef<Line>('StockOfLot').implement({
  description: 'What of a lot stands on the shelf. What was poured or taken from it before counts as used.',
  fields: (t) => ({
    lot: t.field({ type: LotRef, description: 'The lot.', resolve: ({ stock }) => stock.lot }),
    amount: t.float({ description: `All of it, ${amounts}.`, resolve: ({ stock }) => stock.amount }),
    opened: t.float({ description: `In opened containers, ${amounts}.`, resolve: ({ stock }) => stock.opened }),
    mustRedry: t.float({ description: `To be redried first, ${amounts}.`, resolve: ({ stock }) => stock.mustRedry }),
    lostToRedrying: t.float({
      description: `What redrying will lose, ${amounts}.`,
      resolve: ({ stock }) => stock.lost,
    }),
    usable: t.float({ description: `What can be used, ${amounts}.`, resolve: ({ stock }) => stock.usable }),
    free: t.float({
      description: `Usable and kept for nobody, ${amounts}.`,
      resolve: ({ stock }) => freeUsable(stock),
    }),
    lastsUntil: t.exposeString('lastsUntil', {
      nullable: true,
      description:
        'The day its free part lasts until, with an even chance, when lots are used oldest first; null when that is more than two years off, or it is never used.',
    }),
  }),
});

/** Lots are used up one after the other, oldest first. */
function linesOf({ stock, weekly }: ItemFacts, today: string): Line[] {
  let before = 0;
  return (stock?.lots ?? []).map((of) => {
    before += freeForUse(of);
    return { stock: of, lastsUntil: of.standing === 'REJECTED' ? null : lastDay(before, weekly, 0.5, today) };
  });
}

const usableFree = ({ stock }: ItemFacts): number => freeOfLots(stock?.lots ?? []);

const today = ({ lab, now }: Context): string => dayOf(now(), lab.timeZone);

const ItemRef = builder.objectRef<ItemFacts>('StockItem').implement({
  description: 'What is kept, bought and used up: a sorbent in bulk, or plates of it on one backing.',
  fields: (t) => ({
    key: t.exposeString('key', { description: 'Its key: the same wherever it is told of.' }),
    name: t.string({
      description: 'What it is, in words.',
      resolve: ({ sorbent, item }) => itemName(sorbent.name, item.backing),
    }),
    sorbent: t.field({
      type: SorbentRef,
      description: 'The sorbent; of plates, that of their layer.',
      resolve: ({ sorbent }) => sorbent,
    }),
    backing: t.field({
      type: BackingEnum,
      nullable: true,
      description: 'Of plates, what carries the layer; null for bulk sorbent.',
      resolve: ({ item }) => item.backing,
    }),
    unit: t.field({
      type: UnitEnum,
      description: 'What it is counted in.',
      resolve: ({ item }) => (unitOf(item) === 'g' ? ('GRAMS' as const) : ('PLATES' as const)),
    }),
    lots: t.field({
      type: [LineRef],
      description: 'What is left of it by lot, the oldest first.',
      resolve: (facts, _, context) => linesOf(facts, today(context)),
    }),
    free: t.float({ description: `Usable and kept for nobody, of all lots, ${amounts}.`, resolve: usableFree }),
    lastsUntil: t.string({
      nullable: true,
      description: 'The day that lasts until with an even chance; null when that is more than two years off.',
      resolve: (facts, _, context) => lastDay(usableFree(facts), facts.weekly, 0.5, today(context)),
    }),
    chanceUntilNew: t.float({
      nullable: true,
      description:
        'The chance, 0 to 1, that it lasts until a lot ordered today is here and checked; null without an offer, and where nobody knows what a week uses.',
      resolve: (facts) => {
        const weeks = facts.lead?.at(-1)?.weeks ?? null;
        return weeks === null || facts.asksForWeekly ? null : chanceOfLasting(usableFree(facts), facts.weekly, weeks);
      },
    }),
    weekly: t.float({
      description: `Use expected of a week that is not booked, ${amounts}.`,
      resolve: ({ weekly }) => weekly.mean,
    }),
    method: t.string({
      description:
        'How that is reckoned: `croston-sb`, `smoothing`, `said` (somebody gave the figure) or `too little history`.',
      resolve: ({ forecast, asksForWeekly }) => forecast?.method ?? (asksForWeekly ? 'too little history' : 'said'),
    }),
    asksForWeekly: t.exposeBoolean('asksForWeekly', {
      description: 'Its history is too short, and nobody said what a week uses: say it by `setStockItem`.',
    }),
    historyWeeks: t.int({ description: 'Whole weeks of history.', resolve: ({ history }) => history.length }),
    reorderPoint: t.float({
      nullable: true,
      description: `Order when what is free and on its way comes down to this, ${amounts}; null without an offer or use.`,
      resolve: ({ reorder }) => reorder?.point ?? null,
    }),
    safetyStock: t.float({
      nullable: true,
      description: `The part of that which is there for lumpy use and late deliveries, ${amounts}.`,
      resolve: ({ reorder }) => reorder?.safetyStock ?? null,
    }),
    offers: t.field({
      type: [OfferRef],
      description: 'Offers of it, the cheapest first.',
      resolve: ({ offers }) => offers,
    }),
    serviceLevel: t.float({
      description: 'The share of lead times that should not run out, 0 to 1.',
      resolve: ({ rule }) => rule.serviceLevel,
    }),
    checkWeeks: t.int({
      description: 'From arrival until a new lot is checked, weeks.',
      resolve: ({ rule }) => rule.checkWeeks,
    }),
    checkCost: t.field({
      type: MoneyRef,
      description: 'What one check costs.',
      resolve: ({ rule }) => money(rule.checkMinor),
    }),
    checkSample: t.float({
      description: `What a check uses up of the new lot, ${amounts}.`,
      resolve: ({ rule }) => rule.checkSample,
    }),
    checkKeep: t.float({
      description: `What of the old lot should still be there for it, ${amounts}.`,
      resolve: ({ rule }) => rule.checkKeep,
    }),
    weeklyUse: t.float({
      nullable: true,
      description: 'What somebody said that a week uses; null when nobody did.',
      resolve: ({ own }) => own?.weeklyUse ?? null,
    }),
    isExpiring: t.boolean({
      description: 'It is written off at the end of its shelf life; else it is retested and used on.',
      resolve: ({ rule }) => rule.isExpiring,
    }),
    storage: t.field({
      type: StorageGroupRef,
      nullable: true,
      description: 'The storage group it stands in; null when its room is not short.',
      resolve: ({ rule }, _, { load }) => (rule.storageId ? load.storageGroup.load(rule.storageId) : null),
    }),
    litres: t.float({
      nullable: true,
      description: 'Litres that 1 kg dry sorbent, or 100 plates, takes up in its pack; null when nobody said.',
      resolve: ({ rule }) => rule.litres,
    }),
  }),
});

builder.queryFields((t) => ({
  stockItems: t.field({
    type: [ItemRef],
    description: 'Every sorbent and kind of plate that is kept, offered or wanted, by name: how long it lasts, by lot.',
    complexity: 100,
    args: { sorbent: t.arg.string({ description: 'Only of the sorbent of this name.' }) },
    resolve: async (_, { sorbent }, context) =>
      (await itemsNow(context)).filter(
        (facts) => !sorbent || facts.sorbent.name.toLowerCase() === sorbent.trim().toLowerCase(),
      ),
  }),
}));

const ItemKept = builder.objectRef<{ item: string }>('StockItemKept').implement({
  description: 'What the lab sets for one item was changed.',
  fields: (t) => ({
    item: t.field({
      type: ItemRef,
      description: 'The item.',
      complexity: 100,
      resolve: async ({ item }, _, context) =>
        there(
          (await itemsOf(context)).find(({ key }) => key === item),
          'stock item',
        ),
    }),
  }),
});

addMutation('setStockItem', {
  description: 'Sets what counts for one item; null goes back to the lab’s rule, what is not given stays.',
  check: setStockItemSaid,
  success: ItemKept,
  run: (input, context) => fresh(context, stockItemSet(context, input)),
  fields: (t) => ({
    sorbent: t.string({ required: true, description: 'Name of the sorbent; of plates, that of their layer.' }),
    backing: t.field({ type: BackingEnum, description: 'Of plates, what carries the layer; none for bulk sorbent.' }),
    storage: t.string({ description: 'Name of the storage group it stands in.' }),
    litres: t.float({ description: 'Litres that 1 kg dry sorbent, or 100 plates, takes up in its pack.' }),
    serviceLevel: t.float({ description: 'The share of lead times that should not run out, 0.5 to 0.999.' }),
    weeklyUse: t.float({
      description: 'What a week uses where the history is too short: dry sorbent, g; or plates.',
    }),
    checkWeeks: t.int({ description: 'From arrival until a new lot is checked, weeks.' }),
    checkCost: t.string({ description: `What one check costs, ${amountText}.` }),
    checkSample: t.float({ description: 'What a check uses up of the new lot: dry sorbent, g; or plates.' }),
    checkKeep: t.float({ description: 'What of the old lot should still be there for it: dry sorbent, g; or plates.' }),
    isExpiring: t.boolean({ description: 'It is written off at the end of its shelf life.' }),
  }),
});
