// The same bed as a plain programmer would write it: cells as ordinary differential equations, given to `odex`.
import { createRequire } from 'node:module';
import { diffusivityM2PerS, referenceK, saturatedKgPerM3, zeroCelsiusK } from '../../api/science/air.ts';
import type { Reading } from '../../api/science/blocks.ts';
import { activityAtWater, isothermOf, waterAtActivity, waterSlope } from '../../api/science/isotherm.ts';
import { dayZero } from '../science/support/lab.ts';
import type { Plain } from '../science/support/reference.ts';

interface Solver {
  absoluteTolerance: number;
  relativeTolerance: number;
  maxSteps: number;
  solve(f: (x: number, y: number[]) => number[], from: number, y: number[], to: number): { y: number[] };
}
// The package's own sources would be compiled under our settings; only this much of it is used.
const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (n: number) => Solver };

/** Mean water after one day of readings, linear between them; the integrator is started anew at each. */
export function plainDay(
  { sorbent, depthM, start, resistance }: Plain,
  thicknessM: Float64Array,
  readings: readonly Reading[],
): number {
  const numbers = sorbent.isotherm;
  const n = thicknessM.length;
  const solver = new Solver(n);
  solver.absoluteTolerance = 1e-6;
  solver.relativeTolerance = 1e-4;
  solver.maxSteps = 1e6;
  let activity = Array.from({ length: n }, () => activityAtWater(isothermOf(numbers), start));
  for (const [i, to] of readings.entries()) {
    const from = readings[i - 1];
    if (!from) continue;
    const slope = (x: number, a: number[]): number[] => {
      const share = (x + dayZero - from.atS) / (to.atS - from.atS);
      const temperatureC = from.temperatureC + share * (to.temperatureC - from.temperatureC);
      const humidity = from.humidity + share * (to.humidity - from.humidity);
      const saturated = saturatedKgPerM3(temperatureC);
      const power = referenceK / (temperatureC + zeroCelsiusK);
      const free = diffusivityM2PerS(temperatureC);
      const bed = free * sorbent.voidFraction ** 1.5;
      const vapour = a.map((one) => saturated * Math.max(one, 0) ** power);
      let above = (humidity * saturated - vapour[0]!) / (resistance(free) + thicknessM[0]! / 2 / bed);
      return a.map((one, cell) => {
        const below =
          cell < n - 1
            ? (2 * bed * (vapour[cell]! - vapour[cell + 1]!)) / (thicknessM[cell]! + thicknessM[cell + 1]!)
            : 0;
        const change = (above - below) / (sorbent.bulkDensityKgPerM3 * thicknessM[cell]! * waterSlope(numbers, one));
        above = below;
        return change;
      });
    };
    activity = solver.solve(slope, from.atS - dayZero, activity, to.atS - dayZero).y;
  }
  return activity.reduce((sum, one, i) => sum + waterAtActivity(numbers, one) * thicknessM[i]!, 0) / depthM;
}
