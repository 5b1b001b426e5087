// Water over time for a plot, and water at one instant without a verdict.
import { courseOf } from './exposure.ts';
import { scoopDepthM } from './events.ts';
import type { Condition } from './condition.ts';
import type { FoldInput } from './history.ts';
import { intervalOf } from './interval.ts';
import { hysteresisSd } from './judge.ts';
import { spreadAt } from './spreads.ts';

export interface Water {
  readonly atS: number;
  /** kg per kg dry; the range is the 90 % interval of the mean. */
  readonly mean: number;
  readonly low: number;
  readonly high: number;
  readonly scoop: number;
  readonly scoopLow: number;
  readonly scoopHigh: number;
  readonly known: boolean;
}

function waterNow(condition: Condition, input: FoldInput, atS: number): Water {
  const { bed } = condition;
  const extra = hysteresisSd(condition);
  const whole = spreadAt(input, condition, bed.grid.depthM, extra);
  const scoop = spreadAt(input, condition, scoopDepthM(input.spec, condition), extra);
  const [low, high] = intervalOf(whole);
  const [scoopLow, scoopHigh] = intervalOf(scoop);
  const known = condition.startKnown && condition.airKnown && !condition.wetted;
  return { atS, mean: whole.water, low, high, scoop: scoop.water, scoopLow, scoopHigh, known };
}

/** Water at `asOfS`, with the same digits as the exposure. */
export function waterAt(input: FoldInput): Water {
  const { condition } = courseOf(input);
  return waterNow(condition, input, condition.atS);
}

/**
 * Water at each of the instants, which must be in order, none before the start (or checkpoint) and none after `asOfS`; at an
 * event's instant, what stood just before it. Stopping for them moves the digits within the tolerance: for plots.
 */
export function waterSeries(input: FoldInput, instantsS: readonly number[]): Water[] {
  const series: Water[] = [];
  courseOf(input, {
    instantsS,
    told: (condition) => series.push(waterNow(condition, input, instantsS[series.length]!)),
  });
  return series;
}
