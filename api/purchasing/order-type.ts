// Orders and what came of them, as GraphQL shows and takes them.
import { builder } from '../builder.ts';
import { addMutation } from '../mutation.ts';
import type { Delivery, Order } from '../database/generated/sqlite/client.ts';
import { BackingEnum, fresh } from '../stock/schema.ts';
import { ContainerRef, LotRef, SorbentRef, SupplierRef, there } from '../stock/refs.ts';
import { z } from 'zod';
import { itemName } from './item.ts';
import { packsText } from './item-words.ts';
import { UnitEnum } from './item-type.ts';
import { amountText, money, MoneyRef } from './money-type.ts';
import { orderAsked, orderCalledOff, type OrderKept, orderPlaced } from './order.ts';
import { ordersOf } from './orders.ts';
import { orderListOf } from './order-list.ts';
import { DeliveryRef, OfferRef, OrderRef } from './refs.ts';
import { stateWords } from './rules.ts';
import { askForOrderSaid, placeOrderSaid, shelveOrderSaid, whichSaid } from './said.ts';
import { orderShelved, orderTakenBack, stillOut } from './shelve.ts';
import { dayOf } from './weeks.ts';

const OrderStateEnum = builder.enumType('OrderState', {
  description: 'How far an order is.',
  values: {
    ASKED_FOR: { description: 'Somebody asked for it; it is not bought yet.' },
    BOUGHT: { description: 'It is bought, and on its way.' },
    ON_THE_SHELF: { description: 'All that comes of it is on the shelf.' },
    CALLED_OFF: { description: 'Nothing of it comes.' },
  },
});

builder.node(DeliveryRef, {
  name: 'Delivery',
  description: 'What came of an order at one time.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.delivery.load(id),
  fields: (t) => ({
    at: t.expose('at', { type: 'DateTime', description: 'When it came in.' }),
    lotNumber: t.exposeString('lotNumber', { description: 'The lot number as printed.' }),
    lot: t.field({
      type: LotRef,
      nullable: true,
      description: 'The lot; null when nothing of it went on the shelf.',
      resolve: ({ lotId }, _, { load }) => (lotId ? load.lot.load(lotId) : null),
    }),
    packs: t.exposeInt('packs', { description: 'Packs that went on the shelf.' }),
    damagedPacks: t.exposeInt('damagedPacks', { description: 'Packs that came damaged and did not.' }),
    isOtherLot: t.exposeBoolean('isOtherLot', { description: 'Another lot than was wished for.' }),
    containers: t.field({
      type: [ContainerRef],
      description: 'Its containers.',
      complexity: 10,
      resolve: async ({ containers }, _, { load }) => {
        const found = await load.container.loadMany(z.array(z.string()).parse(containers));
        return found.flatMap((one) => (one && !(one instanceof Error) ? [one] : []));
      },
    }),
    note: t.exposeString('note', { nullable: true, description: 'What somebody noted beside it.' }),
  }),
});

const outOf = async (order: Order, deliveries: Promise<Delivery[]>): Promise<number> =>
  order.state === 'ASKED_FOR' || order.state === 'BOUGHT' ? stillOut({ ...order, deliveries: await deliveries }) : 0;

builder.node(OrderRef, {
  name: 'Order',
  description: 'Packs that were asked for, bought, and came.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.order.load(id),
  fields: (t) => ({
    number: t.exposeInt('number', { description: 'Its running number in the lab.' }),
    state: t.field({ type: OrderStateEnum, description: 'How far it is.', resolve: ({ state }) => state }),
    stateWords: t.string({
      description: 'The same in words: `asked for`, `bought`, `on the shelf`, `called off`.',
      resolve: ({ state }) => stateWords[state],
    }),
    offer: t.field({
      type: OfferRef,
      nullable: true,
      description: 'The offer it was made of.',
      resolve: ({ offerId }, _, { load }) => (offerId ? load.offer.load(offerId) : null),
    }),
    supplier: t.field({
      type: SupplierRef,
      description: 'From whom.',
      resolve: async ({ supplierId }, _, { load }) => there(await load.supplier.load(supplierId), 'supplier'),
    }),
    sorbent: t.field({
      type: SorbentRef,
      description: 'The sorbent; of plates, that of their layer.',
      resolve: async ({ sorbentId }, _, { load }) => there(await load.sorbent.load(sorbentId), 'sorbent'),
    }),
    backing: t.field({
      type: BackingEnum,
      nullable: true,
      description: 'Of plates, what carries the layer; null for bulk sorbent.',
      resolve: ({ backing }) => backing,
    }),
    item: t.string({
      description: 'What it is of, in words.',
      resolve: async ({ sorbentId, backing }, _, { load }) =>
        itemName(there(await load.sorbent.load(sorbentId), 'sorbent').name, backing),
    }),
    packs: t.exposeInt('packs', { description: 'How many packs.' }),
    amount: t.string({
      description: 'The same in words: `2 packs of 5 kg`.',
      resolve: (order) => packsText(order.packs, order),
    }),
    packGrams: t.exposeFloat('packGrams', {
      nullable: true,
      description: 'Sorbent in one pack, g as received; null for plates.',
    }),
    packPlates: t.exposeInt('packPlates', { nullable: true, description: 'Plates in one box; null for sorbent.' }),
    unit: t.field({
      type: UnitEnum,
      description: 'What it is counted in.',
      resolve: (order) => (order.packPlates === null ? ('GRAMS' as const) : ('PLATES' as const)),
    }),
    packsToCome: t.int({
      description: 'Packs that are still to come.',
      complexity: 3,
      resolve: (order, _, { load }) => outOf(order, load.deliveriesOfOrder.load(order.id)),
    }),
    price: t.field({
      type: MoneyRef,
      description: 'For one pack.',
      resolve: ({ priceMinor }) => money(priceMinor),
    }),
    total: t.field({
      type: MoneyRef,
      description: 'For all packs, without the delivery.',
      resolve: ({ priceMinor, packs }) => money(priceMinor * packs),
    }),
    lotWished: t.exposeString('lotWished', {
      nullable: true,
      description: 'The lot it should be of, when a campaign runs on it.',
    }),
    reason: t.exposeString('reason', { nullable: true, description: 'Why it was asked for, in one sentence.' }),
    note: t.exposeString('note', { nullable: true, description: 'What somebody noted beside it.' }),
    theirNumber: t.exposeString('theirNumber', {
      nullable: true,
      description: 'The supplier’s number of the confirmed order.',
    }),
    askedAt: t.expose('askedAt', { type: 'DateTime', description: 'When it was asked for.' }),
    boughtAt: t.expose('boughtAt', { type: 'DateTime', nullable: true, description: 'When it was bought.' }),
    expectedOn: t.exposeString('expectedOn', {
      nullable: true,
      description: 'The day it is expected, such as 2027-01-15; null while it is not bought.',
    }),
    isLate: t.boolean({
      description: 'It was expected before today and is not here.',
      resolve: ({ state, expectedOn }, _, { lab, now }) =>
        state === 'BOUGHT' && expectedOn !== null && expectedOn < dayOf(now(), lab.timeZone),
    }),
    shelvedAt: t.expose('shelvedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When the last of it went on the shelf.',
    }),
    calledOffAt: t.expose('calledOffAt', { type: 'DateTime', nullable: true, description: 'When it was called off.' }),
    deliveries: t.field({
      type: [DeliveryRef],
      description: 'What came of it, first to last.',
      resolve: ({ id }, _, { load }) => load.deliveriesOfOrder.load(id),
    }),
  }),
});

const OrderListRef = builder.objectRef<{ csv: string; text: string; orders: number }>('OrderList').implement({
  description: 'Orders as a list to hand on.',
  fields: (t) => ({
    orders: t.exposeInt('orders', { description: 'How many orders are on it.' }),
    csv: t.exposeString('csv', { description: 'The list as CSV: one order a line, amounts as decimals.' }),
    text: t.exposeString('text', {
      description: 'The same as plain text to paste into a letter, one part for each supplier.',
    }),
  }),
});

builder.queryFields((t) => ({
  orders: t.field({
    type: [OrderRef],
    description: 'Orders, the newest first.',
    args: {
      state: t.arg({ type: [OrderStateEnum], description: 'Only in these states; all when not given.' }),
      first: t.arg.int({ description: 'How many at most; 200 when not given, which is the most.' }),
    },
    resolve: (_, { state, first }, context) => ordersOf(context, state ?? null, first ?? null),
  }),
  orderList: t.field({
    type: OrderListRef,
    description: 'What is asked for, as a list: CSV, and a plain text for each supplier.',
    complexity: 20,
    args: {
      state: t.arg({ type: [OrderStateEnum], description: 'In these states; what is asked for when not given.' }),
      supplier: t.arg.string({ description: 'Only from the supplier of this name.' }),
    },
    resolve: (_, { state, supplier }, context) => orderListOf(context, state ?? ['ASKED_FOR'], supplier ?? null),
  }),
}));

const OrderKeptRef = builder.objectRef<OrderKept>('OrderKept').implement({
  description: 'An order was asked for, bought, put on the shelf, called off or taken back.',
  fields: (t) => ({
    order: t.field({
      type: OrderRef,
      description: 'The order.',
      resolve: async ({ orderId }, _, { load }) => there(await load.order.load(orderId), 'order'),
    }),
    notes: t.exposeStringList('notes', { description: 'What is to be known beside it, each in one sentence.' }),
  }),
});

const which = { required: true, description: 'Which order.' } as const;

addMutation('askForOrder', {
  description: 'Asks for packs of an offer, at its price of today.',
  check: askForOrderSaid,
  success: OrderKeptRef,
  run: (input, context) => fresh(context, orderAsked(context, input)),
  fields: (t) => ({
    offer: t.id({ required: true, description: 'Which offer.' }),
    packs: t.int({ required: true, description: 'How many packs.' }),
    lotWished: t.string({ description: 'The lot it should be of, when a campaign runs on it.' }),
    reason: t.string({ description: 'Why, in one sentence.' }),
    note: t.string({ description: 'A note beside it.' }),
  }),
});

addMutation('placeOrder', {
  description: 'An order is bought. What was confirmed may differ from what was asked for.',
  check: placeOrderSaid,
  success: OrderKeptRef,
  run: (input, context) => fresh(context, orderPlaced(context, input)),
  fields: (t) => ({
    id: t.id(which),
    packs: t.int({ description: 'Packs that were bought; as asked for when not given.' }),
    price: t.string({ description: `Price of one pack, ${amountText}; as asked for when not given.` }),
    expectedOn: t.string({
      description: 'The day it is expected, such as 2027-01-15; by the offer’s usual weeks when not given.',
    }),
    theirNumber: t.string({ description: 'The supplier’s number of the order.' }),
    note: t.string({ description: 'A note beside it.' }),
  }),
});

addMutation('shelveOrder', {
  description:
    'Something of an order came: it goes on the shelf with its lot, exactly as `receiveLot` books it. In parts, with damaged packs, or of another lot than wished for, when that is said.',
  check: shelveOrderSaid,
  success: OrderKeptRef,
  run: (input, context) => fresh(context, orderShelved(context, input)),
  fields: (t) => ({
    id: t.id(which),
    packs: t.int({ description: 'Packs that go on the shelf; all that are still to come when not given.' }),
    damagedPacks: t.int({ description: 'Packs that came damaged and do not; none when not given.' }),
    isLast: t.boolean({ description: 'No more of it will come; it may when not given.' }),
    lotNumber: t.string({ required: true, description: 'The lot number, as printed.' }),
    takeOtherLot: t.boolean({ description: 'It is another lot than wished for, and is kept all the same.' }),
    receivedAt: t.field({ type: 'DateTime', description: 'When it came in; now when not given.' }),
    retestOn: t.field({ type: 'DateTime', description: 'Retest date.' }),
    certificateWaterPercent: t.float({ description: 'Water on the certificate, % of the whole (as received).' }),
    certificateMaxWaterPercent: t.float({
      description: 'Highest water the certificate allows, % of the whole (as received).',
    }),
    room: t.string({ required: true, description: 'Name of the room it stands in.' }),
    vessel: t.string({
      description:
        'Name of the listed vessel each pack is; as the last of its sorbent when not given, none for plates.',
    }),
    innerDiameterMm: t.float({ description: 'Inner diameter of each pack, mm, when it is no listed vessel.' }),
    heightMm: t.float({ description: 'Inner height of each pack, mm.' }),
    note: t.string({ description: 'A note beside it.' }),
  }),
});

addMutation('callOffOrder', {
  description: 'Calls an order off: nothing more of it comes.',
  check: whichSaid,
  success: OrderKeptRef,
  run: (input, context) => fresh(context, orderCalledOff(context, input)),
  fields: (t) => ({ id: t.id(which) }),
});

addMutation('takeOrderBack', {
  description:
    'Takes the last step of an order back: its last delivery (whose containers then never came), that it was bought, or that it was called off; an order that was only asked for is called off.',
  check: whichSaid,
  success: OrderKeptRef,
  run: (input, context) => fresh(context, orderTakenBack(context, input)),
  fields: (t) => ({ id: t.id(which) }),
});
