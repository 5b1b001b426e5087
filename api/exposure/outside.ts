// A layer taken out into a room's air: how long until it passes its limit, and how long until it has the air's humidity.
import type { Context } from '../context.ts';
import { evenDay } from '../science/blocks.ts';
import { roomAir, type AirDay } from '../science/climate.ts';
import { scoopDepthM } from '../science/events.ts';
import { courseOf } from '../science/exposure.ts';
import { hoursToLeave, minutesToEquilibrium } from '../science/outlook.ts';
import { foldInputAt } from './water.ts';

/** Air that stays as it is; humidity 0 to 1. */
export interface EvenAir {
  temperatureC: number;
  humidity: number;
}

export interface InAir {
  /** Minutes open in that air until the layer leaves its band; 0 when it has, null when it does not. */
  minutesToLimit: number | null;
  /** Minutes that a dry layer needs to lack no more than a twentieth of that air's humidity; null when a day is not enough. */
  minutesToEquilibrium: number | null;
}

function dayOf({ temperatureC, humidity }: EvenAir): AirDay {
  const { typical } = roomAir([], evenDay(temperatureC, humidity));
  if (!typical) throw new Error('an even day is a day');
  return typical;
}

/** Null where nothing can be estimated of the container, or it is wet with solvent. */
export async function inAir(context: Context, containerId: string, airs: readonly EvenAir[]): Promise<InAir[] | null> {
  const { database, lab } = context;
  const found = await foldInputAt(database, lab, containerId, context.now().getTime());
  if (!found) return null;
  const { spec, target, factors } = found.input;
  const { condition } = courseOf(found.input);
  const known = condition.startKnown && condition.airKnown && !condition.wetted;
  return airs.map((air) => {
    const day = dayOf(air);
    const hours = known
      ? hoursToLeave(condition, spec, scoopDepthM(spec, condition), 'open', day, target, factors)
      : null;
    return {
      minutesToLimit: hours === null ? null : 60 * hours,
      minutesToEquilibrium: minutesToEquilibrium(condition, spec, day, factors),
    };
  });
}
