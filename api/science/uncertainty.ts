// How sure: log-normal factors on what is not known well, and the spread of a mean that follows from the responses to them.
import { topMean, type Bed } from './bed.ts';
import { bedCells } from './grid.ts';
import type { CapacityDoubt, Factors } from './history.ts';
import type { Spread } from './interval.ts';
import { activityAtWater } from './isotherm.ts';

/**
 * One sigma of each factor before anything is learned (of ln, but for `bias` and `filled`, which are of relative humidity).
 * Bed diffusion covers Bruggeman to Millington and Quirk; inflow the range of k and of the closure classes; bias is what
 * loggers state; `filled` is how far a day lies from the typical one in an unconditioned room (common practice).
 */
export const prior = {
  bed: 0.2,
  open: 0.3,
  closed: 0.25,
  container: 0.3,
  start: 0.3,
  nominalStart: 0.01,
  bias: 0.02,
  equilibrated: 0.02,
  filled: 0.08,
} as const;

/** What is held of every factor: learned values where there are any, the priors else. */
export interface Doubts {
  readonly capacity: CapacityDoubt;
  readonly factors: Factors;
  /** What it is held against moves with the capacity as well. */
  readonly capacityCancels?: boolean;
}

const learned = (factors: Factors, name: string) => factors.find(({ factor }) => factor === name);

/** e^ln of a factor, 1 when nothing was learned. */
export const factorOf = (factors: Factors, name: string): number => {
  const known = learned(factors, name);
  return known ? Math.exp(known.ln) : 1;
};

const sdOf = (factors: Factors, name: string, otherwise: number): number => learned(factors, name)?.sd ?? otherwise;

/** One sigma of ln(capacity) where the sorbent has this reference activity. */
export function capacitySd({ capacity, factors }: Doubts, activity: number): number {
  const { below, above, from, to } = capacity;
  const share = Math.min(1, Math.max(0, (activity - from) / (to - from)));
  const shape = below + (above - below) * share;
  return (sdOf(factors, 'capacity', below) * shape) / below;
}

/** A closure's row is named by the closure and by the container that wears it, since both are learned. */
export const closedRowName = (closure: string, key: string): string => `closed:${closure}/${key}`;
/** The humidity that somebody told of a salt or of the air it stood in: in doubt by itself, whatever the loggers read. */
export const saltRowName = (key: string): string => `salt:${key}`;
/** Humidities add to the water instead of multiplying it, and take no part in the capacity's identity. */
export const isHumidity = (row: string): boolean => row === 'bias' || row.startsWith('salt:');
export const startRowName = (key: string): string => `start:${key}`;

/**
 * Mean true water over the top `depthM` and its sigma. Capacity comes free: with water w̃ per unit of capacity f,
 * ∂w/∂ln f = f (w̃ - S_bed - Σ S_inflow - S_start), since a larger capacity only slows the same course.
 */
export function spreadOf(bed: Bed, depthM: number, doubts: Doubts, startSdLn: number, extraSdLn: number): Spread {
  const { factors } = doubts;
  const water = topMean(bed, bed.water, 0, depthM);
  let capacity = water;
  let variance = 0;
  let shift = 0;
  const add = (response: number, sd: number) => {
    variance += (response * sd) ** 2;
  };
  const closed: { closure: string; key: string; response: number }[] = [];
  for (const [row, name] of bed.rows.entries()) {
    const response = topMean(bed, bed.responses, row * bedCells, depthM);
    if (isHumidity(name)) {
      const sd = name === 'bias' ? sdOf(factors, 'bias', prior.bias) : prior.equilibrated;
      shift = Math.hypot(shift, response * sd);
      continue;
    }
    capacity -= response;
    if (name === 'bed') add(response, sdOf(factors, 'bed', prior.bed));
    else if (name === 'open') add(response, sdOf(factors, 'open', prior.open));
    else if (name.startsWith('start:')) add(response, startSdLn);
    else {
      const slash = name.indexOf('/');
      closed.push({ closure: name.slice(0, slash), key: name.slice(slash + 1), response });
    }
  }
  for (const closure of new Set(closed.map((part) => part.closure))) {
    add(sum(closed.filter((part) => part.closure === closure)), sdOf(factors, closure, prior.closed));
  }
  for (const key of new Set(closed.map((part) => part.key))) {
    add(sum(closed.filter((part) => part.key === key)), sdOf(factors, 'container', prior.container));
  }
  if (!doubts.capacityCancels) add(capacity, capacitySd(doubts, activityAtWater(bed.isotherm, water)));
  add(water, extraSdLn);
  return { water: bed.capacity * water, sd: bed.capacity * Math.sqrt(variance), shift: bed.capacity * shift };
}

const sum = (parts: readonly { response: number }[]): number =>
  parts.reduce((total, { response }) => total + response, 0);
