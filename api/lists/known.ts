// What the lab has already, as far as reading a list needs it.
import { commonVessels } from '../stock/service.ts';
import type { Transaction } from '../work.ts';
import type { Known } from './resolve.ts';

type Reader = Pick<Transaction, 'sorbent' | 'supplier' | 'room' | 'vessel' | 'lot' | 'container'>;

export async function knownOf(reader: Reader, lab: { id: string; timeZone: string }, now: Date): Promise<Known> {
  const where = { labId: lab.id };
  const named = { where, select: { name: true }, orderBy: { name: 'asc' } } as const;
  // One after the other: inside a transaction there is one connection.
  const sorbents = (await reader.sorbent.findMany(named)).map(({ name }) => name);
  const suppliers = (await reader.supplier.findMany(named)).map(({ name }) => name);
  const rooms = (await reader.room.findMany(named)).map(({ name }) => name);
  const own = await reader.vessel.findMany({ where, select: { name: true, volumeMl: true } });
  const names = new Set(own.map(({ name }) => name.toLowerCase()));
  const vessels = [...own, ...commonVessels.filter(({ name }) => !names.has(name.toLowerCase()))];
  const coded = await reader.container.findMany({
    where: { ...where, isVoid: false, oldCode: { not: null } },
    select: { oldCode: true, label: true },
  });
  const oldCodes = new Map(coded.map(({ oldCode, label }) => [(oldCode ?? '').toLowerCase(), label]));
  const there = await reader.lot.findMany({
    where,
    select: {
      lotNumber: true,
      sorbent: { select: { name: true } },
      _count: { select: { containers: { where: { isVoid: false } } } },
    },
  });
  const lots = new Map(
    there.map(({ lotNumber, sorbent, _count }) => [
      `${sorbent.name.toLowerCase()}\u2044${lotNumber.toLowerCase()}`,
      _count.containers,
    ]),
  );
  return { sorbents, suppliers, rooms, vessels, oldCodes, lots, now, timeZone: lab.timeZone };
}
