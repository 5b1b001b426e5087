// The GraphQL types of the stock, by name, so that other rooms can point at them and add fields to them.
import { builder } from '../builder.ts';
import type { Day } from '../database/day.ts';
import type {
  Container,
  Event,
  Hold,
  Lab,
  Lot,
  Person,
  Sorbent,
  Supplier,
  Vessel,
} from '../database/generated/sqlite/client.ts';

/** Drum, portion, plate box and column alike; `builder.interfaceField(ContainerRef, …)` adds a field to all four. */
export const ContainerRef = builder.interfaceRef<Container>('Container');
export const EventRef = builder.objectRef<Event>('Event');
export const SorbentRef = builder.objectRef<Sorbent>('Sorbent');
export const LotRef = builder.objectRef<Lot>('Lot');
export const SupplierRef = builder.objectRef<Supplier>('Supplier');
export const PersonRef = builder.objectRef<Person>('Person');
export const VesselRef = builder.objectRef<Vessel>('Vessel');
export const LabRef = builder.objectRef<Lab>('Lab');
export const DayRef = builder.objectRef<Day>('Day');
export const HoldRef = builder.objectRef<Hold>('Hold');

/** What a row points at must be there; the database's keys see to it. */
export function there<Row>(row: Row | null | undefined, what: string): Row {
  if (!row) throw new Error(`${what} is gone`);
  return row;
}
