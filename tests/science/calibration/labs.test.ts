// Labs that know what their balances told them: against truths drawn from the priors and made by another solver.
import { beforeAll, describe, expect, it } from 'vitest';
import { learn } from '../../../api/science/calibration/learn.ts';
import { amount } from '../../support/amount.ts';
import { labOf, type Lab, type LabWords } from './labs.ts';
import { figures, noScore, scoreLearned, scoreUnlearned } from './score.ts';
import { type Way, weigh } from './weighed.ts';

const labs = amount(20, 100);
const ways = amount(1, 4) === 1 ? (['both'] as const) : (['both', 'scoop', 'whole', 'mixed'] as const);
/** Falls that the exposure model asks for. */
const falls: Readonly<Record<Way, { mean: number; scoop: number | null }>> = {
  both: { mean: 4, scoop: 6 },
  scoop: { mean: 2.2, scoop: 4.5 },
  mixed: { mean: 2.8, scoop: null },
  whole: { mean: 2.2, scoop: null },
};

function tried(many: number, words: LabWords, asked: readonly Way[], withGross = false) {
  const before = noScore();
  const scores = new Map(asked.map((way) => [way, noScore()]));
  let leftOut = 0;
  let wrongLeftOut = 0;
  let wrong = 0;
  for (let seed = 0; seed < many; seed++) {
    const lab: Lab = labOf(seed, words);
    scoreUnlearned(before, lab);
    for (const [way, into] of scores) {
      const weighings = weigh(lab, way, withGross);
      const learned = learn(lab.containers, weighings);
      scoreLearned(into, lab, learned);
      const isWrong = (id: string): boolean => id.endsWith('wrong');
      leftOut += learned.leftOut.size;
      wrong += weighings.filter(({ id }) => isWrong(id)).length;
      wrongLeftOut += [...learned.leftOut].filter(isWrong).length;
    }
  }
  const found = new Map([...scores].map(([way, after]) => [way, figures(before, after)]));
  return { found, leftOut, wrong, wrongLeftOut };
}

const shown = (title: string, told: object): void => console.log(`${title}: ${JSON.stringify(told)}`);

describe(`${labs} labs, six containers each, weighed ten times in sixty days, scored two weeks later`, () => {
  const found = new Map<Way, ReturnType<typeof figures>>();
  beforeAll(() => {
    const still = ways.filter((way) => way !== 'mixed');
    for (const [way, one] of tried(labs, {}, still).found) found.set(way, one);
    if (ways.some((way) => way === 'mixed')) {
      for (const [way, one] of tried(labs, { rolled: true }, ['mixed']).found) found.set(way, one);
    }
    for (const [way, one] of found) shown(way, one);
  }, 3_600_000);

  for (const way of ways) {
    it(`know what is in them when weighed in this way: ${way}`, () => {
      const one = found.get(way);
      expect(one?.meanFall).toBeGreaterThan(falls[way].mean);
      expect(one?.scoopFall).toBeGreaterThan(falls[way].scoop ?? 1);
    });

    it(`know how well they know it when weighed in this way: ${way}`, () => {
      const one = found.get(way);
      for (const held of [one?.meanHeld, one?.scoopHeld]) {
        expect(held).toBeGreaterThanOrEqual(0.85);
        expect(held).toBeLessThanOrEqual(0.95);
      }
    });
  }
});

describe('what the model does not know of', () => {
  it('one gross error among ten of each container is found and left out, and nearly nothing else is', () => {
    const { found, leftOut, wrong, wrongLeftOut } = tried(amount(2, 30), {}, ['both'], true);
    shown('one gross error in ten', {
      ...found.get('both'),
      wrong,
      wrongLeftOut,
      honestLeftOut: leftOut - wrongLeftOut,
    });
    expect(wrongLeftOut / wrong).toBeGreaterThan(0.95);
    expect(leftOut - wrongLeftOut).toBeLessThanOrEqual(0.01 * wrong + 1);
    expect(found.get('both')?.meanFall).toBeGreaterThan(4);
  }, 3_600_000);

  it('under a desorption branch twice as high, weighing still brings the error below half', () => {
    const { found, leftOut } = tried(amount(2, 30), { desorption: 2 }, ['both']);
    shown('desorption twofold higher', { ...found.get('both'), leftOut });
    expect(found.get('both')?.meanFall).toBeGreaterThan(2);
  }, 3_600_000);
});
