// Weighing by weighing is all at once, within a fraction of a sigma; and what is stored is what was learned.
import { describe, expect, it } from 'vitest';
import { gaussianOf, heldOf, sdIn, valuesOf } from '../../../api/science/calibration/gaussian.ts';
import { type Earlier, learn, type Learned } from '../../../api/science/calibration/learn.ts';
import { remembered, taught } from '../../../api/science/calibration/taught.ts';
import { amount } from '../../support/amount.ts';
import { labOf } from './labs.ts';
import { figures, noScore, score, scoreLearned, scoreUnlearned } from './score.ts';
import { weigh } from './weighed.ts';

/** A fit that goes on from the one before at every weighing. */
function oneByOne(seed: number, occasions: number) {
  const lab = labOf(seed, { occasions });
  const weighings = weigh(lab, 'both').sort((one, other) => one.atS - other.atS);
  let learned: Learned | null = null;
  weighings.forEach(({ container }, i) => {
    const earlier: Earlier | null = learned && { learned, changed: new Set([container]) };
    learned = learn(lab.containers, weighings.slice(0, i + 1), earlier);
  });
  if (!learned) throw new Error('missing weighings');
  return { lab, weighings, learned: learned as Learned };
}

describe('weighing by weighing', () => {
  it('comes to where a fit of all at once does', () => {
    const [before, sequential, together] = [noScore(), noScore(), noScore()];
    const apart: number[] = [];
    const widths: number[] = [];
    for (let seed = 0; seed < amount(2, 6); seed++) {
      const { lab, weighings, learned } = oneByOne(seed, amount(4, 10));
      const all = learn(lab.containers, weighings);
      const held = gaussianOf(learned.solution, learned.values, () => true);
      const whole = gaussianOf(all.solution, all.values, () => true);
      for (const [i, name] of whole.names.entries()) {
        const sd = sdIn(whole, name) ?? NaN;
        apart.push(Math.abs((whole.mean[i] ?? NaN) - (held.mean[held.names.indexOf(name)] ?? NaN)) / sd);
        widths.push((sdIn(held, name) ?? NaN) / sd);
      }
      scoreUnlearned(before, lab);
      scoreLearned(together, lab, all);
      scoreLearned(sequential, lab, learned);
    }
    apart.sort((one, other) => one - other);
    const middle = apart[Math.floor(apart.length / 2)];
    const told = {
      together: figures(before, together),
      sequential: figures(before, sequential),
      apartInSigmas: { middle, ninety: apart[Math.floor(0.9 * apart.length)], most: apart.at(-1) },
      widths: { least: Math.min(...widths), most: Math.max(...widths) },
    };
    console.log(`one by one: ${JSON.stringify(told)}`);
    expect(apart.at(-1)).toBeLessThan(0.1);
    expect(Math.max(...widths.map((one) => Math.abs(Math.log(one))))).toBeLessThan(0.1);
    expect(figures(before, sequential).meanFall).toBeGreaterThan(4);
  }, 1_800_000);
});

describe('what is stored', () => {
  const lab = labOf(1, { occasions: 5 });
  const weighings = weigh(lab, 'both');
  const learned = learn(lab.containers, weighings);
  const stored = taught(learned, lab.containers);

  it('is named as the estimator reads it, with values and sigmas', () => {
    const named = new Map(stored.map((one) => [one.factor, one]));
    for (const factor of [
      'capacity:0',
      'capacity:1',
      'closure:TIGHT',
      'closure:WELL_CLOSED',
      'container:c0',
      'bed',
      'open',
    ]) {
      expect(named.get(factor)?.lnSd, factor).toBeLessThan(named.get(factor)?.because.priorSd ?? NaN);
      expect(named.get(factor)?.because.weighings, factor).toBeGreaterThan(0);
    }
    const whole = gaussianOf(learned.solution, learned.values, () => false);
    const at = (name: string): number => whole.names.indexOf(name);
    const [c, l] = [at('class:silica'), at('lot:0')];
    const variance =
      (whole.covariance[c]?.[c] ?? NaN) + (whole.covariance[l]?.[l] ?? NaN) + 2 * (whole.covariance[c]?.[l] ?? NaN);
    expect(named.get('capacity:0')?.lnSd).toBeCloseTo(Math.sqrt(variance), 9);
  });

  it('is the same again after a journey through text, for each container', () => {
    const back = remembered(JSON.parse(JSON.stringify(stored)) as typeof stored);
    const [here, there] = [noScore(), noScore()];
    scoreLearned(here, lab, learned);
    score(there, lab, valuesOf(back), () => heldOf(back));
    expect(there.mean).toBeCloseTo(here.mean, 12);
    expect(there.meanHeld).toBe(here.meanHeld);
    const { names, mean, covariance } = gaussianOf(learned.solution, learned.values, (locals) =>
      locals.includes('container:c0'),
    );
    names.forEach((name, i) => {
      const p = back.names.indexOf(name);
      expect(back.mean[p]).toBe(mean[i]);
      names.forEach((other, j) => {
        const both = Math.sqrt((covariance[i]?.[i] ?? NaN) * (covariance[j]?.[j] ?? NaN));
        const value = back.covariance[p]?.[back.names.indexOf(other)] ?? NaN;
        expect(Math.abs(value - (covariance[i]?.[j] ?? NaN)) / both).toBeLessThan(2e-4);
      });
    });
  });

  it('gives a lot that nobody weighed what its class has learned', () => {
    const [first] = lab.containers;
    if (!first) throw new Error('missing container');
    const fresh = taught(learned, [...lab.containers, { ...first, lot: 'new' }]).find(
      ({ factor }) => factor === 'capacity:new',
    );
    const known = stored.find(({ factor }) => factor === 'capacity:0');
    expect(fresh?.lnSd).toBeLessThan(first.input.spec.sorbent.doubt.below);
    expect(fresh?.lnSd).toBeGreaterThan(known?.lnSd ?? NaN);
    expect(fresh?.lnValue).toBe(learned.values.get('class:silica'));
    expect(fresh?.because.weighings).toBe(0);
  });
});
