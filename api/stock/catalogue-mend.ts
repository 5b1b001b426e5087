// What stands behind the stock put right afterwards: sorbents, their bands and numbers, lots, and the lab's people and things.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { Lot } from '../database/generated/sqlite/client.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { newId, write, type Work } from '../work.ts';
import { bandOf, bandSaid } from './catalogue-band.ts';
import { sorbentFields } from './catalogue.ts';
import { certificateRestated } from './catalogue-certificate.ts';
import { lotOf, sorbentOf, supplierOf } from './find.ts';
import { classProperties, propertyNames } from './properties.ts';
import { said } from './said.ts';
import { dryBasis } from './water.ts';

/** Marks all containers of a sorbent or a lot: from their beginning, or from now on where only the judgement changes. */
export async function staleStock(
  work: Work,
  of: { sorbentId: string } | { lotId: string },
  since: 'beginning' | 'now',
): Promise<void> {
  const where = 'lotId' in of ? { lotId: of.lotId } : { lot: { sorbentId: of.sorbentId } };
  const touched = await work.tx.container.findMany({
    where: { ...where, isVoid: false, ...(since === 'now' ? { finishedAt: null } : {}) },
    select: { id: true, cameInAt: true },
  });
  for (const { id, cameInAt } of touched) work.stale(id, since === 'now' ? work.now : cameInAt);
}

/** The lot of a sorbent by its number; refuses with the numbers there are. */
export async function lotNamed(
  work: Pick<Work, 'tx' | 'labId'>,
  sorbentId: string,
  lotNumber: string,
  path = 'input.lotNumber',
): Promise<Lot> {
  const lot = await lotOf(work, sorbentId, lotNumber);
  if (lot) return lot;
  const some = await work.tx.lot.findMany({ where: { sorbentId }, select: { lotNumber: true }, take: 8 });
  const numbers = some.map((one) => one.lotNumber).join(', ');
  throw unknown(path, lotNumber, numbers ? `one of: ${numbers}` : 'this sorbent has no lot yet');
}

// ------------------------------------------------------------------ target bands

export const sorbentTargetSaid = z.object({ sorbent: said.name, ...bandSaid, clientKey: said.clientKey });

/** Sets what a sorbent's water should be; estimates are judged anew. */
export function sorbentTargetSet(context: Context, input: z.output<typeof sorbentTargetSaid>) {
  return write(context, 'setSorbentTarget', input, async (work) => {
    const sorbent = await sorbentOf(work, input.sorbent);
    const band = await bandOf(work, input, sorbent.sorbentClass);
    await work.tx.sorbent.update({ where: { id: sorbent.id }, data: band });
    work.changed('Sorbent', sorbent.id, 'CHANGED');
    await staleStock(work, { sorbentId: sorbent.id }, 'now');
    return { sorbentId: sorbent.id };
  });
}

export const lotTargetSaid = z.object({
  sorbent: said.name,
  lotNumber: said.name,
  ...bandSaid,
  policy: bandSaid.policy.nullish(),
  clientKey: said.clientKey,
});

/** Gives a lot a band of its own, or takes it away again, so that its sorbent's counts. */
export function lotTargetSet(context: Context, input: z.output<typeof lotTargetSaid>) {
  return write(context, 'setLotTarget', input, async (work) => {
    const sorbent = await sorbentOf(work, input.sorbent);
    const lot = await lotNamed(work, sorbent.id, input.lotNumber);
    const { policy } = input;
    const none = { targetPolicy: null, targetUpperWaterFraction: null, targetLowerWaterFraction: null };
    const band = policy
      ? await bandOf(work, { ...input, policy }, sorbent.sorbentClass)
      : { ...none, targetBandWaterFraction: null };
    await work.tx.lot.update({ where: { id: lot.id }, data: band });
    work.changed('Lot', lot.id, 'CHANGED');
    await staleStock(work, { lotId: lot.id }, 'now');
    return { lotId: lot.id };
  });
}

// ------------------------------------------------------------------ a sorbent itself

export const setSorbentSaid = z.object({
  sorbent: said.name,
  ...sorbentFields,
  name: sorbentFields.name.nullish(),
  sorbentClass: sorbentFields.sorbentClass.nullish(),
  bondedPhase: z.string().trim().max(2000, 'at most 2000 signs').nullish(),
  clientKey: said.clientKey,
});

const ordered = (low: number | null, high: number | null, path: string): void => {
  if (low !== null && high !== null && low > high) throw invalid(path, low, `at most the other end (${high})`);
};

/** Another class brings its numbers wherever the table's stand; what was measured here stays. */
async function classChanged(work: Work, sorbentId: string, className: string): Promise<void> {
  const there = await work.tx.sorbentProperty.findMany({ where: { sorbentId } });
  for (const property of classProperties(className)) {
    const own = there.find(({ name }) => name === property.name);
    if (own && own.origin !== 'TABLE' && own.origin !== 'UNKNOWN') continue;
    const key = { sorbentId, name: property.name };
    const create = { id: newId(), labId: work.labId, ...key, ...property };
    await work.tx.sorbentProperty.upsert({ where: { sorbentId_name: key }, create, update: property });
  }
  await staleStock(work, { sorbentId }, 'beginning');
}

/** Puts right what is said of a sorbent; what is not given stays, what is given as null is emptied. */
export function sorbentMended(context: Context, input: z.output<typeof setSorbentSaid>) {
  return write(context, 'setSorbent', input, async (work) => {
    const { tx, labId } = work;
    const sorbent = await sorbentOf(work, input.sorbent);
    const { particleSizeLowUm, particleSizeHighUm, meshLow, meshHigh, poreSizeNm, bondedPhase, reaction } = input;
    const optional = { particleSizeLowUm, particleSizeHighUm, meshLow, meshHigh, poreSizeNm, reaction };
    const given = Object.fromEntries(Object.entries(optional).filter(([, value]) => value !== undefined));
    const phase = bondedPhase === undefined ? {} : { bondedPhase: bondedPhase || null };
    const named = { name: input.name ?? sorbent.name, sorbentClass: input.sorbentClass ?? sorbent.sorbentClass };
    const next = { ...sorbent, ...given, ...phase, ...named };
    ordered(next.particleSizeLowUm, next.particleSizeHighUm, 'input.particleSizeLowUm');
    ordered(next.meshLow, next.meshHigh, 'input.meshLow');
    const others = await tx.sorbent.findMany({ where: { labId, id: { not: sorbent.id } }, select: { name: true } });
    if (others.some(({ name }) => name.toLowerCase() === named.name.toLowerCase())) {
      throw invalid('input.name', named.name, 'it is there already; a name of its own');
    }
    await tx.sorbent.update({ where: { id: sorbent.id }, data: { ...given, ...phase, ...named } });
    work.changed('Sorbent', sorbent.id, 'CHANGED');
    if (named.sorbentClass !== sorbent.sorbentClass) await classChanged(work, sorbent.id, named.sorbentClass);
    return { sorbentId: sorbent.id };
  });
}

export const resetPropertySaid = z.object({
  sorbent: said.name,
  name: z.enum(propertyNames, propertyNames.join(', ')),
  clientKey: said.clientKey,
});

/** Takes one number back to what the table of its class says. */
export function propertyReset(context: Context, input: z.output<typeof resetPropertySaid>) {
  return write(context, 'resetSorbentProperty', input, async (work) => {
    const sorbent = await sorbentOf(work, input.sorbent);
    const table = classProperties(sorbent.sorbentClass).find(({ name }) => name === input.name);
    if (!table) throw unknown('input.name', input.name, propertyNames.join(', '));
    const key = { sorbentId: sorbent.id, name: input.name };
    const create = { id: newId(), labId: work.labId, ...key, ...table };
    await work.tx.sorbentProperty.upsert({ where: { sorbentId_name: key }, create, update: table });
    work.changed('Sorbent', sorbent.id, 'CHANGED');
    await staleStock(work, { sorbentId: sorbent.id }, 'beginning');
    return { sorbentId: sorbent.id };
  });
}

// ------------------------------------------------------------------ a lot

export const setLotSaid = z.object({
  sorbent: said.name,
  lotNumber: said.name,
  newLotNumber: said.name.nullish(),
  supplier: said.name.nullish(),
  retestOn: z.date('an instant').nullish(),
  certificateWaterPercent: said.percent.max(90, 'at most 90 %').nullish(),
  certificateMaxWaterPercent: said.percent.max(90, 'at most 90 %').nullish(),
  certificateBasis: said.basis,
  note: z.string().trim().max(2000, 'at most 2000 signs').nullish(),
  clientKey: said.clientKey,
});

const fractionOf = (percent: number | null, basis: 'DRY' | 'AS_RECEIVED'): number | null => {
  if (percent === null) return null;
  return basis === 'DRY' ? percent / 100 : dryBasis(percent / 100);
};

/**
 * Puts right what is said of a lot; what is not given stays, what is given as null is emptied. Where stock came in by
 * the certificate, another water on it is another beginning: its arrival is corrected with it, on the timeline.
 */
export function lotMended(context: Context, input: z.output<typeof setLotSaid>) {
  return write(context, 'setLot', input, async (work) => {
    const { tx } = work;
    const sorbent = await sorbentOf(work, input.sorbent);
    const lot = await lotNamed(work, sorbent.id, input.lotNumber);
    const { newLotNumber, supplier, retestOn, note, certificateBasis: basis } = input;
    if (newLotNumber && newLotNumber !== lot.lotNumber && (await lotOf(work, sorbent.id, newLotNumber))) {
      throw invalid('input.newLotNumber', newLotNumber, 'this sorbent has a lot of that number; another number');
    }
    const supplierId = supplier ? (await supplierOf(work, supplier)).id : null;
    const water = input.certificateWaterPercent;
    const most = input.certificateMaxWaterPercent;
    const data = {
      ...(newLotNumber ? { lotNumber: newLotNumber } : {}),
      ...(supplier === undefined ? {} : { supplierId }),
      ...(retestOn === undefined ? {} : { retestOn }),
      ...(note === undefined ? {} : { note: note || null }),
      ...(water === undefined ? {} : { certificateWaterFraction: fractionOf(water, basis) }),
      ...(most === undefined ? {} : { certificateMaxWaterFraction: fractionOf(most, basis) }),
    };
    if (Object.keys(data).length === 0) throw missing('input', 'what is to be put right');
    const after = await tx.lot.update({ where: { id: lot.id }, data });
    const { certificateWaterFraction: stated, certificateMaxWaterFraction: allowed } = after;
    if (stated !== null && allowed !== null && stated > allowed + 1e-9) {
      throw invalid('input.certificateWaterPercent', water ?? most, 'at most the highest that the certificate allows');
    }
    work.changed('Lot', lot.id, 'CHANGED');
    const notes = await certificateRestated(work, lot, after);
    return { lotId: lot.id, notes };
  });
}
