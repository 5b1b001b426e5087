// Suppliers' barcodes: what a code is was said once; from then on coming in is one scan.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { missing, unknown } from '../errors.ts';
import { newId, write } from '../work.ts';
import { sorbentOf, supplierOf, vesselOf } from './find.ts';
import { barcodeText } from './gs1.ts';
import { said } from './said.ts';

const code = z
  .string('what the barcode says')
  .max(500, 'at most 500 signs')
  .refine((text) => text.trim().length >= 3, 'what the barcode says, 3 signs at least');

export const learnSaid = z.object({
  code,
  sorbent: said.name,
  supplier: said.name.nullish(),
  kind: z.enum(['DRUM', 'PORTION', 'PLATE_BOX'], 'DRUM, PORTION or PLATE_BOX'),
  grams: said.grams,
  plates: said.plates,
  vessel: said.name.nullish(),
  backing: z.enum(['GLASS', 'ALUMINIUM', 'PLASTIC'], 'GLASS, ALUMINIUM or PLASTIC').nullish(),
  closure: said.closure.nullish(),
  clientKey: said.clientKey,
});

export const forgetSaid = z.object({ code, clientKey: said.clientKey });

/** Learns a code, or learns it anew when it was wrong. */
export function barcodeLearned(context: Context, input: z.output<typeof learnSaid>) {
  return write(context, 'learnBarcode', input, async (work) => {
    const { tx, labId, now } = work;
    const isPlates = input.kind === 'PLATE_BOX';
    if (isPlates && input.plates === null) throw missing('input.plates', 'the number of plates in each box');
    if (!isPlates && input.grams === null) throw missing('input.grams', 'the grams in each, as received');
    const data = {
      sorbentId: (await sorbentOf(work, input.sorbent)).id,
      supplierId: input.supplier ? (await supplierOf(work, input.supplier)).id : null,
      kind: input.kind,
      grams: isPlates ? null : input.grams,
      plates: isPlates ? input.plates : null,
      vesselId: input.vessel && !isPlates ? (await vesselOf(work, input.vessel, 'input.vessel')).id : null,
      backing: isPlates ? (input.backing ?? null) : null,
      closure: input.closure ?? null,
      learnedAt: now,
    };
    const key = { labId, code: barcodeText(input.code, now).code };
    const before = await tx.barcode.findUnique({ where: { labId_code: key } });
    const { id } = await tx.barcode.upsert({
      where: { labId_code: key },
      create: { id: newId(), ...key, ...data },
      update: data,
    });
    work.changed('Barcode', id, before ? 'CHANGED' : 'MADE');
    return { barcodeId: id };
  });
}

/** Forgets a code; what came in under it stays as it is. */
export function barcodeForgotten(context: Context, input: z.output<typeof forgetSaid>) {
  return write(context, 'forgetBarcode', input, async (work) => {
    const { tx, labId, now } = work;
    const key = { labId, code: barcodeText(input.code, now).code };
    const before = await tx.barcode.findUnique({ where: { labId_code: key } });
    if (!before) throw unknown('input.code', key.code, 'a barcode that was learned');
    await tx.barcode.delete({ where: { id: before.id } });
    work.changed('Barcode', before.id, 'GONE');
    return { code: before.code };
  });
}
