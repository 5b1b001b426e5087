// What holds a tray back: heat that must get in or vapour that must get out.
import { secondsTo, type Figure } from './deepest.ts';
import type { Load } from './load.ts';

/** A tenth, over which the gain of time is measured. */
const better = 1.1;

export interface Limit {
  readonly by: 'heat' | 'vapour';
  /** Relative fall of the time for each relative gain of heat transfer, and of vapour transfer; about 1 together. */
  readonly heat: number;
  readonly vapour: number;
}

/** What would shorten the time to a target more; null when the target is not reached within `mostS`. */
export function limitOf(load: Load, target: number, of: Figure, mostS: number): Limit | null {
  const now = secondsTo(load, target, of, mostS);
  if (!(now > 0 && now < Infinity)) return null;
  const gain = (other: Load): number => Math.log(now / secondsTo(other, target, of, mostS)) / Math.log(better);
  const heat = gain(withHeat(load));
  const vapour = gain(withVapour(load));
  return { by: heat >= vapour ? 'heat' : 'vapour', heat, vapour };
}

function withHeat(load: Load): Load {
  const { exchange } = load.oven;
  return {
    ...load,
    conductivityWPerMK: load.conductivityWPerMK * better,
    oven: {
      ...load.oven,
      exchange: {
        ...exchange,
        topWPerM2K: exchange.topWPerM2K * better,
        emissivityTop: exchange.emissivityTop * better,
        bottomWPerM2K: exchange.bottomWPerM2K * better,
        emissivityBottom: exchange.emissivityBottom * better,
      },
    },
  };
}

function withVapour(load: Load): Load {
  const { path, oven } = load;
  const { pump, exchange } = oven;
  return {
    ...load,
    path: { ...path, free: path.free * better, knudsen: path.knudsen * better, viscous: path.viscous * better },
    oven: {
      ...oven,
      exchange: { ...exchange, filmM: exchange.filmM / better },
      pump: pump && { ...pump, speedM3PerS: pump.speedM3PerS * better },
    },
  };
}
