// The water that it starts from, the room's air that gives it, and the water it is to end with.
import { airNow, roomNamed } from '../climate/service.ts';
import type { Context } from '../context.ts';
import type { Container } from '../database/generated/sqlite/client.ts';
import type { Numbers } from '../exposure/service.ts';
import { referenceActivity } from '../science/air.ts';
import { sorbentClass } from '../science/properties.ts';
import { heldWater } from '../science/tray/isotherm.ts';
import type { Said } from './forecast-said.ts';
import type { DryingForecast } from './forecast-told.ts';
import type { Material } from './forecast-material.ts';

/** A target that leaves most of the way to the upper end for the shelf: a fifth of it (invented default). */
const targetShare = 0.2;

const usualTarget = 0.01;
/** Where nobody recorded a room: 22 °C, 53 % RH, which is the usual 14 mbar. */
const usualRoom = { temperatureC: 22, humidity: 0.53 };

export interface RoomAir {
  readonly temperatureC: number;
  readonly humidity: number;
  readonly known: boolean;
}

export async function roomOf(context: Context, room: string | null, container: Container | null): Promise<RoomAir> {
  const { database, lab } = context;
  const named = room ? await roomNamed(database.read, lab.id, room, 'room') : null;
  const roomId = named?.id ?? container?.roomId;
  const air = roomId ? await airNow(context, roomId) : null;
  if (!air || !(air.humidityPercent > 0)) return { ...usualRoom, known: false };
  return { temperatureC: air.temperatureC, humidity: Math.min(1, air.humidityPercent / 100), known: true };
}

export async function startOf(
  { load }: Context,
  { startWaterFraction }: Said,
  container: Container | null,
  numbers: Numbers,
  air: RoomAir,
): Promise<Pick<DryingForecast, 'startWaterFraction' | 'startFrom'>> {
  if (startWaterFraction != null) return { startWaterFraction, startFrom: 'GIVEN' };
  const exposure = container && (await load.exposure.load(container.id));
  const estimated = exposure?.meanWaterFraction ?? null;
  if (estimated !== null) return { startWaterFraction: estimated, startFrom: 'ESTIMATE' };
  const activity = referenceActivity(Math.min(0.95, air.humidity), air.temperatureC);
  return { startWaterFraction: heldWater(numbers.isotherm, activity), startFrom: 'ROOM_AIR' };
}

export const targetOf = ({ target }: Said, of: Material): number => target ?? usualTargetOf(of);

/** Water a drying is to come to where nobody said, kg/kg dry. */
export function usualTargetOf(of: Pick<Material, 'targetUpperWaterFraction' | 'sorbentClass'>): number {
  const upper = of.targetUpperWaterFraction ?? sorbentClass(of.sorbentClass)?.upperWaterFraction ?? null;
  return upper === null ? usualTarget : targetShare * upper;
}
