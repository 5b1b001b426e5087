// The lab's people, suppliers and vessels put right afterwards. Nothing that was recorded changes by it.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid, unknown } from '../errors.ts';
import { write, type Work } from '../work.ts';
import { supplierOf, vesselOf } from './find.ts';
import { said } from './said.ts';

const shortName = z.string('a short name').trim().min(1, 'a short name').max(40, 'at most 40 signs');

export const setPersonSaid = z.object({
  shortName,
  newShortName: shortName.nullish(),
  role: said.name.nullish(),
  clientKey: said.clientKey,
});

/** Another role or another short name for somebody; what they recorded stays theirs. */
export function personMended(context: Context, input: z.output<typeof setPersonSaid>) {
  return write(context, 'setPerson', input, async (work) => {
    const { tx, labId } = work;
    const people = await tx.person.findMany({ where: { labId }, orderBy: { shortName: 'asc' } });
    const person = people.find((one) => one.shortName === input.shortName);
    const names = people.map((one) => one.shortName).join(', ');
    if (!person) throw unknown('input.shortName', input.shortName, names ? `one of: ${names}` : 'add somebody first');
    const wanted = input.newShortName ?? person.shortName;
    if (people.some((one) => one.id !== person.id && one.shortName === wanted)) {
      throw invalid('input.newShortName', wanted, 'somebody has it already; a short name of their own');
    }
    await tx.person.update({ where: { id: person.id }, data: { shortName: wanted, role: input.role ?? person.role } });
    work.changed('Person', person.id, 'CHANGED');
    return { personId: person.id };
  });
}

export const setSupplierSaid = z.object({ supplier: said.name, name: said.name, clientKey: said.clientKey });

const free = (rows: readonly { id: string; name: string }[], id: string, name: string, path: string): void => {
  if (rows.some((row) => row.id !== id && row.name.toLowerCase() === name.toLowerCase())) {
    throw invalid(path, name, 'it is there already; a name of its own');
  }
};

export function supplierMended(context: Context, input: z.output<typeof setSupplierSaid>) {
  return write(context, 'setSupplier', input, async (work) => {
    const { tx, labId } = work;
    const supplier = await supplierOf(work, input.supplier);
    free(await tx.supplier.findMany({ where: { labId } }), supplier.id, input.name, 'input.name');
    await tx.supplier.update({ where: { id: supplier.id }, data: { name: input.name } });
    work.changed('Supplier', supplier.id, 'CHANGED');
    return { supplierId: supplier.id };
  });
}

export const setVesselSaid = z.object({
  vessel: said.name,
  name: said.name.nullish(),
  innerDiameterMm: said.mm.nullish(),
  heightMm: said.mm.nullish(),
  mouthDiameterMm: said.mm.nullish(),
  volumeMl: said.ml.nullish(),
  source: z.string().trim().max(500, 'at most 500 signs').nullish(),
  clientKey: said.clientKey,
});

type Sizes = { innerDiameterMm: number; heightMm: number; mouthDiameterMm: number; volumeMl: number };

/** No vessel holds more than twice what a cylinder of its inner sizes does. */
function checkVolume({ innerDiameterMm, heightMm, volumeMl }: Sizes): void {
  const cylinder = (Math.PI / 4) * innerDiameterMm ** 2 * heightMm * 1e-3;
  if (volumeMl > 2 * cylinder || volumeMl < cylinder / 10) {
    throw invalid(
      'input.volumeMl',
      volumeMl,
      `about ${cylinder.toPrecision(3)} mL, what a cylinder of these sizes holds`,
    );
  }
}

/** Puts a kind of vessel right. Containers keep the sizes they were made with: their estimates do not change by it. */
export function vesselMended(context: Context, input: z.output<typeof setVesselSaid>) {
  return write(context, 'setVessel', input, async (work: Work) => {
    const { tx, labId } = work;
    const vessel = await vesselOf(work, input.vessel, 'input.vessel');
    const name = input.name ?? vessel.name;
    free(await tx.vessel.findMany({ where: { labId } }), vessel.id, name, 'input.name');
    const sizes = {
      innerDiameterMm: input.innerDiameterMm ?? vessel.innerDiameterMm,
      heightMm: input.heightMm ?? vessel.heightMm,
      mouthDiameterMm: input.mouthDiameterMm ?? vessel.mouthDiameterMm,
      volumeMl: input.volumeMl ?? vessel.volumeMl,
    };
    checkVolume(sizes);
    await tx.vessel.update({
      where: { id: vessel.id },
      data: { name, ...sizes, source: input.source ?? vessel.source },
    });
    work.changed('Vessel', vessel.id, 'CHANGED');
    return { vesselId: vessel.id };
  });
}
