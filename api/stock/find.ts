// Things by the names that people use for them: a label, a room's or a sorbent's name. Case does not matter.
import type { Container, Lot, Person, Room, Sorbent, Supplier, Vessel } from '../database/generated/sqlite/client.ts';
import { invalid, unknown } from '../errors.ts';
import type { Transaction } from '../work.ts';
import { labelMeant } from './label.ts';

interface Place {
  tx: Transaction;
  labId: string;
}

const few = 8;

/** The one whose name it is; refuses an unknown name with some that there are. */
export function named<Row extends { name: string }>(rows: Row[], name: string, path: string, what: string): Row {
  const wanted = name.trim().toLowerCase();
  const found = rows.find((row) => row.name.toLowerCase() === wanted);
  if (found) return found;
  const names = rows.map((row) => row.name).sort();
  const some = names.slice(0, few).join(', ') + (names.length > few ? ', …' : '');
  throw unknown(path, name, names.length === 0 ? `there is no ${what} yet; add one` : `one of: ${some}`);
}

export async function containerOf({ tx, labId }: Place, label: string, path = 'input.label'): Promise<Container> {
  const meant = labelMeant(label, path);
  const found = await tx.container.findUnique({ where: { labId_label: { labId, label: meant } } });
  if (!found) throw unknown(path, meant, 'the label of a container of this lab');
  if (found.isVoid) throw invalid(path, meant, 'it was taken back and never was; a container that is there');
  return found;
}

export async function roomOf({ tx, labId }: Place, name: string, path = 'input.room'): Promise<Room> {
  return named(await tx.room.findMany({ where: { labId } }), name, path, 'room');
}

export async function sorbentOf({ tx, labId }: Place, name: string, path = 'input.sorbent'): Promise<Sorbent> {
  return named(await tx.sorbent.findMany({ where: { labId } }), name, path, 'sorbent');
}

export async function supplierOf({ tx, labId }: Place, name: string, path = 'input.supplier'): Promise<Supplier> {
  return named(await tx.supplier.findMany({ where: { labId } }), name, path, 'supplier');
}

export async function vesselOf({ tx, labId }: Place, name: string, path: string): Promise<Vessel> {
  return named(await tx.vessel.findMany({ where: { labId } }), name, path, 'vessel');
}

/** One of the lab's people, by short name. */
export async function personOf({ tx, labId }: Place, shortName: string, path = 'input.by'): Promise<Person> {
  const people = await tx.person.findMany({ where: { labId } });
  const wanted = people.map((person) => ({ ...person, name: person.shortName }));
  return named(wanted, shortName, path, 'person');
}

export async function lotOf({ tx, labId }: Place, sorbentId: string, lotNumber: string): Promise<Lot | null> {
  return tx.lot.findUnique({ where: { labId_sorbentId_lotNumber: { labId, sorbentId, lotNumber } } });
}
