// A desiccant renewed, a dial read off: what is taken for granted of a room's air from then on, and taken back again.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { Room } from '../database/generated/sqlite/client.ts';
import { invalid, missing } from '../errors.ts';
import { write, type Work } from '../work.ts';
import { aheadMs, firstReadingMs } from './add-readings.ts';
import { type AssumedStep, lastRenewal, stepsOf, withStep } from './room-assumed.ts';
import { humidity, roomName, roomNamed, temperature } from './rooms.ts';
import { staleRoom } from './stale.ts';

const clientKey = z.string().nullish();
/** So many steps and no more are kept with a room: a renewal a week for ten years. */
const mostSteps = 500;

export const renewInput = z.object({
  room: roomName,
  at: z.date().nullish(),
  humidityPercent: humidity.nullish(),
  clientKey,
});

export const readOffInput = z.object({
  room: roomName,
  at: z.date().nullish(),
  humidityPercent: humidity,
  temperatureC: temperature.nullish(),
  clientKey,
});

export const takeBackAirInput = z.object({ room: roomName, from: z.date('an instant'), clientKey });

function checkedAt(at: Date, now: Date): Date {
  if (at.getTime() > now.getTime() + aheadMs)
    throw invalid('input.at', at.toISOString(), `not after now (${now.toISOString()})`);
  if (at.getTime() < firstReadingMs) throw invalid('input.at', at.toISOString(), 'a time since 1990');
  return at;
}

/** What was said of an earlier renewal before steps were kept stays known. */
function stepsKept(room: Room): AssumedStep[] {
  const steps = stepsOf(room.assumedAir);
  const before = room.desiccantRenewedAt?.getTime();
  if (before === undefined || steps.some(({ why, fromMs }) => why === 'RENEWED' && fromMs === before)) return steps;
  return withStep(steps, { fromMs: before, humidityPercent: null, temperatureC: null, why: 'RENEWED' });
}

async function stepped(context: Context, work: Work, room: Room, step: AssumedStep): Promise<{ roomId: string }> {
  const steps = withStep(stepsKept(room), step);
  if (steps.length > mostSteps) throw invalid('input.at', steps.length, `at most ${mostSteps} of them for one room`);
  const desiccantRenewedAt = lastRenewal(steps);
  await work.tx.room.update({ where: { id: room.id }, data: { assumedAir: steps, desiccantRenewedAt } });
  work.changed('Room', room.id, 'CHANGED');
  if (step.humidityPercent !== null) {
    await staleRoom(work, context.database.engine, room.id, new Date(step.fromMs));
  }
  return { roomId: room.id };
}

/** Notes a renewal; with a humidity, that is taken for granted from then on, wherever nothing is read. */
export function renewDesiccant(context: Context, input: z.output<typeof renewInput>): Promise<{ roomId: string }> {
  return write(context, 'renewDesiccant', input, async (work) => {
    const room = await roomNamed(work.tx, work.labId, input.room, 'input.room');
    if (room.kind !== 'DESICCATOR') throw invalid('input.room', room.name, 'a desiccator');
    const fromMs = checkedAt(input.at ?? work.now, work.now).getTime();
    const humidityPercent = input.humidityPercent ?? null;
    return stepped(context, work, room, { fromMs, humidityPercent, temperatureC: null, why: 'RENEWED' });
  });
}

/** What a dial without a memory showed: taken for granted from then on, until the next or until readings come. */
export function airReadOff(context: Context, input: z.output<typeof readOffInput>): Promise<{ roomId: string }> {
  return write(context, 'noteRoomAir', input, async (work) => {
    const room = await roomNamed(work.tx, work.labId, input.room, 'input.room');
    const fromMs = checkedAt(input.at ?? work.now, work.now).getTime();
    const { humidityPercent } = input;
    return stepped(context, work, room, {
      fromMs,
      humidityPercent,
      temperatureC: input.temperatureC ?? null,
      why: 'READ',
    });
  });
}

/** Takes back what was noted of one instant. */
export function airTakenBack(context: Context, input: z.output<typeof takeBackAirInput>): Promise<{ roomId: string }> {
  return write(context, 'takeRoomAirBack', input, async (work) => {
    const room = await roomNamed(work.tx, work.labId, input.room, 'input.room');
    const steps = stepsKept(room);
    const fromMs = input.from.getTime();
    const rest = steps.filter((step) => step.fromMs !== fromMs);
    if (rest.length === steps.length) {
      const some = steps.slice(-3).map((step) => new Date(step.fromMs).toISOString());
      if (some.length === 0) throw missing('input.from', 'nothing was noted of this room');
      throw invalid('input.from', input.from.toISOString(), `an instant that was noted, such as ${some.join(', ')}`);
    }
    const data = { assumedAir: rest, desiccantRenewedAt: lastRenewal(rest) };
    await work.tx.room.update({ where: { id: room.id }, data });
    work.changed('Room', room.id, 'CHANGED');
    await staleRoom(work, context.database.engine, room.id, input.from);
    return { roomId: room.id };
  });
}
