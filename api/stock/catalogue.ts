// What stands behind the stock: sorbents with their numbers, suppliers, people, vessels.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid } from '../errors.ts';
import { sorbentClasses } from '../science/properties.ts';
import { newId, type Work, write } from '../work.ts';
import { sorbentOf } from './find.ts';
import { classProperties, propertyBounds, propertyNames, propertyUnits } from './properties.ts';
import { said } from './said.ts';
import { commonVessels } from './vessels.ts';

const um = z.number('µm').positive('more than 0 µm').max(10_000, 'at most 10000 µm').nullish();
const mesh = z.int('a mesh number').min(1, '1 or more').max(2000, 'at most 2000').nullish();
const fraction = said.waterFraction.nullish();

/** What a sorbent is, apart from its numbers and its band. */
export const sorbentFields = {
  name: said.name,
  sorbentClass: said.name.transform((name) => name.toLowerCase()),
  particleSizeLowUm: um,
  particleSizeHighUm: um,
  meshLow: mesh,
  meshHigh: mesh,
  poreSizeNm: z.number('nm').positive('more than 0 nm').max(1000, 'at most 1000 nm').nullish(),
  bondedPhase: said.text,
  reaction: z.enum(['ACIDIC', 'NEUTRAL', 'BASIC'], 'ACIDIC, NEUTRAL or BASIC').nullish(),
};

export const addSorbentSaid = z
  .object({
    ...sorbentFields,
    targetPolicy: z.enum(['DRY', 'AS_RECEIVED', 'SET'], 'DRY, AS_RECEIVED or SET').nullish(),
    targetUpperWaterFraction: fraction,
    targetLowerWaterFraction: fraction,
    clientKey: said.clientKey,
  })
  .refine((of) => (of.targetLowerWaterFraction ?? 0) <= (of.targetUpperWaterFraction ?? 1), {
    path: ['targetLowerWaterFraction'],
    message: 'at most the upper end',
  });

const propertySaid = z.object({
  name: z.enum(propertyNames, propertyNames.join(', ')),
  value: z.number('a number').min(0, '0 or more').max(1e5, 'at most 100000').nullish(),
  origin: z.enum(['TABLE', 'CERTIFICATE', 'MEASURED', 'DEFAULT', 'UNKNOWN'], 'where it comes from').nullish(),
  confidence: z.enum(['CONFIRMED', 'FROM_MEMORY', 'DERIVED', 'GUESS'], 'how sure it is').nullish(),
  source: z
    .string('where it comes from, in words')
    .trim()
    .min(1, 'where it comes from, in words')
    .max(500, 'at most 500 signs'),
});

export type PropertySaid = z.output<typeof propertySaid>;

export const setPropertySaid = propertySaid.extend({ sorbent: said.name, clientKey: said.clientKey });

export const setPropertiesSaid = z.object({
  sorbent: said.name,
  properties: z.array(propertySaid, 'numbers').min(1, 'at least one number').max(20, 'at most 20 numbers'),
  clientKey: said.clientKey,
});

export const addSupplierSaid = z.object({ name: said.name, clientKey: said.clientKey });

export const addPersonSaid = z.object({
  role: said.name,
  shortName: z.string('a short name').trim().min(1, 'a short name').max(40, 'at most 40 signs'),
  clientKey: said.clientKey,
});

export const addVesselSaid = z.object({
  name: said.name,
  innerDiameterMm: said.mm,
  heightMm: said.mm,
  mouthDiameterMm: said.mm.nullish(),
  volumeMl: said.ml.nullish(),
  source: z.string().trim().max(500, 'at most 500 signs').nullish(),
  clientKey: said.clientKey,
});

/** An input without the key by which it is repeated. */
function lodged<Input extends { clientKey?: unknown }>(input: Input): Omit<Input, 'clientKey'> {
  const rest = { ...input };
  delete rest.clientKey;
  return rest;
}

const sameName = (there: { name: string }[], name: string): boolean =>
  there.some((row) => row.name.toLowerCase() === name.toLowerCase());

const taken = (path: string, name: string) => invalid(path, name, 'it is there already; a name of its own');

/** Classes that the table knows; others are the lab's own. */
export const knownClasses = sorbentClasses.map(({ name }) => name);

/** Adds a sorbent with the numbers of its class. */
export function sorbentAdded(context: Context, input: z.output<typeof addSorbentSaid>) {
  return write(context, 'addSorbent', input, async (work) => {
    const { tx, labId } = work;
    const { targetPolicy, ...columns } = lodged(input);
    if (sameName(await tx.sorbent.findMany({ where: { labId } }), input.name)) throw taken('input.name', input.name);
    const sorbent = await tx.sorbent.create({
      data: { id: newId(), labId, ...columns, targetPolicy: targetPolicy ?? 'DRY' },
    });
    const properties = classProperties(input.sorbentClass).map((one) => ({
      id: newId(),
      labId,
      sorbentId: sorbent.id,
      ...one,
    }));
    await tx.sorbentProperty.createMany({ data: properties });
    work.changed('Sorbent', sorbent.id, 'MADE');
    return { sorbentId: sorbent.id };
  });
}

/** Writes numbers of a sorbent; its estimates are made anew from the beginning. */
export async function propertiesWritten(
  work: Work,
  sorbentId: string,
  properties: readonly PropertySaid[],
  pathOf: (index: number) => string,
): Promise<void> {
  const { tx, labId } = work;
  for (const [index, { name, value: given, origin, confidence, source }] of properties.entries()) {
    const value = given ?? null;
    const [least, most] = propertyBounds[name];
    if (value !== null && !(value >= least && value <= most)) {
      throw invalid(`${pathOf(index)}.value`, value, `${name} from ${least} to ${most} ${propertyUnits[name]}`);
    }
    const data = {
      value,
      unit: propertyUnits[name],
      origin: value === null ? ('UNKNOWN' as const) : (origin ?? 'MEASURED'),
      confidence: confidence ?? 'CONFIRMED',
      source,
    };
    const key = { sorbentId, name };
    const create = { id: newId(), labId, ...key, ...data };
    await tx.sorbentProperty.upsert({ where: { sorbentId_name: key }, create, update: data });
  }
  work.changed('Sorbent', sorbentId, 'CHANGED');
  const touched = await tx.container.findMany({ where: { lot: { sorbentId }, isVoid: false } });
  for (const container of touched) work.stale(container.id, container.cameInAt);
}

/** Replaces one number of a sorbent. */
export function propertySet(context: Context, input: z.output<typeof setPropertySaid>) {
  return write(context, 'setSorbentProperty', input, async (work) => {
    const sorbent = await sorbentOf(work, input.sorbent);
    await propertiesWritten(work, sorbent.id, [input], () => 'input');
    return { sorbentId: sorbent.id };
  });
}

/** Replaces several numbers of a sorbent at once, all or nothing. */
export function propertiesSet(context: Context, input: z.output<typeof setPropertiesSaid>) {
  return write(context, 'setSorbentProperties', input, async (work) => {
    const sorbent = await sorbentOf(work, input.sorbent);
    await propertiesWritten(work, sorbent.id, input.properties, (index) => `input.properties.${index}`);
    return { sorbentId: sorbent.id };
  });
}

export function supplierAdded(context: Context, input: z.output<typeof addSupplierSaid>) {
  return write(context, 'addSupplier', input, async (work) => {
    const { tx, labId } = work;
    if (sameName(await tx.supplier.findMany({ where: { labId } }), input.name)) throw taken('input.name', input.name);
    const supplier = await tx.supplier.create({ data: { id: newId(), labId, name: input.name } });
    work.changed('Supplier', supplier.id, 'MADE');
    return { supplierId: supplier.id };
  });
}

export function personAdded(context: Context, input: z.output<typeof addPersonSaid>) {
  return write(context, 'addPerson', input, async (work) => {
    const { tx, labId } = work;
    const { role, shortName } = input;
    const there = await tx.person.findUnique({ where: { labId_shortName: { labId, shortName } } });
    if (there) throw taken('input.shortName', shortName);
    const person = await tx.person.create({ data: { id: newId(), labId, role, shortName } });
    work.changed('Person', person.id, 'MADE');
    return { personId: person.id };
  });
}

export function vesselAdded(context: Context, input: z.output<typeof addVesselSaid>) {
  return write(context, 'addVessel', input, async (work) => {
    const { tx, labId } = work;
    if (sameName(await tx.vessel.findMany({ where: { labId } }), input.name)) throw taken('input.name', input.name);
    const { name, innerDiameterMm, heightMm } = input;
    const mouthDiameterMm = input.mouthDiameterMm ?? innerDiameterMm;
    const volumeMl = input.volumeMl ?? (Math.PI / 4) * innerDiameterMm ** 2 * heightMm * 1e-3;
    const sizes = { name, innerDiameterMm, heightMm, mouthDiameterMm, volumeMl };
    const vessel = await tx.vessel.create({
      data: { id: newId(), labId, ...sizes, source: input.source ?? 'given by the lab' },
    });
    work.changed('Vessel', vessel.id, 'MADE');
    return { vesselId: vessel.id };
  });
}

/** The common vessels that a lab does not have yet. */
export function commonVesselsAdded(context: Context, input: { clientKey?: string | null | undefined }) {
  return write(context, 'addCommonVessels', input, async (work) => {
    const { tx, labId } = work;
    const there = await tx.vessel.findMany({ where: { labId } });
    const vessels = commonVessels
      .filter(({ name }) => !sameName(there, name))
      .map((vessel) => ({ id: newId(), labId, ...vessel }));
    if (vessels.length > 0) await tx.vessel.createMany({ data: vessels });
    for (const { id } of vessels) work.changed('Vessel', id, 'MADE');
    return { vesselIds: vessels.map(({ id }) => id) };
  });
}
