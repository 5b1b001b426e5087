// Plates are prepared: all of a box where it stands, or some of it, which become a batch with a label of its own.
import { z } from 'zod';
import { airNow, roomNamed } from '../climate/service.ts';
import type { Context } from '../context.ts';
import type { Closure, Container } from '../database/generated/sqlite/client.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { inAir } from '../exposure/service.ts';
import { saltHumidity, saltTable } from '../science/salts.ts';
import {
  containerOf,
  directions,
  eventInput,
  frontEdges,
  happened,
  platesMoved,
  said,
  takePlatesSaid,
  type Recorded,
} from '../stock/service.ts';
import { write, type Work } from '../work.ts';

const batch = { ...eventInput, plates: said.plates, room: said.name.nullish(), closure: said.closure.nullish() };

export const prewashSaid = z.object({
  ...batch,
  solvent: z.string('which solvent').trim().min(1, 'which solvent').max(200, 'at most 200 signs'),
  direction: z.enum(directions, directions.join(' or ')).nullish(),
  fullLength: z.boolean().nullish(),
  frontEdge: z.enum(frontEdges, frontEdges.join(', ')).nullish(),
  isMobilePhase: z.boolean().nullish(),
  tankLoads: z.int('a whole number of loads').min(1, '1 load or more').max(1000, 'at most 1000 loads').nullish(),
  mlPerLoad: said.ml.nullish(),
  tankMinutes: said.minutes.max(1440, 'at most 1440 min').nullish(),
});

export const activateSaid = z.object({
  ...batch,
  temperatureC: said.celsius,
  minutes: said.minutes,
  vacuum: z.boolean().nullish(),
  oven: said.name.nullish(),
  waterFraction: said.waterFraction.nullish(),
});

export const equilibrateSaid = z.object({
  ...batch,
  salt: said.name.nullish(),
  inRoom: said.name.nullish(),
  humidityPercent: said.percent.nullish(),
  temperatureC: said.celsius.nullish(),
  hours: said.hours,
});

interface SaidBatch {
  label: string;
  plates: number | null;
  at?: Date | null | undefined;
  room?: string | null | undefined;
  closure?: Closure | null | undefined;
}

interface Apart {
  /** What the act happens to. */
  container: Container;
  made: Recorded | null;
  /** Where all of a box stands afterwards; undefined where nobody said. */
  after: { roomId: string; closure: Closure } | undefined;
}

/** Some plates go into a box of their own; all of them stay in theirs, which may stand elsewhere afterwards. */
async function setApart(work: Work, input: SaidBatch, closure: Closure, always: boolean): Promise<Apart> {
  const { label, plates, at, room } = input;
  const box = await containerOf(work, label);
  if (box.kind !== 'PLATE_BOX') throw invalid('input.label', label, 'the label of a plate box');
  const roomId = room ? (await roomNamed(work.tx, work.labId, room, 'input.room')).id : box.roomId;
  const there = box.plates ?? 0;
  if (plates === null || plates === there) {
    const says = always || input.room || input.closure;
    return { container: box, made: null, after: says ? { roomId, closure: input.closure ?? closure } : undefined };
  }
  const said = { label, plates, at: at ?? work.now, room, closure: input.closure ?? closure };
  const made = await platesMoved(work, takePlatesSaid.parse(said));
  if (!made.madeId) throw new Error('plates moved into nothing');
  return {
    container: await work.tx.container.findUniqueOrThrow({ where: { id: made.madeId } }),
    made,
    after: undefined,
  };
}

const both = (apart: Apart, recorded: Recorded, notes: string[] = []): Recorded => ({
  ...recorded,
  madeId: apart.made?.madeId ?? null,
  notes: [...(apart.made?.notes ?? []), ...recorded.notes, ...notes],
});

/** Pre-washed: from then on wet with solvent, open in the hood. */
export function prewashed(context: Context, input: z.output<typeof prewashSaid>): Promise<Recorded> {
  return write(context, 'prewashPlates', input, async (work) => {
    const apart = await setApart(work, input, 'OPEN', true);
    const { container, after } = apart;
    const { solvent, direction, frontEdge, isMobilePhase, tankLoads, mlPerLoad, tankMinutes, note } = input;
    const fullLength = input.fullLength ?? true;
    const said = { solvent, direction, fullLength, frontEdge, isMobilePhase, tankLoads, mlPerLoad, tankMinutes, after };
    return both(apart, await happened(work, { type: 'PRE_WASHED', container, at: input.at ?? work.now, note, said }));
  });
}

/** Activated in an oven; solvent-wet plates and temperatures above what they stand are refused. */
export function activated(context: Context, input: z.output<typeof activateSaid>): Promise<Recorded> {
  return write(context, 'activatePlates', input, async (work) => {
    const apart = await setApart(work, input, 'WELL_CLOSED', false);
    const { temperatureC, minutes, vacuum, oven, waterFraction, note } = input;
    const said = { temperatureC, minutes, vacuum, oven, waterFraction, after: apart.after };
    const at = input.at ?? work.now;
    return both(apart, await happened(work, { type: 'DRIED', container: apart.container, at, note, said }));
  });
}

/** The air that plates are equilibrated in: over a salt, in a room, or said. */
interface Over {
  humidityPercent: number;
  temperatureC: number;
  over: string | null;
}

const usualTemperatureC = 25;

export async function overWhat(
  context: Context,
  input: Pick<z.output<typeof equilibrateSaid>, 'salt' | 'inRoom' | 'humidityPercent' | 'temperatureC'>,
): Promise<Over> {
  const { salt, inRoom, humidityPercent } = input;
  const temperatureC = input.temperatureC ?? usualTemperatureC;
  if (salt) {
    const known = saltTable.find(({ name }) => name === salt.trim().toLowerCase());
    if (!known) throw unknown('input.salt', salt, `one of: ${saltTable.map(({ name }) => name).join(', ')}`);
    const humidity = saltHumidity(known.name, temperatureC);
    if (humidity === null) {
      throw invalid('input.temperatureC', temperatureC, `from ${known.fromC} to ${known.toC} °C over ${known.name}`);
    }
    return { humidityPercent: 100 * humidity, temperatureC, over: `saturated ${known.name}` };
  }
  if (inRoom) {
    const { database, lab } = context;
    const room = await roomNamed(database.read, lab.id, inRoom, 'input.inRoom');
    if (typeof humidityPercent === 'number') return { humidityPercent, temperatureC, over: `in ${room.name}` };
    const air = await airNow(context, room.id);
    if (!air)
      throw missing('input.humidityPercent', `relative humidity, %: nothing is known of the air of ${room.name}`);
    return { humidityPercent: air.humidityPercent, temperatureC: air.temperatureC, over: `in ${room.name}` };
  }
  if (typeof humidityPercent !== 'number')
    throw missing('input.salt', 'a saturated salt, a room, or a relative humidity');
  return { humidityPercent, temperatureC, over: null };
}

/** Minutes that a dry layer needs in that air, by the model; null where it cannot say. */
export async function minutesNeeded(context: Context, containerId: string, air: Over): Promise<number | null> {
  const { humidityPercent, temperatureC } = air;
  const found = await inAir(context, containerId, [{ temperatureC, humidity: humidityPercent / 100 }]);
  return found?.[0]?.minutesToEquilibrium ?? null;
}

/** Equilibrated: good from then on while the air stays there. Too short a time is kept, and marked. */
export async function equilibrated(context: Context, input: z.output<typeof equilibrateSaid>): Promise<Recorded> {
  const { database, lab } = context;
  const box = await containerOf({ tx: database.read, labId: lab.id }, input.label);
  const air = await overWhat(context, input);
  const needed = await minutesNeeded(context, box.id, air);
  return write(context, 'equilibratePlates', input, async (work) => {
    const apart = await setApart(work, input, 'WELL_CLOSED', false);
    const { hours, note } = input;
    const said = { ...air, hours, after: apart.after };
    const at = input.at ?? work.now;
    const recorded = await happened(work, { type: 'EQUILIBRATED', container: apart.container, at, note, said });
    const short = needed !== null && hours * 60 < needed;
    const why = `${Number(hours.toFixed(2))} h are less than the ${Math.ceil(needed ?? 0)} min that the model gives a dry layer: kept, but they may not be there yet`;
    return both(apart, recorded, short ? [why] : []);
  });
}
