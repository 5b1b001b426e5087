// The lab's ovens: added, changed, removed and put back.
import { z } from 'zod';
import { roomNamed } from '../climate/service.ts';
import type { Context } from '../context.ts';
import { Prisma, type Oven } from '../database/generated/sqlite/client.ts';
import { invalid, unknown } from '../errors.ts';
import { localId, said } from '../stock/service.ts';
import { newId, write, type Transaction, type Work } from '../work.ts';
import { checkHours, type OpenHours } from './rules.ts';

/** The planner tells ovens apart by the bits of a word. */
const mostOvens = 30;

const id = z.string('the id of an oven');
const hours = z
  .array(z.object({ days: z.array(z.int('Monday 1 to Sunday 7')), from: z.string(), to: z.string() }), 'hours')
  .max(14, 'at most 14 spans');
const perC = z.number('minutes per °C').min(0, '0 or more').max(60, 'at most 60 min per °C');
const celsius = z.number('°C').min(20, '20 °C or more').max(600, 'at most 600 °C');

const given = {
  kind: z.enum(['AIR', 'VACUUM'], 'AIR or VACUUM'),
  room: said.name,
  shelves: z.int('a whole number of shelves').min(1, '1 shelf or more').max(50, 'at most 50 shelves'),
  shelfAreaCm2: z.number('cm²').min(10, '10 cm² or more').max(100_000, 'at most 100000 cm²'),
  shelfHeightMm: z.number('mm').min(10, '10 mm or more').max(2000, 'at most 2000 mm'),
  lowestC: celsius,
  highestC: celsius,
};

const optional = {
  hasFan: z.boolean().nullish(),
  heatMinutesPerC: perC.nullish(),
  coolMinutesPerC: perC.nullish(),
  doorMinutes: z.int('whole minutes').min(0, '0 min or more').max(120, 'at most 120 min').nullish(),
  pressureMbar: z.number('mbar').min(0.001, '0.001 mbar or more').max(1100, 'at most 1100 mbar').nullish(),
  waterMbar: z.number('mbar').min(0, '0 mbar or more').max(100, 'at most 100 mbar').nullish(),
  pumpM3PerH: z.number('m³/h').positive('more than 0 m³/h').max(1000, 'at most 1000 m³/h').nullish(),
  isUnattended: z.boolean().nullish(),
  hours: hours.nullish(),
  clientKey: said.clientKey,
};

export const addOvenSaid = z.object({ name: said.name.max(60, 'at most 60 signs'), ...given, ...optional });
export const setOvenSaid = z.object({
  oven: id,
  name: said.name.max(60, 'at most 60 signs').nullish(),
  kind: given.kind.nullish(),
  room: said.name.nullish(),
  shelves: given.shelves.nullish(),
  shelfAreaCm2: given.shelfAreaCm2.nullish(),
  shelfHeightMm: given.shelfHeightMm.nullish(),
  lowestC: celsius.nullish(),
  highestC: celsius.nullish(),
  ...optional,
});
export const ovenSaid = z.object({ oven: id, clientKey: said.clientKey });

export type OvenKept = { ovenId: string };

/** Where nobody measured: invented defaults of a bench oven. */
const usual = { heatMinutesPerC: 0.5, coolMinutesPerC: 1, doorMinutes: 5 };

export async function ovenOf(
  { tx, labId }: Pick<Work, 'tx' | 'labId'>,
  said: string,
  path = 'input.oven',
): Promise<Oven> {
  const found = await tx.oven.findFirst({ where: { id: localId('Oven', said, path), labId } });
  if (!found) throw unknown(path, said, 'the id of an oven of this lab');
  return found;
}

/** One that is there still. */
export async function usedOven(work: Pick<Work, 'tx' | 'labId'>, said: string, path = 'input.oven'): Promise<Oven> {
  const oven = await ovenOf(work, said, path);
  if (oven.removedAt) throw invalid(path, said, 'it was removed; an oven that is there');
  return oven;
}

const used = (tx: Pick<Transaction, 'oven'>, labId: string) => tx.oven.findMany({ where: { labId, removedAt: null } });

async function checkName({ tx, labId }: Work, name: string, but: string | null): Promise<void> {
  const taken = (await used(tx, labId)).some(
    (oven) => oven.id !== but && oven.name.toLowerCase() === name.toLowerCase(),
  );
  if (taken) throw invalid('input.name', name, 'there is an oven of that name; another name');
}

function checkWhole(oven: Pick<Oven, 'lowestC' | 'highestC' | 'kind' | 'pressureMbar'>): void {
  const { lowestC, highestC, kind, pressureMbar } = oven;
  if (lowestC >= highestC) throw invalid('input.lowestC', lowestC, `below its highest, ${highestC} °C`);
  if (kind === 'AIR' && pressureMbar !== null && pressureMbar < 900) {
    throw invalid('input.pressureMbar', pressureMbar, 'none for an oven full of air; or kind VACUUM');
  }
}

const hoursKept = (some: OpenHours[] | null | undefined) => {
  if (!some) return Prisma.DbNull;
  checkHours(some, 'input.hours');
  return some as unknown as Prisma.InputJsonValue;
};

export function ovenAdded(context: Context, input: z.output<typeof addOvenSaid>): Promise<OvenKept> {
  return write(context, 'addOven', input, async (work) => {
    const { tx, labId } = work;
    const { clientKey: _, room, hours: open, ...rest } = input;
    await checkName(work, input.name, null);
    if ((await used(tx, labId)).length >= mostOvens) {
      throw invalid('input.name', input.name, `at most ${mostOvens} ovens; remove one first`);
    }
    const { id: roomId } = await roomNamed(tx, labId, room, 'input.room');
    const oven = {
      ...rest,
      roomId,
      hasFan: rest.hasFan ?? false,
      heatMinutesPerC: rest.heatMinutesPerC ?? usual.heatMinutesPerC,
      coolMinutesPerC: rest.coolMinutesPerC ?? usual.coolMinutesPerC,
      doorMinutes: rest.doorMinutes ?? usual.doorMinutes,
      pressureMbar: rest.pressureMbar ?? null,
      waterMbar: rest.waterMbar ?? null,
      pumpM3PerH: rest.pumpM3PerH ?? null,
      isUnattended: rest.isUnattended ?? true,
    };
    checkWhole(oven);
    const ovenId = newId();
    await tx.oven.create({ data: { id: ovenId, labId, ...oven, hours: hoursKept(open), addedAt: work.now } });
    work.changed('Oven', ovenId, 'MADE');
    return { ovenId };
  });
}

/** What may be null there; of the others null says nothing. */
const nullable = ['pressureMbar', 'waterMbar', 'pumpM3PerH'] as const;

export function ovenSet(context: Context, input: z.output<typeof setOvenSaid>): Promise<OvenKept> {
  return write(context, 'setOven', input, async (work) => {
    const { tx, labId } = work;
    const before = await usedOven(work, input.oven);
    const { clientKey: _, oven: __, room, hours: open, ...rest } = input;
    const may: ReadonlySet<string> = new Set(nullable);
    const changes = Object.fromEntries(
      Object.entries(rest).filter(([key, value]) => value !== undefined && (value !== null || may.has(key))),
    );
    if (input.name) await checkName(work, input.name, before.id);
    checkWhole({ ...before, ...changes });
    const roomId = room ? (await roomNamed(tx, labId, room, 'input.room')).id : before.roomId;
    const kept = open === undefined ? {} : { hours: hoursKept(open) };
    await tx.oven.update({ where: { id: before.id }, data: { ...changes, roomId, ...kept } });
    work.changed('Oven', before.id, 'CHANGED');
    return { ovenId: before.id };
  });
}

/** Takes an oven out of use; its runs and care stay. One with something in it is refused. */
export function ovenRemoved(context: Context, input: z.output<typeof ovenSaid>): Promise<OvenKept> {
  return write(context, 'removeOven', input, async (work) => {
    const oven = await ovenOf(work, input.oven);
    const inIt = await work.tx.dryingRun.count({ where: { ovenId: oven.id, state: 'IN_OVEN' } });
    if (inIt > 0) throw invalid('input.oven', input.oven, 'something is in it; an empty oven');
    if (!oven.removedAt) {
      await work.tx.oven.update({ where: { id: oven.id }, data: { removedAt: work.now } });
      await work.tx.dryingRun.updateMany({ where: { ovenId: oven.id, state: 'PLANNED' }, data: { isPinned: false } });
      work.changed('Oven', oven.id, 'CHANGED');
    }
    return { ovenId: oven.id };
  });
}

/** Puts a removed oven back into use. */
export function ovenRestored(context: Context, input: z.output<typeof ovenSaid>): Promise<OvenKept> {
  return write(context, 'restoreOven', input, async (work) => {
    const oven = await ovenOf(work, input.oven);
    if (oven.removedAt) {
      await checkName(work, oven.name, oven.id);
      await work.tx.oven.update({ where: { id: oven.id }, data: { removedAt: null } });
      work.changed('Oven', oven.id, 'CHANGED');
    }
    return { ovenId: oven.id };
  });
}
