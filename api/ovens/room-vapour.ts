// Water vapour of the air that an oven draws from its room, as it is now.
import { airNow } from '../climate/service.ts';
import type { Context } from '../context.ts';
import { saturationPressurePa } from '../science/air.ts';

/** Null where nothing is known of the room's air. */
export async function roomVapourPa(context: Context, roomId: string): Promise<number | null> {
  const air = await airNow(context, roomId);
  if (!air || !(air.humidityPercent > 0)) return null;
  return (Math.min(100, air.humidityPercent) / 100) * saturationPressurePa(air.temperatureC);
}
