// How much a retention spreads within a plate, between plates, boxes and users, and which of these the data can tell apart.
import { componentsOf, type Component } from './components.ts';
import type { Estimate } from './one-way.ts';

export interface Spot {
  readonly value: number;
  /** Name of the level by factor: { plate: 'P7', box: 'B2', user: 'IK' }. */
  readonly of: Readonly<Record<string, string>>;
}

/** Fewer plates than these show no shares; common practice wants more. */
export const fewestForShares = 20;

/** What can be told of a source of spread. */
export type Told =
  /** Surely a small part, or none. */
  | 'little'
  /** Surely there, and perhaps more than little. */
  | 'seen'
  /** Anything between: more data is needed. */
  | 'cannot tell'
  /** Too few plates. */
  | 'too few'
  /** All values have the same level. */
  | 'one level'
  /** The same values share a level here as of another factor. */
  | 'same as another';

export interface Source {
  readonly factor: string;
  readonly told: Told;
  readonly sameAs: string | null;
  readonly sd: Estimate | null;
  /** sd over the mean; null where the mean is nought. */
  readonly relative: Estimate | null;
  /** Of the whole variance; null below twenty plates. */
  readonly share: Estimate | null;
}

/** A share that lies below this with its whole interval is little. */
export const little = 0.1;

/** What the rest is called: the spots of a plate. */
export const withinPlate = 'within plate';

export interface Spread {
  readonly mean: number;
  readonly plates: number;
  readonly sources: readonly Source[];
}

/** Factors in the order in which they are asked for; `plate` must be among them. Null of too little to compare. */
export function spreadOf(spots: readonly Spot[], factors: readonly string[], confidence = 0.9): Spread | null {
  const levels = new Map(factors.map((factor) => [factor, levelsOf(spots, factor)]));
  const plates = new Set(spots.map(({ of }) => of['plate'])).size;
  const apart = new Map<string, { told: Told; sameAs: string | null }>();
  const kept: string[] = [];
  for (const factor of factors) {
    const own = levels.get(factor) ?? [];
    const count = new Set(own).size;
    // Levels are numbered as they appear, so that the same grouping gives the same numbers.
    const twin = kept.find((other) => levels.get(other)?.every((level, i) => level === own[i]));
    if (count < 2) apart.set(factor, { told: 'one level', sameAs: null });
    else if (count === spots.length) apart.set(factor, { told: 'same as another', sameAs: withinPlate });
    else if (twin !== undefined) apart.set(factor, { told: 'same as another', sameAs: twin });
    else kept.push(factor);
  }
  const found = componentsOf(
    { values: spots.map(({ value }) => value), factors: kept.map((factor) => levels.get(factor) ?? []) },
    confidence,
  );
  if (!found) return null;
  const source = (factor: string, component: Component): Source => ({
    factor,
    told: toldOf(component.share, plates >= fewestForShares),
    sameAs: null,
    sd: component.sd,
    relative: found.mean === 0 ? null : overMean(component.sd, Math.abs(found.mean)),
    share: plates >= fewestForShares ? component.share : null,
  });
  return {
    mean: found.mean,
    plates,
    sources: [
      ...factors.map((factor) => {
        const why = apart.get(factor);
        return why
          ? { factor, ...why, sd: null, relative: null, share: null }
          : source(factor, found.factors[kept.indexOf(factor)]!);
      }),
      source(withinPlate, found.rest),
    ],
  };
}

/** From an interval of a share of the whole. */
export function toldOf({ low, high }: Pick<Estimate, 'low' | 'high'>, enough: boolean): Told {
  if (!enough) return 'too few';
  if (high < little) return 'little';
  return low > 0 ? 'seen' : 'cannot tell';
}

const overMean = ({ value, low, high }: Estimate, mean: number): Estimate => ({
  value: value / mean,
  low: low / mean,
  high: high / mean,
});

function levelsOf(spots: readonly Spot[], factor: string): number[] {
  const numbers = new Map<string, number>();
  return spots.map(({ of }) => {
    const name = of[factor] ?? '';
    const number = numbers.get(name) ?? numbers.size;
    numbers.set(name, number);
    return number;
  });
}
