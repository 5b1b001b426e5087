// Stock comes in: a lot, whole or in part, with any number of containers, all or nothing.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { Lot, Sorbent } from '../database/generated/sqlite/client.ts';
import { missing } from '../errors.ts';
import { newId, write, type Work } from '../work.ts';
import { lotOf, roomOf, sorbentOf, supplierOf } from './find.ts';
import { happened } from './happen.ts';
import { madeContainer, plateShape, platesSaid, shapeSaid, vesselShape } from './made.ts';
import { checkNotFuture } from './record.ts';
import { said } from './said.ts';
import { certificateWater, dryBasis } from './water.ts';
import { percent } from './words.ts';

/** So many containers that are alike may come in at once. */
export const mostAlike = 200;

const containerSaid = z.object({
  kind: z.enum(['DRUM', 'PORTION', 'PLATE_BOX'], 'DRUM, PORTION or PLATE_BOX; a column is packed'),
  room: said.name,
  count: z
    .int('a whole number')
    .min(1, '1 or more')
    .max(mostAlike, `at most ${mostAlike} alike`)
    .nullish()
    .transform((count) => count ?? 1),
  grams: said.grams,
  basis: said.basis,
  plates: said.plates,
  startWaterFraction: said.waterFraction.nullish(),
  closure: said.closure.nullish(),
  ...shapeSaid,
  ...platesSaid.shape,
});

export const receiveSaid = z.object({
  sorbent: said.name,
  supplier: said.name.nullish(),
  lotNumber: said.name,
  receivedAt: z.date('an instant').nullish(),
  retestOn: z.date('an instant').nullish(),
  certificateWaterPercent: said.percent.max(90, 'at most 90 %').nullish(),
  certificateMaxWaterPercent: said.percent.max(90, 'at most 90 %').nullish(),
  certificateBasis: said.basis,
  certificate: z
    .array(z.object({ name: said.name, value: z.number('a number'), unit: z.string().max(40, 'at most 40 signs') }))
    .max(100, 'at most 100 values')
    .nullish(),
  targetPolicy: z.enum(['DRY', 'AS_RECEIVED', 'SET'], 'DRY, AS_RECEIVED or SET').nullish(),
  targetUpperWaterFraction: said.waterFraction.nullish(),
  targetLowerWaterFraction: said.waterFraction.nullish(),
  note: said.text,
  containers: z.array(containerSaid).min(1, 'at least one container').max(200, 'at most 200 in one list'),
  clientKey: said.clientKey,
});

export type Received = { lotId: string; containerIds: string[]; notes: string[] };
type Said = z.output<typeof receiveSaid>;
type SaidContainer = z.output<typeof containerSaid>;

const onDryBasis = (value: number | null | undefined, basis: Said['certificateBasis']): number | null => {
  if (value === null || value === undefined) return null;
  return basis === 'DRY' ? value / 100 : dryBasis(value / 100);
};

/** The lot, made unless a part of it came before; what a second certificate says otherwise is noted. */
async function lotReceived(
  work: Work,
  input: Said,
  sorbent: Sorbent,
  at: Date,
): Promise<{ lot: Lot; notes: string[] }> {
  const certificateWaterFraction = onDryBasis(input.certificateWaterPercent, input.certificateBasis);
  const certificateMaxWaterFraction = onDryBasis(input.certificateMaxWaterPercent, input.certificateBasis);
  const before = await lotOf(work, sorbent.id, input.lotNumber);
  if (before) {
    const notes = [`lot ${before.lotNumber} was there already: more of it came in`];
    const known = before.certificateWaterFraction;
    if (certificateWaterFraction !== null && known !== null && Math.abs(certificateWaterFraction - known) > 1e-6) {
      notes.push(
        `its certificate said ${percent(known)} water (dry basis) before, and says ${percent(certificateWaterFraction)} now; the first is kept for the lot`,
      );
    }
    return { lot: before, notes };
  }
  const supplierId = input.supplier ? (await supplierOf(work, input.supplier)).id : null;
  const lot = await work.tx.lot.create({
    data: {
      id: newId(),
      labId: work.labId,
      sorbentId: sorbent.id,
      supplierId,
      lotNumber: input.lotNumber,
      receivedAt: at,
      retestOn: input.retestOn ?? null,
      certificateWaterFraction,
      certificateMaxWaterFraction,
      certificate: input.certificate ?? [],
      targetPolicy: input.targetPolicy ?? null,
      targetUpperWaterFraction: input.targetUpperWaterFraction ?? null,
      targetLowerWaterFraction: input.targetLowerWaterFraction ?? null,
      note: input.note,
    },
  });
  work.changed('Lot', lot.id, 'MADE');
  return { lot, notes: [] };
}

function checkAmount(container: SaidContainer, path: string): void {
  if (container.kind === 'PLATE_BOX' && container.plates === null)
    throw missing(`${path}.plates`, 'the number of plates');
  if (container.kind !== 'PLATE_BOX' && container.grams === null)
    throw missing(`${path}.grams`, 'the grams it came with');
}

async function containersReceived(
  work: Work,
  lot: Lot,
  of: SaidContainer,
  at: Date,
  path: string,
): Promise<{ ids: string[]; notes: string[] }> {
  checkAmount(of, path);
  const { id: roomId } = await roomOf(work, of.room, `${path}.room`);
  const shape = of.kind === 'PLATE_BOX' ? plateShape(of) : await vesselShape(work, of, path);
  const closure = of.closure ?? 'SEALED';
  const usualClosure = of.usualClosure ?? 'WELL_CLOSED';
  const certificate = certificateWater(lot);
  const fromCertificate = of.kind !== 'PLATE_BOX' && !certificate.assumed ? certificate.waterFraction : null;
  const startWaterFraction = of.startWaterFraction ?? fromCertificate;
  const startWaterFrom =
    typeof of.startWaterFraction === 'number' ? 'GIVEN' : fromCertificate === null ? 'NOWHERE' : 'CERTIFICATE';
  const { kind, grams, basis, plates } = of;
  const begin = { grams, basis, plates, roomId, closure, startWaterFraction, startWaterFrom } as const;
  const ids: string[] = [];
  const notes: string[] = [];
  for (let made = 0; made < of.count; made += 1) {
    const fresh = {
      kind,
      lotId: lot.id,
      takenFromId: null,
      shape,
      tareGrams: of.tareGrams,
      usualClosure,
      roomId,
      closure,
      at,
    };
    const container = await madeContainer(work, fresh);
    const said = { ...begin, bookedWaterFraction: certificate.waterFraction };
    notes.push(...(await happened(work, { type: 'CAME_IN', container, at, note: null, said })).notes);
    ids.push(container.id);
  }
  if (startWaterFraction === null && kind !== 'PLATE_BOX') {
    notes.push(
      `starting water unknown: dry grams are booked at ${percent(certificate.waterFraction)} (dry basis), assumed until weighed`,
    );
  }
  return { ids, notes };
}

/** Books a delivery within a larger act: the lot and all its containers. */
export async function cameIn(work: Work, input: Said): Promise<Received> {
  const at = input.receivedAt ?? work.now;
  checkNotFuture(at, work.now, 'input.receivedAt');
  const sorbent = await sorbentOf(work, input.sorbent);
  const { lot, notes } = await lotReceived(work, input, sorbent, at);
  const containerIds: string[] = [];
  for (const [index, of] of input.containers.entries()) {
    const { ids, notes: more } = await containersReceived(work, lot, of, at, `input.containers.${index}`);
    containerIds.push(...ids);
    notes.push(...more);
  }
  return { lotId: lot.id, containerIds, notes: [...new Set(notes)] };
}

/** Books a delivery: the lot and all its containers in one act. */
export const receivedLot = (context: Context, input: Said): Promise<Received> =>
  write(context, 'receiveLot', input, (work) => cameIn(work, input));
