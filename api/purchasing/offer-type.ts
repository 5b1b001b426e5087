// Offers and suppliers' terms, as GraphQL shows and takes them.
import { builder } from '../builder.ts';
import { addMutation } from '../mutation.ts';
import { BackingEnum, fresh } from '../stock/schema.ts';
import { SorbentRef, SupplierRef, there } from '../stock/refs.ts';
import { itemName } from './item.ts';
import { packsText } from './item-words.ts';
import { amountText, money, MoneyRef } from './money-type.ts';
import { offerAdded, offerKept, offerSet, pricesOf } from './offer.ts';
import { dryShareOf } from './packs.ts';
import { OfferRef } from './refs.ts';
import { plannedWeeks, type Price } from './rules.ts';
import { addOfferSaid, setOfferSaid, supplierTermsSaid, whichSaid } from './said.ts';
import { supplierTermsSet } from './terms.ts';
import { dayOf, daysAfter } from './weeks.ts';

/** A quote that is older is said to be old; invented. */
const oldQuoteDays = 180;

const PriceRef = builder.objectRef<Price>('OfferPrice').implement({
  description: 'The price of a pack from so many packs on.',
  fields: (t) => ({
    from: t.exposeInt('from', { description: 'From so many packs on, for all of them.' }),
    price: t.field({ type: MoneyRef, description: 'For one pack.', resolve: ({ minor }) => money(minor) }),
  }),
});

builder.node(OfferRef, {
  name: 'Offer',
  description: 'What a supplier would sell, at what price, and how long it takes.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.offer.load(id),
  fields: (t) => ({
    supplier: t.field({
      type: SupplierRef,
      description: 'Who sells it.',
      resolve: async ({ supplierId }, _, { load }) => there(await load.supplier.load(supplierId), 'supplier'),
    }),
    sorbent: t.field({
      type: SorbentRef,
      description: 'The sorbent; of plates, that of their layer.',
      resolve: async ({ sorbentId }, _, { load }) => there(await load.sorbent.load(sorbentId), 'sorbent'),
    }),
    name: t.string({
      description: 'What it is, in words: the sorbent, and of plates what carries the layer.',
      resolve: async ({ sorbentId, backing }, _, { load }) =>
        itemName(there(await load.sorbent.load(sorbentId), 'sorbent').name, backing),
    }),
    backing: t.field({
      type: BackingEnum,
      nullable: true,
      description: 'Of plates, what carries the layer; null for bulk sorbent.',
      resolve: ({ backing }) => backing,
    }),
    articleNumber: t.exposeString('articleNumber', {
      nullable: true,
      description: 'The supplier’s own number for it; null when nobody said.',
    }),
    packGrams: t.exposeFloat('packGrams', {
      nullable: true,
      description: 'Sorbent in one pack, g as received; null for plates.',
    }),
    packDryGrams: t.float({
      nullable: true,
      description:
        'The same in dry grams, by the certificate of the sorbent’s last lot, else at 3 % water; null for plates.',
      resolve: async ({ packGrams, sorbentId }, _, { load }) => {
        if (packGrams === null) return null;
        const last = (await load.lotsOfSorbent.load(sorbentId)).at(-1);
        return packGrams * dryShareOf(last);
      },
    }),
    packPlates: t.exposeInt('packPlates', { nullable: true, description: 'Plates in one box; null for sorbent.' }),
    pack: t.string({
      description: 'One pack in words: `1 pack of 5 kg`, `1 box of 25 plates`.',
      resolve: (offer) => packsText(1, offer),
    }),
    prices: t.field({
      type: [PriceRef],
      description: 'Its price by packs, the first from 1; a later one counts for all packs of the order.',
      resolve: pricesOf,
    }),
    leadLeastWeeks: t.exposeInt('leadLeastWeeks', { description: 'Least time from order to arrival, weeks.' }),
    leadUsualWeeks: t.exposeInt('leadUsualWeeks', { description: 'Usual time from order to arrival, weeks.' }),
    leadMostWeeks: t.exposeInt('leadMostWeeks', { description: 'Longest time from order to arrival, weeks.' }),
    leadPlannedWeeks: t.int({
      description: 'What a plan reckons with: by then nine in ten orders are there, weeks.',
      resolve: plannedWeeks,
    }),
    shelfWeeks: t.exposeInt('shelfWeeks', {
      nullable: true,
      description: 'Shelf life or time to its retest from arrival, weeks; null when none is given.',
    }),
    mostPacks: t.exposeInt('mostPacks', {
      nullable: true,
      description: 'Packs that one order may have at most; null: any.',
    }),
    quotedOn: t.exposeString('quotedOn', {
      nullable: true,
      description: 'The day of the last quote, such as 2026-11-02; null when nobody said.',
    }),
    isOldQuote: t.boolean({
      description: `The quote is more than ${oldQuoteDays} days old, or nobody said of when it is: ask again.`,
      resolve: ({ quotedOn }, _, { lab, now }) =>
        quotedOn === null || quotedOn < daysAfter(dayOf(now(), lab.timeZone), -oldQuoteDays),
    }),
    note: t.exposeString('note', { nullable: true, description: 'What somebody noted beside it.' }),
    removedAt: t.expose('removedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was taken out of use; null while it stands.',
    }),
  }),
});

builder.objectFields(SupplierRef, (t) => ({
  deliveryFee: t.field({
    type: MoneyRef,
    description: 'What each delivery costs.',
    resolve: ({ deliveryFeeMinor }) => money(deliveryFeeMinor),
  }),
  minOrder: t.field({
    type: MoneyRef,
    description: 'The least that one order must come to; nothing when there is no such limit.',
    resolve: ({ minOrderMinor }) => money(minOrderMinor),
  }),
}));

builder.queryField('offers', (t) =>
  t.field({
    type: [OfferRef],
    description: 'Offers, in the order they were added.',
    args: {
      sorbent: t.arg.string({ description: 'Only of the sorbent of this name.' }),
      supplier: t.arg.string({ description: 'Only of the supplier of this name.' }),
      removed: t.arg.boolean({ description: 'With those taken out of use; without when not given.' }),
    },
    resolve: async (_, { sorbent, supplier, removed }, { database, lab }) => {
      const rows = await database.read.offer.findMany({
        where: { labId: lab.id, ...(removed ? {} : { removedAt: null }) },
        include: { supplier: { select: { name: true } } },
        orderBy: [{ addedAt: 'asc' }, { id: 'asc' }],
      });
      const sorbents = sorbent ? await database.read.sorbent.findMany({ where: { labId: lab.id } }) : [];
      const named = sorbents.filter(({ name }) => name.toLowerCase() === sorbent?.toLowerCase()).map(({ id }) => id);
      return rows.filter(
        (offer) =>
          (!sorbent || named.includes(offer.sorbentId)) &&
          (!supplier || offer.supplier.name.toLowerCase() === supplier.toLowerCase()),
      );
    },
  }),
);

const OfferKept = builder.objectRef<{ offerId: string }>('OfferKept').implement({
  description: 'An offer was added, changed, taken out of use or brought back.',
  fields: (t) => ({
    offer: t.field({
      type: OfferRef,
      description: 'The offer.',
      resolve: async ({ offerId }, _, { load }) => there(await load.offer.load(offerId), 'offer'),
    }),
  }),
});

const PriceInput = builder.inputType('OfferPriceInput', {
  description: 'The price of a pack from so many packs on.',
  fields: (t) => ({
    from: t.int({ required: true, description: 'From so many packs on, for all of them; 1 of the first.' }),
    price: t.string({ required: true, description: `For one pack, ${amountText}.` }),
  }),
});

type T = Parameters<Parameters<typeof builder.inputType>[1]['fields']>[0];

const offerInput = (t: T, isNew: boolean) => {
  const stays = isNew ? '' : '; not given: stays';
  return {
    supplier: t.string({ required: isNew, description: `Name of the supplier${stays}.` }),
    sorbent: t.string({ required: isNew, description: `Name of the sorbent; of plates, that of their layer${stays}.` }),
    backing: t.field({ type: BackingEnum, description: 'Of plates, what carries the layer; glass when not given.' }),
    articleNumber: t.string({ description: 'The supplier’s own number for it.' }),
    packGrams: t.float({ description: 'Sorbent in one pack, g as received; or give `packPlates`.' }),
    packPlates: t.int({ description: 'Plates in one box.' }),
    prices: t.field({
      type: [PriceInput],
      required: isNew,
      description: `Its prices by packs, the first from 1, each no dearer than the one before${stays}.`,
    }),
    leadLeastWeeks: t.int({ description: 'Least time from order to arrival, weeks; the usual when not given.' }),
    leadUsualWeeks: t.int({ required: isNew, description: `Usual time from order to arrival, weeks${stays}.` }),
    leadMostWeeks: t.int({ description: 'Longest time from order to arrival, weeks; the usual when not given.' }),
    shelfWeeks: t.int({ description: 'Shelf life or time to its retest from arrival, weeks.' }),
    mostPacks: t.int({ description: 'Packs that one order may have at most; any when not given.' }),
    quotedOn: t.string({ description: 'The day of the quote, such as 2026-11-02.' }),
    note: t.string({ description: 'A note beside it.' }),
  };
};

addMutation('addOffer', {
  description: 'Adds an offer of a supplier.',
  check: addOfferSaid,
  success: OfferKept,
  run: (input, context) => fresh(context, offerAdded(context, input)),
  fields: (t) => offerInput(t, true),
});

addMutation('setOffer', {
  description:
    'Changes an offer, a new quote say; what is not given stays, null takes it away. Orders keep their price.',
  check: setOfferSaid,
  success: OfferKept,
  run: (input, context) => fresh(context, offerSet(context, input)),
  fields: (t) => ({ id: t.id({ required: true, description: 'Which offer.' }), ...offerInput(t, false) }),
});

addMutation('removeOffer', {
  description: 'Takes an offer out of use; its orders stay.',
  check: whichSaid,
  success: OfferKept,
  run: (input, context) => fresh(context, offerKept(context, 'removeOffer', input)),
  fields: (t) => ({ id: t.id({ required: true, description: 'Which offer.' }) }),
});

addMutation('restoreOffer', {
  description: 'Brings back an offer that was taken out of use.',
  check: whichSaid,
  success: OfferKept,
  run: (input, context) => fresh(context, offerKept(context, 'restoreOffer', input)),
  fields: (t) => ({ id: t.id({ required: true, description: 'Which offer.' }) }),
});

const TermsKept = builder.objectRef<{ supplierId: string }>('SupplierTermsKept').implement({
  description: 'A supplier’s terms were set.',
  fields: (t) => ({
    supplier: t.field({
      type: SupplierRef,
      description: 'The supplier.',
      resolve: async ({ supplierId }, _, { load }) => there(await load.supplier.load(supplierId), 'supplier'),
    }),
  }),
});

addMutation('setSupplierTerms', {
  description: 'Sets what a supplier asks for beside the price; null takes it away.',
  check: supplierTermsSaid,
  success: TermsKept,
  run: (input, context) => fresh(context, supplierTermsSet(context, input)),
  fields: (t) => ({
    supplier: t.string({ required: true, description: 'Name of the supplier.' }),
    deliveryFee: t.string({ description: `For each delivery, ${amountText}; not given: stays.` }),
    minOrder: t.string({ description: `The least that one order must come to, ${amountText}; not given: stays.` }),
  }),
});
