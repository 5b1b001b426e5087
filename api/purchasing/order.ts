// Orders: asked for, bought, called off; each step can be taken back.
import type { z } from 'zod';
import type { Context } from '../context.ts';
import type { Order, OrderState } from '../database/generated/sqlite/client.ts';
import { invalid, unknown } from '../errors.ts';
import { localId } from '../stock/service.ts';
import { told } from '../told.ts';
import { newId, write, type Work } from '../work.ts';
import { minorSaid, mostMinor } from './money.ts';
import { offerOf, pricesOf } from './offer.ts';
import { checkStep, priceFor } from './rules.ts';
import type { askForOrderSaid, placeOrderSaid, whichSaid } from './said.ts';
import { currencyOf } from './settings.ts';
import { dayOf, daysAfter } from './weeks.ts';

export type OrderKept = { orderId: string; notes: string[] };

export async function orderOf(work: Pick<Work, 'tx' | 'labId'>, id: string): Promise<Order> {
  const order = await work.tx.order.findFirst({ where: { id: localId('Order', id, 'input.id'), labId: work.labId } });
  if (!order) throw unknown('input.id', id, 'the id of an order of this lab');
  return order;
}

/** Orders are numbered as they are asked for. */
async function nextNumber({ tx, labId }: Work): Promise<number> {
  const key = { labId, name: 'order' };
  const { value } = await tx.counter.upsert({
    where: { labId_name: key },
    create: { ...key, value: 1 },
    update: { value: { increment: 1 } },
  });
  return value;
}

/** What they come to; refused when no book could hold it. */
function checkTotal(priceMinor: number, packs: number): void {
  if (priceMinor * packs > mostMinor)
    throw invalid('input.packs', packs, 'fewer packs: that order is too dear to book');
}

export function orderAsked(context: Context, input: z.output<typeof askForOrderSaid>): Promise<OrderKept> {
  return write(context, 'askForOrder', input, async (work) => {
    const offer = await offerOf(work, input.offer, 'input.offer');
    if (offer.removedAt) throw invalid('input.offer', input.offer, 'an offer that still stands');
    const { packs } = input;
    if (offer.mostPacks !== null && packs > offer.mostPacks)
      throw invalid('input.packs', packs, `at most ${offer.mostPacks} packs of this offer in one order`);
    const priceMinor = priceFor(pricesOf(offer), packs);
    checkTotal(priceMinor, packs);
    const { supplierId, sorbentId, backing, packGrams, packPlates } = offer;
    const data = {
      id: newId(),
      labId: work.labId,
      number: await nextNumber(work),
      state: 'ASKED_FOR' as const,
      ...{ offerId: offer.id, supplierId, sorbentId, backing, packs, packGrams, packPlates, priceMinor },
      lotWished: input.lotWished ?? null,
      reason: input.reason || null,
      note: input.note || null,
      askedAt: work.now,
    };
    await work.tx.order.create({ data });
    work.changed('Order', data.id, 'MADE');
    return { orderId: data.id, notes: [] };
  });
}

/** When it should be here, by what the offer says is usual. */
async function expected(work: Work, order: Order, today: string): Promise<string | null> {
  const offer = order.offerId ? await work.tx.offer.findUnique({ where: { id: order.offerId } }) : null;
  return offer && daysAfter(today, 7 * offer.leadUsualWeeks);
}

/** Bought: what was confirmed may differ in packs, price and day from what was asked for. */
export function orderPlaced(context: Context, input: z.output<typeof placeOrderSaid>): Promise<OrderKept> {
  return write(context, 'placeOrder', input, async (work) => {
    const order = await orderOf(work, input.id);
    checkStep(order.state, 'BOUGHT', input.id);
    if (order.state === 'ON_THE_SHELF') throw invalid('input.id', input.id, 'an order that is not on the shelf yet');
    const packs = input.packs ?? order.packs;
    const priceMinor = minorSaid(input.price, currencyOf(context), 'input.price') ?? order.priceMinor;
    checkTotal(priceMinor, packs);
    const expectedOn = input.expectedOn ?? (await expected(work, order, dayOf(work.now, context.lab.timeZone)));
    const { theirNumber, note } = input;
    const data = {
      ...{ state: 'BOUGHT' as const, packs, priceMinor, expectedOn, boughtAt: work.now, calledOffAt: null },
      ...told({ theirNumber, note: note === '' ? null : note }),
    };
    await work.tx.order.update({ where: { id: order.id }, data });
    work.changed('Order', order.id, 'CHANGED');
    const notes = packs === order.packs ? [] : [`${packs} packs were bought of the ${order.packs} that were asked for`];
    return { orderId: order.id, notes };
  });
}

async function stepped(work: Work, order: Order, state: OrderState, more: Partial<Order>): Promise<OrderKept> {
  await work.tx.order.update({ where: { id: order.id }, data: { state, ...more } });
  work.changed('Order', order.id, 'CHANGED');
  return { orderId: order.id, notes: [] };
}

/** Called off: nothing of it comes any more. What came of it stays on the shelf. */
export function orderCalledOff(context: Context, input: z.output<typeof whichSaid>): Promise<OrderKept> {
  return write(context, 'callOffOrder', input, async (work) => {
    const order = await orderOf(work, input.id);
    if (order.state === 'CALLED_OFF') return { orderId: order.id, notes: [] };
    checkStep(order.state, 'CALLED_OFF', input.id);
    return stepped(work, order, 'CALLED_OFF', { calledOffAt: work.now });
  });
}

/** Bought or called off: one step back. What is on the shelf goes back by its deliveries. */
export async function orderStepBack(work: Work, order: Order): Promise<OrderKept> {
  if (order.state === 'CALLED_OFF')
    return stepped(work, order, order.boughtAt ? 'BOUGHT' : 'ASKED_FOR', { calledOffAt: null });
  if (order.state === 'BOUGHT')
    return stepped(work, order, 'ASKED_FOR', { boughtAt: null, expectedOn: null, theirNumber: null });
  return stepped(work, order, 'CALLED_OFF', { calledOffAt: work.now });
}
