// How water answers to each factor, read from the responses that the bed carries along.
import { topMean } from '../bed.ts';
import type { Condition } from '../condition.ts';
import { bedCells } from '../grid.ts';
import type { CapacityDoubt, FoldInput } from '../history.ts';
import { activityAtWater } from '../isotherm.ts';
import { capacitySd, isHumidity, prior } from '../uncertainty.ts';
import { className, classSd, containerName, lotName, lotSd, priorSd, saltName, startName } from './factors.ts';

/** ∂(what is asked)/∂(factor), and one sigma of that factor before anything is learned. */
export interface Slope {
  readonly value: number;
  readonly sd: number;
}
export type Slopes = ReadonlyMap<string, Slope>;

export interface Answering {
  /** kg/kg, true. */
  readonly water: number;
  readonly slopes: Slopes;
  /** What the capacity at wetter places adds to the doubt about the factor of drier ones, one sigma, kg/kg. */
  readonly blur: number;
}

/** Of a container, what its slopes are named by. */
export interface Stock {
  readonly input: Pick<FoldInput, 'spec'>;
  readonly lot: string;
  readonly pool: string;
}

/** Mean water of the top `depthM` and its slopes. */
export function answering(stock: Stock, condition: Condition, depthM: number): Answering {
  const { input, lot, pool } = stock;
  const { sorbent } = input.spec;
  const { bed } = condition;
  const slopes = new Map<string, Slope>();
  const add = (name: string, value: number, sd: number) =>
    slopes.set(name, { value: value + (slopes.get(name)?.value ?? 0), sd });
  const unit = topMean(bed, bed.water, 0, depthM);
  const water = bed.capacity * unit;
  // ∂w/∂ln(capacity) comes free: w less every other response.
  let capacity = water;
  for (const [row, name] of bed.rows.entries()) {
    const value = bed.capacity * topMean(bed, bed.responses, row * bedCells, depthM);
    if (!isHumidity(name)) capacity -= value;
    if (name.startsWith('closed:')) {
      const slash = name.indexOf('/');
      const [closure, container] = [name.slice(0, slash), containerName(name.slice(slash + 1))];
      add(closure, value, priorSd(closure));
      add(container, value, priorSd(container));
    } else if (name.startsWith('start:')) {
      const of = name.slice('start:'.length);
      add(startName(of, condition.fillS ?? 'handed'), value, condition.startSdLn);
    } else if (name.startsWith('salt:')) {
      const of = name.slice('salt:'.length);
      add(saltName(of, condition.fillS ?? 'handed'), value, prior.equilibrated);
    } else add(name, value, priorSd(name));
  }
  add(className(pool), capacity, classSd(sorbent.doubt));
  add(lotName(lot), capacity, lotSd(sorbent.doubt));
  return { water, slopes, blur: Math.abs(capacity) * beyond(sorbent.doubt, activityAtWater(bed.isotherm, unit)) };
}

// The doubt grows where pores fill; only the part below them is the factor's own.
const beyond = (doubt: CapacityDoubt, activity: number): number =>
  Math.sqrt(Math.max(0, capacitySd({ capacity: doubt, factors: [] }, activity) ** 2 - doubt.below ** 2));
