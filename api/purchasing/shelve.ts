// What came of an order: in parts, of another lot than wished for, or damaged. What is whole goes on the shelf exactly as
// anything that comes in.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { Container, Delivery, Order } from '../database/generated/sqlite/client.ts';
import { invalid, missing } from '../errors.ts';
import { cameIn, details, mostAlike, receiveSaid, takenBack } from '../stock/service.ts';
import { newId, write, type Work } from '../work.ts';
import { orderOf, orderStepBack, type OrderKept } from './order.ts';
import { checkStep } from './rules.ts';
import type { shelveOrderSaid, whichSaid } from './said.ts';

type Said = z.output<typeof shelveOrderSaid>;

/** Packs differ by no more than this share of their grams: they are of one size. */
const sameSize = 0.02;

const ids = z.array(z.string());
const counted = ({ deliveries }: { deliveries: readonly Delivery[] }) =>
  deliveries.reduce((sum, { packs, damagedPacks }) => sum + packs + damagedPacks, 0);

/** Packs that are still to come. */
export const stillOut = (order: Order & { deliveries: readonly Delivery[] }): number =>
  Math.max(0, order.packs - counted(order));

/** More packs than so many are not looked through for one of the same size. */
const mostLooked = 200;

/** The last pack of this size that came in, as received. */
async function lastOfSize({ tx, labId }: Work, { sorbentId, packGrams }: Order): Promise<Container | null> {
  const came = await tx.event.findMany({
    where: { labId, type: 'CAME_IN', stands: true, container: { kind: 'DRUM', isVoid: false, lot: { sorbentId } } },
    include: { container: true },
    orderBy: [{ at: 'desc' }, { place: 'desc' }],
    take: mostLooked,
  });
  const isOfSize = (detail: unknown) => {
    const { grams, basis, bookedWaterFraction } = details.CAME_IN.parse(detail);
    const asReceived = (grams ?? 0) * (basis === 'DRY' ? 1 + bookedWaterFraction : 1);
    return Math.abs(asReceived - (packGrams ?? 0)) <= sameSize * (packGrams ?? 0);
  };
  return came.find(({ detail }) => isOfSize(detail))?.container ?? null;
}

/** The packs as stock takes them: drums of so many grams, or boxes of plates. */
async function containersOf(work: Work, order: Order, input: Said, packs: number) {
  const { room, vessel, innerDiameterMm, heightMm } = input;
  const many = { room, count: packs };
  if (order.packPlates !== null)
    return [{ ...many, kind: 'PLATE_BOX', plates: order.packPlates, backing: order.backing ?? 'GLASS' }];
  if (!vessel && !innerDiameterMm) {
    const last = await lastOfSize(work, order);
    if (!last?.innerDiameterMm || !last.heightMm)
      throw missing('input.vessel', 'the vessel it comes in, or its inner sizes: no pack of this size came before');
    const { innerDiameterMm, heightMm, mouthDiameterMm, volumeMl, usualClosure } = last;
    const named = last.vesselId ? await work.tx.vessel.findUnique({ where: { id: last.vesselId } }) : null;
    const sizes = named ? { vessel: named.name } : { innerDiameterMm, heightMm, mouthDiameterMm, volumeMl };
    return [{ ...many, kind: 'DRUM', grams: order.packGrams, ...sizes, usualClosure }];
  }
  return [{ ...many, kind: 'DRUM', grams: order.packGrams, vessel, innerDiameterMm, heightMm }];
}

async function booked(work: Work, order: Order, input: Said, packs: number) {
  if (packs === 0) return { lotId: null, containerIds: [], notes: [] };
  const [sorbent, supplier] = await Promise.all([
    work.tx.sorbent.findUniqueOrThrow({ where: { id: order.sorbentId } }),
    work.tx.supplier.findUniqueOrThrow({ where: { id: order.supplierId } }),
  ]);
  const { lotNumber, receivedAt, retestOn, certificateWaterPercent, certificateMaxWaterPercent, note } = input;
  return cameIn(
    work,
    receiveSaid.parse({
      ...{ sorbent: sorbent.name, supplier: supplier.name, lotNumber, receivedAt, retestOn },
      ...{ certificateWaterPercent, certificateMaxWaterPercent, note },
      containers: await containersOf(work, order, input, packs),
    }),
  );
}

/** On the shelf, whole or in part. */
export function orderShelved(context: Context, input: Said): Promise<OrderKept> {
  return write(context, 'shelveOrder', input, async (work) => {
    const found = await orderOf(work, input.id);
    checkStep(found.state, 'ON_THE_SHELF', input.id);
    const deliveries = await work.tx.delivery.findMany({ where: { orderId: found.id, takenBackAt: null } });
    const order = { ...found, deliveries };
    const out = stillOut(order);
    const damaged = input.damagedPacks ?? 0;
    const packs = input.packs ?? Math.max(0, out - damaged);
    if (packs + damaged === 0) throw invalid('input.packs', packs, '1 pack or more, whole or damaged');
    if (packs + damaged > out)
      throw invalid(
        'input.packs',
        packs,
        `at most ${out - damaged}: ${out} packs of order ${order.number} are to come`,
      );
    if (packs > mostAlike)
      throw invalid('input.packs', packs, `at most ${mostAlike} at once: put the others on the shelf after them`);
    const isOther = order.lotWished !== null && order.lotWished.toLowerCase() !== input.lotNumber.trim().toLowerCase();
    if (isOther && !input.takeOtherLot)
      throw invalid(
        'input.takeOtherLot',
        false,
        `true, to keep ${input.lotNumber.trim()} although ${order.lotWished} was asked for`,
      );
    const { lotId, containerIds, notes } = await booked(work, order, input, packs);
    const events = await work.tx.event.findMany({ where: { containerId: { in: containerIds }, type: 'CAME_IN' } });
    const delivery = {
      ...{ id: newId(), labId: work.labId, orderId: order.id, at: input.receivedAt ?? work.now, lotId },
      ...{ lotNumber: input.lotNumber, packs, damagedPacks: damaged, isOtherLot: isOther, note: input.note },
      ...{ containers: containerIds, events: events.map(({ id }) => id), recordedAt: work.now },
    };
    await work.tx.delivery.create({ data: delivery });
    work.changed('Delivery', delivery.id, 'MADE');
    const left = out - packs - damaged;
    const isDone = left === 0 || input.isLast === true;
    const state = isDone ? ('ON_THE_SHELF' as const) : ('BOUGHT' as const);
    const stamps = { boughtAt: order.boughtAt ?? work.now, ...(isDone ? { shelvedAt: work.now } : {}) };
    await work.tx.order.update({ where: { id: order.id }, data: { state, ...stamps } });
    work.changed('Order', order.id, 'CHANGED');
    return { orderId: order.id, notes: [...notes, ...saidOf(left, isDone, damaged, isOther, order.lotWished)] };
  });
}

const many = (packs: number): string => (packs === 1 ? '1 pack' : `${packs} packs`);

function saidOf(left: number, isDone: boolean, damaged: number, isOther: boolean, wished: string | null): string[] {
  const notes: string[] = [];
  if (left > 0) notes.push(isDone ? `${many(left)} will not come` : `${many(left)} still to come`);
  if (damaged > 0) notes.push(`${many(damaged)} came damaged: not on the shelf, and not to come any more`);
  if (isOther) notes.push(`another lot than ${wished}: no campaign runs on it`);
  return notes;
}

/** Takes the last delivery back: its containers never came, unless something was done with them since. */
async function unshelved(work: Work, order: Order, last: Delivery): Promise<OrderKept> {
  const containers = ids.parse(last.containers);
  const later = await work.tx.event.findFirst({
    where: {
      stands: true,
      type: { not: 'CAME_IN' },
      OR: [{ containerId: { in: containers } }, { otherContainerId: { in: containers } }],
    },
    include: { container: true },
  });
  if (later)
    throw invalid('input.id', order.number, `an order whose stock was not touched yet: ${later.container.label} was`);
  const held = await work.tx.hold.findFirst({ where: { containerId: { in: containers }, releasedAt: null } });
  if (held)
    throw invalid(
      'input.id',
      order.number,
      `an order whose stock is kept for nobody: let go of what ${held.forWhat} keeps`,
    );
  for (const event of ids.parse(last.events)) await takenBack(work, event, 'a delivery that was taken back');
  await work.tx.delivery.update({ where: { id: last.id }, data: { takenBackAt: work.now } });
  work.changed('Delivery', last.id, 'CHANGED');
  await work.tx.order.update({ where: { id: order.id }, data: { state: 'BOUGHT', shelvedAt: null } });
  work.changed('Order', order.id, 'CHANGED');
  return { orderId: order.id, notes: [] };
}

/** One step back: the last delivery, else bought, else asked for. */
export function orderTakenBack(context: Context, input: z.output<typeof whichSaid>): Promise<OrderKept> {
  return write(context, 'takeOrderBack', input, async (work) => {
    const order = await orderOf(work, input.id);
    const last = await work.tx.delivery.findFirst({
      where: { orderId: order.id, takenBackAt: null },
      orderBy: [{ recordedAt: 'desc' }, { id: 'desc' }],
    });
    if (last && order.state !== 'CALLED_OFF') return unshelved(work, order, last);
    return orderStepBack(work, order);
  });
}
