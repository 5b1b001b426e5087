// What may be said of offers, campaigns and orders. GraphQL has checked the types; these check the values.
import { z } from 'zod';
import { said } from '../stock/service.ts';

export const day = z
  .string('a day such as 2026-12-24')
  .regex(/^\d{4}-\d{2}-\d{2}$/, 'a day such as 2026-12-24')
  .refine((text) => {
    const at = new Date(`${text}T00:00:00Z`);
    return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(text);
  }, 'a day that there is');

export const backing = z.enum(['GLASS', 'ALUMINIUM', 'PLASTIC'], 'GLASS, ALUMINIUM or PLASTIC');
export const id = z.string('an id').min(1, 'an id');
export const packs = z.int('whole packs').min(1, '1 pack or more').max(10_000, 'at most 10000 packs');
const weeks = z.int('whole weeks').min(0, '0 weeks or more').max(104, 'at most 104 weeks');

/** Of an order: most that it may be, checked again with the price. */
const offerFields = {
  supplier: said.name,
  sorbent: said.name,
  backing: backing.nullish(),
  packGrams: said.grams,
  packPlates: said.plates,
  prices: z
    .array(z.object({ from: packs, price: z.string('an amount') }))
    .min(1, 'one price at least')
    .max(12, 'at most 12 prices'),
  leadLeastWeeks: weeks.nullish(),
  leadUsualWeeks: weeks,
  leadMostWeeks: weeks.nullish(),
  shelfWeeks: z.int('whole weeks').min(1, '1 week or more').max(520, 'at most 520 weeks').nullish(),
  mostPacks: packs.nullish(),
  quotedOn: day.nullish(),
  articleNumber: said.name.nullish(),
  note: said.text,
};

export const addOfferSaid = z.object({ ...offerFields, clientKey: said.clientKey });
export type OfferSaid = Omit<z.output<typeof addOfferSaid>, 'clientKey'>;

const { supplier, sorbent, prices, leadUsualWeeks, note: _, packGrams: __, packPlates: ___, ...maybe } = offerFields;

/** What is left out stays; null takes it away, where an offer can be without. */
export const setOfferSaid = z.object({
  id,
  ...maybe,
  supplier: supplier.nullish(),
  sorbent: sorbent.nullish(),
  packGrams: z.number('grams').positive('more than 0 g').max(1e7, 'at most 10000000 g').nullish(),
  packPlates: z.int('plates').positive('1 plate or more').max(100_000, 'at most 100000 plates').nullish(),
  prices: prices.nullish(),
  leadUsualWeeks: leadUsualWeeks.nullish(),
  note: z.string('words').trim().max(2000, 'at most 2000 signs').nullish(),
  clientKey: said.clientKey,
});

export const whichSaid = z.object({ id, clientKey: said.clientKey });

export const supplierTermsSaid = z.object({
  supplier,
  deliveryFee: z.string('an amount').nullish(),
  minOrder: z.string('an amount').nullish(),
  clientKey: said.clientKey,
});

const litres = z.number('litres').positive('more than 0 L').max(1e6, 'at most 1000000 L');

export const addStorageSaid = z.object({
  name: said.name,
  capacityL: litres,
  overCost: z.string('an amount').nullish(),
  clientKey: said.clientKey,
});

export const setStorageSaid = z.object({
  id,
  name: said.name.nullish(),
  capacityL: litres.nullish(),
  overCost: z.string('an amount').nullish(),
  clientKey: said.clientKey,
});

export const setStockItemSaid = z.object({
  sorbent,
  backing: backing.nullish(),
  storage: said.name.nullish(),
  litres: litres.nullish(),
  serviceLevel: z.number('a share').min(0.5, '0.5 or more').max(0.999, '0.999 or less').nullish(),
  weeklyUse: z.number('an amount').min(0, '0 or more').max(1e6, 'at most 1000000').nullish(),
  checkWeeks: z.int('whole weeks').min(0, '0 or more').max(12, 'at most 12').nullish(),
  checkCost: z.string('an amount').nullish(),
  checkSample: z.number('an amount').min(0, '0 or more').max(100_000, 'at most 100000').nullish(),
  checkKeep: z.number('an amount').min(0, '0 or more').max(100_000, 'at most 100000').nullish(),
  isExpiring: z.boolean('true or false').nullish(),
  clientKey: said.clientKey,
});

const amount = z.number('an amount').positive('more than 0').max(1e6, 'at most 1000000');

const campaignFields = {
  name: said.name,
  sorbent,
  backing: backing.nullish(),
  uses: z.array(z.object({ day, amount })).min(1, 'one use at least').max(200, 'at most 200 uses'),
  limitWaterFraction: said.waterFraction.max(0.5, '0.5 or less: a fraction, 0.05 for 5 %').nullish(),
  uncoveredCost: z.string('an amount').nullish(),
  note: z.string('words').trim().max(2000, 'at most 2000 signs').nullish(),
};

export const addCampaignSaid = z.object({ ...campaignFields, clientKey: said.clientKey });

export const setCampaignSaid = z.object({
  id,
  name: campaignFields.name.nullish(),
  uses: campaignFields.uses.nullish(),
  postponeWeeks: z.int('whole weeks').min(-52, '-52 or more').max(52, 'at most 52 weeks').nullish(),
  limitWaterFraction: campaignFields.limitWaterFraction,
  uncoveredCost: campaignFields.uncoveredCost,
  note: campaignFields.note,
  clientKey: said.clientKey,
});

export const keepLotSaid = z.object({
  campaign: id,
  lotNumber: said.name.nullish(),
  takeUnchecked: z.boolean('true or false').nullish(),
  clientKey: said.clientKey,
});

export const whatIfSaid = z.object({
  supplier: said.name.nullish(),
  lateWeeks: z.int('whole weeks').min(0, '0 or more').max(26, 'at most 26 weeks').nullish(),
  pricePercent: z.number('percent').min(-90, '-90 % or more').max(1000, 'at most 1000 %').nullish(),
  rejectedLot: said.name.nullish(),
  rejectedSorbent: said.name.nullish(),
});

export const planOrdersSaid = z.object({
  weeks: z.int('weeks').min(4, '4 weeks or more').max(52, 'at most 52 weeks').nullish(),
  seconds: z.number('seconds').min(0.1, '0.1 s or more').max(120, 'at most 120 s').nullish(),
  whatIf: whatIfSaid.nullish(),
  clientKey: said.clientKey,
});

export const askForOrderSaid = z.object({
  offer: id,
  packs,
  lotWished: said.name.nullish(),
  reason: z.string('words').trim().max(500, 'at most 500 signs').nullish(),
  note: z.string('words').trim().max(2000, 'at most 2000 signs').nullish(),
  clientKey: said.clientKey,
});

export const placeOrderSaid = z.object({
  id,
  packs: packs.nullish(),
  price: z.string('an amount').nullish(),
  expectedOn: day.nullish(),
  theirNumber: said.name.nullish(),
  note: z.string('words').trim().max(2000, 'at most 2000 signs').nullish(),
  clientKey: said.clientKey,
});

export const shelveOrderSaid = z.object({
  id,
  packs: z.int('whole packs').min(0, '0 packs or more').max(10_000, 'at most 10000 packs').nullish(),
  damagedPacks: z.int('whole packs').min(0, '0 packs or more').max(10_000, 'at most 10000 packs').nullish(),
  isLast: z.boolean('true or false').nullish(),
  lotNumber: said.name,
  takeOtherLot: z.boolean('true or false').nullish(),
  receivedAt: z.date('an instant').nullish(),
  retestOn: z.date('an instant').nullish(),
  certificateWaterPercent: said.percent.max(90, 'at most 90 %').nullish(),
  certificateMaxWaterPercent: said.percent.max(90, 'at most 90 %').nullish(),
  room: said.name,
  vessel: said.name.nullish(),
  innerDiameterMm: said.mm.nullish(),
  heightMm: said.mm.nullish(),
  note: said.text,
  clientKey: said.clientKey,
});

export const coverageSaid = z.object({
  sorbent,
  lotNumber: said.name,
  until: day,
  backing: backing.nullish(),
});
