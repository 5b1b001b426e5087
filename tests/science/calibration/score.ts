// How well a lab's containers are known two weeks after their last weighing.
import { gaussianOf, heldOf, nothingHeld } from '../../../api/science/calibration/gaussian.ts';
import type { Learned } from '../../../api/science/calibration/learn.ts';
import { movedTo } from '../../../api/science/calibration/moved.ts';
import { learnedSpread } from '../../../api/science/calibration/spread.ts';
import type { Values } from '../../../api/science/calibration/factors.ts';
import { scoopDepthM } from '../../../api/science/events.ts';
import { courseOf } from '../../../api/science/exposure.ts';
import type { Held } from '../../../api/science/history.ts';
import { intervalOf } from '../../../api/science/interval.ts';
import { hysteresisSd } from '../../../api/science/judge.ts';
import type { Lab } from './labs.ts';

export interface Score {
  /** Of how many containers. */
  count: number;
  /** Sums of absolute errors. */
  mean: number;
  scoop: number;
  /** How many intervals held the truth. */
  meanHeld: number;
  scoopHeld: number;
}

export const noScore = (): Score => ({ count: 0, mean: 0, scoop: 0, meanHeld: 0, scoopHeld: 0 });

/** By how much the errors fell, and how often intervals held. */
export const figures = (before: Score, after: Score) => ({
  meanFall: before.mean / after.mean,
  scoopFall: before.scoop / after.scoop,
  meanHeld: after.meanHeld / after.count,
  scoopHeld: after.scoopHeld / after.count,
});

/** Adds a lab's containers to a score. */
export function score(into: Score, lab: Lab, values: Values, held: (key: string) => Held): void {
  for (const weighed of lab.containers) {
    const { key } = weighed.input.spec;
    const { condition } = courseOf(movedTo(weighed, values));
    const extra = hysteresisSd(condition);
    const truth = lab.scored.get(key);
    if (!truth) throw new Error(`unknown container: ${key}`);
    const whole = learnedSpread(weighed, condition, condition.bed.grid.depthM, held(key), extra);
    const scoop = learnedSpread(weighed, condition, scoopDepthM(weighed.input.spec, condition), held(key), extra);
    const holds = (spread: typeof whole, value: number): number => {
      const [low, high] = intervalOf(spread);
      return value >= low && value <= high ? 1 : 0;
    };
    into.count++;
    into.mean += Math.abs(whole.water - truth.mean);
    into.scoop += Math.abs(scoop.water - truth.scoop);
    into.meanHeld += holds(whole, truth.mean);
    into.scoopHeld += holds(scoop, truth.scoop);
  }
}

export const scoreUnlearned = (into: Score, lab: Lab): void => score(into, lab, new Map(), () => nothingHeld);

export const scoreLearned = (into: Score, lab: Lab, { solution, values }: Learned): void =>
  score(into, lab, values, (key) =>
    heldOf(gaussianOf(solution, values, (locals) => locals.includes(`container:${key}`))),
  );
