// Oven care on its own timeline: what was checked, renewed or found broken; and hygrometers checked over a salt.
import { z } from 'zod';
import { roomNamed } from '../climate/service.ts';
import type { Context } from '../context.ts';
import type { OvenCare, OvenCareKind } from '../database/generated/sqlite/client.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { saltHumidity, saltTable } from '../science/salts.ts';
import { checkNotFuture, localId, said } from '../stock/service.ts';
import { newId, write, type Work } from '../work.ts';
import { usedOven } from './ovens.ts';

export const careKinds = [
  'TRUE_TEMPERATURE',
  'VACUUM_GAUGE',
  'PUMP_OIL',
  'COLD_TRAP',
  'BAKE_OUT',
  'OUT_OF_ORDER',
  'HYGROMETER',
] as const satisfies readonly OvenCareKind[];

const value = z.number('a number').min(0, '0 or more').max(1100, 'at most 1100');

export const careSaid = z.object({
  kind: z.enum(careKinds, careKinds.join(', ')),
  oven: z.string('the id of an oven').nullish(),
  room: said.name.nullish(),
  sensor: said.name.nullish(),
  at: said.at,
  until: said.at,
  setValue: value.nullish(),
  foundValue: value.nullish(),
  temperatureC: said.celsius.nullish(),
  salt: said.name.nullish(),
  note: said.text,
  clientKey: said.clientKey,
});

export const careBackSaid = z.object({ care: z.string('the id of what was noted'), clientKey: said.clientKey });

type Said = z.output<typeof careSaid>;
export type CareKept = { careId: string };

/** What has two figures, with how each is asked for. */
const figures: Partial<Record<OvenCareKind, [set: string, found: string]>> = {
  TRUE_TEMPERATURE: ['the temperature it was set to, °C', 'the true temperature found, °C'],
  VACUUM_GAUGE: ['what its gauge showed, mbar', 'what the reference gauge showed, mbar'],
};

/** Usual lab temperature, for a salt when nobody says. */
const usualC = 25;

async function hygrometer(work: Work, input: Said) {
  const { tx, labId } = work;
  if (!input.room) throw missing('input.room', 'the room in which the hygrometer stands');
  if (!input.sensor) throw missing('input.sensor', 'the name of the hygrometer');
  if (!input.salt) throw missing('input.salt', `the saturated salt: ${saltTable.map(({ name }) => name).join(', ')}`);
  if (typeof input.foundValue !== 'number') throw missing('input.foundValue', 'what it showed, % RH');
  const room = await roomNamed(tx, labId, input.room, 'input.room');
  const sensors = await tx.sensor.findMany({ where: { labId, roomId: room.id } });
  const wanted = input.sensor.toLowerCase();
  const sensor = sensors.find(({ name }) => name.toLowerCase() === wanted);
  if (!sensor) {
    throw unknown(
      'input.sensor',
      input.sensor,
      `one of: ${sensors.map(({ name }) => name).join(', ') || 'none there'}`,
    );
  }
  const salt = input.salt.toLowerCase();
  const known = saltTable.find(({ name }) => name === salt);
  if (!known) throw unknown('input.salt', input.salt, `one of: ${saltTable.map(({ name }) => name).join(', ')}`);
  const temperatureC = input.temperatureC ?? usualC;
  const humidity = saltHumidity(salt, temperatureC);
  if (humidity === null) {
    throw invalid('input.temperatureC', temperatureC, `${known.fromC} to ${known.toC} °C for ${salt}`);
  }
  if (input.foundValue > 100) throw invalid('input.foundValue', input.foundValue, 'relative humidity in %, 0 to 100');
  const setValue = Math.round(1000 * humidity) / 10;
  return { sensorId: sensor.id, salt, temperatureC, setValue, foundValue: input.foundValue };
}

async function ofOven(work: Work, input: Said) {
  if (!input.oven) throw missing('input.oven', 'the id of the oven');
  const { id: ovenId, kind } = await usedOven(work, input.oven);
  const asked = figures[input.kind];
  if (kind === 'AIR' && ['VACUUM_GAUGE', 'PUMP_OIL', 'COLD_TRAP'].includes(input.kind)) {
    throw invalid('input.kind', input.kind, 'care of an oven full of air: it has no pump');
  }
  if (asked && typeof input.setValue !== 'number') throw missing('input.setValue', asked[0]);
  if (asked && typeof input.foundValue !== 'number') throw missing('input.foundValue', asked[1]);
  return { ovenId, setValue: input.setValue ?? null, foundValue: input.foundValue ?? null };
}

export function careRecorded(context: Context, input: Said): Promise<CareKept> {
  return write(context, 'recordOvenCare', input, async (work) => {
    const { tx, labId } = work;
    const at = input.at ?? work.now;
    // Out of order and a bake-out may be announced; the rest has happened.
    const mayComeLater = input.kind === 'OUT_OF_ORDER' || input.kind === 'BAKE_OUT';
    if (!mayComeLater) checkNotFuture(at, work.now, 'input.at');
    const until = mayComeLater ? (input.until ?? null) : null;
    if (until && until <= at) throw invalid('input.until', until.toISOString(), `after ${at.toISOString()}`);
    const about = input.kind === 'HYGROMETER' ? await hygrometer(work, input) : await ofOven(work, input);
    const careId = newId();
    const row = { id: careId, labId, kind: input.kind, at, until, note: input.note, actorId: work.actorId };
    await tx.ovenCare.create({ data: { ...row, ...about, madeAt: work.now } });
    work.changed('OvenCare', careId, 'MADE');
    return { careId };
  });
}

async function careOf({ tx, labId }: Work, said: string): Promise<OvenCare> {
  const found = await tx.ovenCare.findFirst({ where: { id: localId('OvenCare', said, 'input.care'), labId } });
  if (!found) throw unknown('input.care', said, 'the id of something noted of an oven of this lab');
  return found;
}

/** Takes a note back, or lets it count again. */
export function careTakenBack(
  context: Context,
  input: z.output<typeof careBackSaid>,
  back: boolean,
): Promise<CareKept> {
  return write(context, back ? 'takeOvenCareBack' : 'restoreOvenCare', input, async (work) => {
    const { id } = await careOf(work, input.care);
    await work.tx.ovenCare.update({ where: { id }, data: { takenBackAt: back ? work.now : null } });
    work.changed('OvenCare', id, 'CHANGED');
    return { careId: id };
  });
}

export const endSaid = z.object({ care: z.string('the id of what was noted'), at: said.at, clientKey: said.clientKey });

/** It works again: what was out of order ends. */
export function careEnded(context: Context, input: z.output<typeof endSaid>): Promise<CareKept> {
  return write(context, 'endOvenCare', input, async (work) => {
    const { id, at, kind } = await careOf(work, input.care);
    const until = input.at ?? work.now;
    if (kind !== 'OUT_OF_ORDER' && kind !== 'BAKE_OUT') {
      throw invalid('input.care', input.care, 'something that lasts: out of order, or a bake-out');
    }
    if (until <= at) throw invalid('input.at', until.toISOString(), `after it began, ${at.toISOString()}`);
    await work.tx.ovenCare.update({ where: { id }, data: { until } });
    work.changed('OvenCare', id, 'CHANGED');
    return { careId: id };
  });
}

const signed = (value: number): string => `${value < 0 ? '−' : '+'}${Math.abs(Math.round(10 * value) / 10)}`;

/** Found less what it should be, °C, mbar or % RH; null where there is no figure. */
export const offsetOf = ({ setValue, foundValue }: Pick<OvenCare, 'setValue' | 'foundValue'>): number | null =>
  setValue === null || foundValue === null ? null : foundValue - setValue;

/** What was noted, in one sentence. */
export function careSentence(care: OvenCare): string {
  const { kind, setValue, foundValue, salt, temperatureC } = care;
  const off = signed(offsetOf(care) ?? 0);
  switch (kind) {
    case 'TRUE_TEMPERATURE':
      return `Set to ${setValue} °C it is truly ${foundValue} °C (${off} °C)`;
    case 'VACUUM_GAUGE':
      return `Its gauge showed ${setValue} mbar at a true ${foundValue} mbar`;
    case 'PUMP_OIL':
      return 'The oil of its pump was changed';
    case 'COLD_TRAP':
      return 'Its cold trap was emptied';
    case 'BAKE_OUT':
      return 'It was baked out empty';
    case 'OUT_OF_ORDER':
      return 'It is out of order';
    case 'HYGROMETER':
      return `Over saturated ${salt} at ${temperatureC} °C it showed ${foundValue} % for ${setValue} % (${off} %)`;
  }
}
