// The rows of a list onto the book: lots, containers, what was opened, all in one act.
import type { Context } from '../context.ts';
import type { Lot } from '../database/generated/sqlite/client.ts';
import { madeRoom } from '../climate/service.ts';
import {
  bookedMany,
  certificateWater,
  commonVessels,
  madeSorbent,
  madeSupplier,
  madeVessel,
  percent,
  plateShape,
  shapeless,
  shapeOfVessel,
  type Arrival,
  type Shape,
} from '../stock/service.ts';
import { newId, type Work } from '../work.ts';
import { lotKey } from './agree.ts';
import type { Row } from './line.ts';
import type { Make } from './resolve.ts';

/** The lid is back on after so long where nobody says that it stayed off. */
const openedMinutes = 5;

const kinds = ['ROOM', 'COLD_STORE', 'DESICCATOR'] as const;
const idsByName = (rows: { id: string; name: string }[]) =>
  new Map(rows.map(({ id, name }) => [name.toLowerCase(), id]));
const cylinderMl = (diameterMm: number, heightMm: number) => (Math.PI / 4) * diameterMm ** 2 * heightMm * 1e-3;

async function made(
  work: Work,
  makes: readonly Make[],
  rooms: Map<string, string>,
  sorbents: Map<string, string>,
  suppliers: Map<string, string>,
) {
  for (const { what, name, as } of makes) {
    const key = name.toLowerCase();
    if (what === 'ROOM') rooms.set(key, await madeRoom(work, name, kinds.find((kind) => kind === as) ?? 'ROOM'));
    else if (what === 'SORBENT') sorbents.set(key, await madeSorbent(work, name, as));
    else suppliers.set(key, await madeSupplier(work, name));
  }
}

/** What the rows of one lot say of it together. */
function lotFacts(rows: readonly Row[]) {
  const first = <T>(of: (row: Row) => T | null): T | null => rows.map(of).find((value) => value !== null) ?? null;
  return {
    supplier: first(({ supplier }) => supplier),
    retestOn: first(({ retestOn }) => retestOn),
    certificateWaterFraction: first(({ certificateWaterFraction }) => certificateWaterFraction),
    certificateMaxWaterFraction: first(({ certificateMaxWaterFraction }) => certificateMaxWaterFraction),
  };
}

const cameInAt = (row: Row, now: Date): Date => row.receivedAt ?? row.openedAt ?? now;

async function lotFor(
  work: Work,
  rows: readonly Row[],
  sorbentId: string,
  suppliers: Map<string, string>,
): Promise<Lot> {
  const { tx, labId, now } = work;
  const [{ lotNumber }] = rows as [Row, ...Row[]];
  const { supplier, ...facts } = lotFacts(rows);
  const supplierId = supplier === null ? null : (suppliers.get(supplier.toLowerCase()) ?? null);
  const receivedAt = new Date(Math.min(...rows.map((row) => cameInAt(row, now).getTime())));
  const all = await tx.lot.findMany({
    where: { labId, sorbentId },
    include: { _count: { select: { containers: { where: { isVoid: false } } } } },
  });
  const there = all.find((lot) => lot.lotNumber.toLowerCase() === lotNumber.toLowerCase());
  if (there && there._count.containers > 0) return there;
  if (there) {
    // Everything of it was taken back: it is told anew.
    work.changed('Lot', there.id, 'CHANGED');
    return tx.lot.update({ where: { id: there.id }, data: { ...facts, supplierId, receivedAt } });
  }
  const id = newId();
  work.changed('Lot', id, 'MADE');
  return tx.lot.create({
    data: { id, labId, sorbentId, supplierId, lotNumber, receivedAt, certificate: [], ...facts },
  });
}

function arrivalOf(row: Row, lot: Lot, roomId: string, shape: Shape, now: Date): Arrival {
  const { kind, grams, plates, tareGrams, oldCode, note, openedAt, receivedAt, closure, startWaterFraction } = row;
  const at = cameInAt(row, now);
  const certificate = certificateWater(lot);
  const known = kind === 'DRUM' && !certificate.assumed ? certificate.waterFraction : null;
  const then: Arrival['then'] = [];
  const openFromStart = openedAt !== null && receivedAt === null;
  if (openedAt !== null) {
    if (!openFromStart) then.push({ type: 'OPENED', at: openedAt });
    if (closure !== 'OPEN') {
      const shut = new Date(Math.min(openedAt.getTime() + openedMinutes * 60_000, now.getTime()));
      then.push({ type: 'CLOSED', at: shut, closure: closure ?? 'WELL_CLOSED' });
    }
  }
  return {
    kind,
    lotId: lot.id,
    shape,
    tareGrams,
    roomId,
    oldCode,
    at,
    closure: openFromStart ? 'OPEN' : openedAt !== null ? 'SEALED' : (closure ?? 'SEALED'),
    grams,
    plates,
    startWaterFraction: startWaterFraction ?? known,
    startWaterFrom: startWaterFraction !== null ? 'GIVEN' : known === null ? 'NOWHERE' : 'CERTIFICATE',
    bookedWaterFraction: certificate.waterFraction,
    note,
    then,
  };
}

/** Finds a vessel's shape by name; a common one is made when it is first named. */
async function vesselShapes(work: Work): Promise<(name: string) => Promise<Shape>> {
  const { tx, labId } = work;
  const rows = await tx.vessel.findMany({ where: { labId } });
  const shapes = new Map(rows.map((row) => [row.name.toLowerCase(), shapeOfVessel(row)]));
  return async (name) => {
    const there = shapes.get(name.toLowerCase());
    if (there) return there;
    const common = commonVessels.find((vessel) => vessel.name.toLowerCase() === name.toLowerCase());
    if (!common) throw new Error(`no vessel ${name}`);
    const shape = shapeOfVessel(await madeVessel(work, common));
    shapes.set(name.toLowerCase(), shape);
    return shape;
  };
}

async function shapeFor(row: Row, vessel: (name: string) => Promise<Shape>): Promise<Shape> {
  if (row.kind === 'PLATE_BOX') return plateShape(row);
  if (row.vessel !== null) return vessel(row.vessel);
  const innerDiameterMm = row.innerDiameterMm ?? 0;
  const heightMm = row.heightMm ?? 0;
  const mouthDiameterMm = row.mouthDiameterMm ?? innerDiameterMm;
  return { ...shapeless, innerDiameterMm, heightMm, mouthDiameterMm, volumeMl: cylinderMl(innerDiameterMm, heightMm) };
}

export interface Booked {
  containerIds: string[];
  eventIds: string[];
  notes: string[];
}

/** Books rows that are whole and agree with each other. */
export async function bookedRows(
  context: Context,
  work: Work,
  rows: readonly Row[],
  makes: readonly Make[],
): Promise<Booked> {
  const { tx, labId, now } = work;
  const named = { where: { labId }, select: { id: true, name: true } };
  const rooms = idsByName(await tx.room.findMany(named));
  const sorbents = idsByName(await tx.sorbent.findMany(named));
  const suppliers = idsByName(await tx.supplier.findMany(named));
  const used = makes.filter(
    ({ what, name }) => what !== 'SORBENT' || rows.some(({ sorbent }) => sorbent.toLowerCase() === name.toLowerCase()),
  );
  await made(work, used, rooms, sorbents, suppliers);
  for (const { room } of rows) {
    if (!rooms.has(room.toLowerCase())) rooms.set(room.toLowerCase(), await madeRoom(work, room, 'ROOM'));
  }
  const vessel = await vesselShapes(work);
  const groups = new Map<string, Row[]>();
  for (const row of rows) groups.set(lotKey(row), [...(groups.get(lotKey(row)) ?? []), row]);
  const lots = new Map<string, Lot>();
  for (const [key, group] of groups) {
    const sorbentId = sorbents.get(group[0]?.sorbent.toLowerCase() ?? '') ?? '';
    lots.set(key, await lotFor(work, group, sorbentId, suppliers));
  }
  const arrivals: Arrival[] = [];
  for (const row of rows) {
    const lot = lots.get(lotKey(row));
    const roomId = rooms.get(row.room.toLowerCase());
    if (!lot || roomId === undefined) throw new Error(`line ${row.line} lost its lot or room`);
    const arrival = arrivalOf(row, lot, roomId, await shapeFor(row, vessel), now);
    for (let copies = 0; copies < row.count; copies += 1) arrivals.push(arrival);
  }
  const { containerIds, eventIds } = await bookedMany(work, context.database.engine, arrivals);
  const assumed = arrivals.filter(({ kind, startWaterFraction }) => kind === 'DRUM' && startWaterFraction === null);
  const at = [...new Set(assumed.map(({ bookedWaterFraction }) => percent(bookedWaterFraction)))].join(' or ');
  const of = assumed.length === 1 ? 'one container' : `${assumed.length} containers`;
  const notes =
    assumed.length === 0
      ? []
      : [`starting water of ${of} is unknown: dry grams are booked at ${at} (dry basis), assumed until weighed`];
  return { containerIds, eventIds, notes };
}
