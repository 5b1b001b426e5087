// Variance components with their intervals, by the restricted likelihood: where it falls by less than what chance explains.
import { chiSquareQuantile } from '../distributions/continuous.ts';
import { rootBetween } from '../distributions/root.ts';
import { devianceOf, type Deviance, type Grouped } from './likelihood.ts';
import { minimumOf, type Minimum } from './minimum.ts';
import type { Estimate } from './one-way.ts';

export interface Component {
  /** Standard deviation, in the unit of the values. */
  readonly sd: Estimate;
  /** Of the whole variance. */
  readonly share: Estimate;
}

export interface Components {
  readonly mean: number;
  readonly deviance: number;
  /** One a factor, in their order. */
  readonly factors: readonly Component[];
  readonly rest: Component;
}

/** Ends of intervals, relative: more digits would say nothing. */
const precision = 1e-6;
/** A ratio below this is the search's way of saying none. */
const nothing = 1e-4;

/** Null when all values are the same or too few to speak of a spread. */
export function componentsOf(grouped: Grouped, confidence = 0.9): Components | null {
  const { values, factors } = grouped;
  if (values.length < 3 || values.every((value) => value === values[0])) return null;
  const deviance = devianceOf(grouped);
  const starts = [1, 0.25].map((ratio) =>
    minimumOf(
      deviance.relative,
      factors.map(() => ratio),
    ),
  );
  const best = starts.reduce((least, one) => (one.value < least.value ? one : least));
  const ratios = best.at.map((ratio) => (Math.abs(ratio) < nothing ? 0 : Math.abs(ratio)));
  const rest = deviance.rest(ratios);
  const whole = 1 + ratios.reduce((sum, ratio) => sum + ratio * ratio, 0);
  const limit = best.value + chiSquareQuantile(confidence, 1);
  const excess = (least: Minimum): number => least.value - limit;

  const factor = (k: number): Component => {
    const ratio = ratios[k]!;
    return {
      sd: interval(ratio * rest, rest * Math.sqrt(whole), Infinity, (sd) =>
        excess(withSd(deviance, ratios, rest, k, sd)),
      ),
      share: interval((ratio * ratio) / whole, 0.5, 1, (share) => excess(withShare(deviance, ratios, k, share))),
    };
  };
  return {
    mean: deviance.mean(ratios),
    deviance: best.value,
    factors: factors.map((_, k) => factor(k)),
    rest: {
      sd: interval(rest, rest, Infinity, (sd) => excess(minimumOf((free) => deviance.at(free, sd), away(ratios)))),
      share: interval(1 / whole, 0.5, 1, (share) => excess(withRestShare(deviance, ratios, share))),
    },
  };
}

/** Nought is a flat place of the likelihood, from which no search starts. */
const away = (ratios: readonly number[]): number[] => ratios.map((ratio) => Math.max(ratio, 0.1));

const without = (ratios: readonly number[], k: number): number[] => away(ratios.filter((_, i) => i !== k));

const put = (free: readonly number[], k: number, ratio: number): number[] => [
  ...free.slice(0, k),
  ratio,
  ...free.slice(k),
];

function withSd(deviance: Deviance, ratios: readonly number[], rest: number, k: number, sd: number): Minimum {
  // The rest is free too, by its logarithm.
  return minimumOf(
    ([log = 0, ...free]) => deviance.at(put(free, k, sd / Math.exp(log)), Math.exp(log)),
    [Math.log(rest), ...without(ratios, k)],
  );
}

function withShare(deviance: Deviance, ratios: readonly number[], k: number, share: number): Minimum {
  return minimumOf(
    (free) => {
      const others = free.reduce((sum, ratio) => sum + ratio * ratio, 1);
      return deviance.relative(put(free, k, Math.sqrt((share / (1 - share)) * others)));
    },
    without(ratios, k),
  );
}

function withRestShare(deviance: Deviance, ratios: readonly number[], share: number): Minimum {
  const length = Math.sqrt((1 - share) / share);
  return minimumOf((free) => {
    const norm = Math.sqrt(free.reduce((sum, ratio) => sum + ratio * ratio, 0)) || 1;
    return deviance.relative(free.map((ratio) => (ratio / norm) * length));
  }, away(ratios));
}

/** Where the excess passes nought on either side of the estimate; `most` where it does not before that end. */
function interval(value: number, scale: number, most: number, excess: (x: number) => number): Estimate {
  const nearMost = most === Infinity ? Infinity : most * (1 - 1e-9);
  const least = most === Infinity ? scale * 1e-6 : 1e-9;
  const low = value <= least || excess(least) <= 0 ? 0 : rootBetween((x) => -excess(x), least, value, precision);
  let top = most === Infinity ? Math.max(value, scale) * 2 : nearMost;
  while (most === Infinity && excess(top) < 0 && top < 1e6 * scale) top *= 2;
  const high = excess(top) < 0 ? most : rootBetween(excess, Math.max(value, least), top, precision);
  return { value, low, high };
}
