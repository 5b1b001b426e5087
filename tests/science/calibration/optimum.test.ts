// Is what the fit finds really the least? Held against the slope of the objective by differences of whole courses, and against
// a Levenberg-Marquardt of other hands (ml-levenberg-marquardt) that knows nothing of responses.
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { describe, expect, it } from 'vitest';
import { expect as expected, type Expected } from '../../../api/science/calibration/expect.ts';
import { valueOf, type Values } from '../../../api/science/calibration/factors.ts';
import { learn, objective } from '../../../api/science/calibration/learn.ts';
import { labOf } from './labs.ts';
import { weigh } from './weighed.ts';

const lab = labOf(3, { containers: 2, occasions: 3 });
const weighings = weigh(lab, 'both');
const learned = learn(lab.containers, weighings);
const names = [...learned.priors.keys()];
const sdOf = (name: string): number => learned.priors.get(name) ?? NaN;

const at = (values: Values): Expected[] =>
  lab.containers.flatMap((weighed) =>
    expected(
      weighed,
      weighings.filter(({ container }) => container === weighed.input.spec.key),
      values,
    ),
  );
const cost = (values: Values): number => objective(at(values), values, learned.priors, () => true);

describe('the fit of a small lab', () => {
  it('stands where the objective has no slope, by differences of whole courses', () => {
    const middle = cost(learned.values);
    for (const name of names) {
      // In units of the factor's sigma: what is left may move it by no more than a twentieth of what the weighings leave open.
      const step = 0.02 * sdOf(name);
      const here = valueOf(learned.values, name);
      const [less, more] = [-step, step].map((by) => cost(new Map(learned.values).set(name, here + by)));
      const slope = ((more ?? NaN) - (less ?? NaN)) / 2;
      const curve = (more ?? NaN) + (less ?? NaN) - 2 * middle;
      expect(Math.abs(slope / Math.sqrt(Math.max(curve, 4e-4))), name).toBeLessThan(0.05);
    }
  });

  it('is the one that another optimiser finds', () => {
    // Weighings and priors as points of a curve over their number; unknowns in units of their priors' sigmas.
    const count = weighings.length + names.length;
    const x = Array.from({ length: count }, (_, i) => i);
    const { parameterValues } = levenbergMarquardt(
      { x, y: x.map(() => 0) },
      (params) => {
        const rows = at(new Map(names.map((name, i) => [name, (params[i] ?? 0) * sdOf(name)])));
        return (i) => {
          const row = rows[i];
          return row ? (row.expected - row.found) / row.noise : (params[i - weighings.length] ?? 0);
        };
      },
      {
        initialValues: names.map(() => 0),
        gradientDifference: 0.02,
        centralDifference: true,
        damping: 1e-3,
        maxIterations: 6,
        errorTolerance: 0,
      },
    );
    const theirs = new Map(names.map((name, i) => [name, (parameterValues[i] ?? NaN) * sdOf(name)]));
    expect(cost(theirs)).toBeGreaterThan(cost(learned.values) - 0.01);
    for (const [i, name] of names.entries()) {
      expect(Math.abs((parameterValues[i] ?? NaN) - valueOf(learned.values, name) / sdOf(name)), name).toBeLessThan(
        0.05,
      );
    }
  }, 180_000);

  it('takes no more than four iterations, the last of them small', () => {
    expect(learned.iterations).toBeLessThanOrEqual(4);
    expect(learned.lastStep).toBeLessThan(0.03);
  });
});
