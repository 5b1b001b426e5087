// Sorbents, suppliers and vessels that are made along with what came in, in one act.
import { newId, type Work } from '../work.ts';
import { classProperties } from './properties.ts';
import type { CommonVessel } from './vessels.ts';

/** A sorbent with the numbers of its class. */
export async function madeSorbent(work: Work, name: string, sorbentClass: string): Promise<string> {
  const { tx, labId } = work;
  const sorbentId = newId();
  await tx.sorbent.create({ data: { id: sorbentId, labId, name, sorbentClass } });
  const properties = classProperties(sorbentClass).map((one) => ({ id: newId(), labId, sorbentId, ...one }));
  await tx.sorbentProperty.createMany({ data: properties });
  work.changed('Sorbent', sorbentId, 'MADE');
  return sorbentId;
}

export async function madeSupplier(work: Work, name: string): Promise<string> {
  const { id } = await work.tx.supplier.create({ data: { id: newId(), labId: work.labId, name } });
  work.changed('Supplier', id, 'MADE');
  return id;
}

/** One of the common vessels, for a lab that does not list it yet. */
export async function madeVessel(work: Work, vessel: CommonVessel) {
  const made = await work.tx.vessel.create({ data: { id: newId(), labId: work.labId, ...vessel } });
  work.changed('Vessel', made.id, 'MADE');
  return made;
}
