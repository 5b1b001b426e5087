// A column planned for the lab: a sorbent by name, a size or a sample, and what follows.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { missing } from '../errors.ts';
import { bulkDensityName, said, sorbentOf } from '../stock/service.ts';
import { planOf, sizingOf, type Plan } from './rules.ts';

export { sizingOf, type Plan, type Sizing } from './rules.ts';

const sampleMg = z.number('mg').positive('more than 0 mg').max(1e6, 'at most 1000000 mg');
const deltaRf = z.number('ΔRf').positive('more than 0').max(1, 'at most 1');

export const sizingSaid = z.object({ sampleMg, deltaRf });

export const planSaid = z.object({
  sorbent: said.name,
  innerDiameterMm: said.mm.max(1000, 'at most 1000 mm').nullish(),
  bedLengthMm: said.mm.nullish(),
  sampleMg: sampleMg.nullish(),
  deltaRf: deltaRf.nullish(),
  columnVolumes: said.columnVolumes.positive('more than 0').nullish(),
  flowMlPerMin: said.ml.nullish(),
});

/** By its size, or sized for a sample and its ΔRf. */
function sizeOf(asked: z.output<typeof planSaid>) {
  const { innerDiameterMm, bedLengthMm, sampleMg, deltaRf } = asked;
  if (innerDiameterMm && bedLengthMm) return { innerDiameterMm, bedLengthMm, eluentMl: null, fractionMl: null };
  if (innerDiameterMm) throw missing('bedLengthMm', 'the length of the bed, mm');
  if (!sampleMg) {
    throw missing('innerDiameterMm', 'the inner diameter and bed length in mm, or a sample in mg with its ΔRf');
  }
  if (!deltaRf) throw missing('deltaRf', 'how far apart the spots lie, in Rf');
  const { diameterMm, eluentMl, fractionMl, bedLengthMm: usual } = sizingOf(sampleMg, deltaRf);
  return { innerDiameterMm: diameterMm, bedLengthMm: bedLengthMm ?? usual, eluentMl, fractionMl };
}

export async function columnPlan(context: Context, asked: z.output<typeof planSaid>): Promise<Plan> {
  const { database, lab } = context;
  const sorbent = await sorbentOf({ tx: database.read, labId: lab.id }, asked.sorbent, 'sorbent');
  const where = { sorbentId_name: { sorbentId: sorbent.id, name: bulkDensityName } };
  const density = await database.read.sorbentProperty.findUnique({ where });
  return planOf({
    ...sizeOf(asked),
    sorbentClass: sorbent.sorbentClass,
    bulkDensityKgPerM3: density?.value ?? null,
    columnVolumes: asked.columnVolumes ?? null,
    flowMlPerMin: asked.flowMlPerMin ?? null,
  });
}
