// What must hold of any bed in any air: more of what wets wets more, and no water is lost.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyBed, settleActivity, bedMean } from '../../api/science/bed.ts';
import { foldExposure } from '../../api/science/exposure.ts';
import { bedGrid } from '../../api/science/grid.ts';
import type { Action, FoldInput } from '../../api/science/history.ts';
import { carry } from '../../api/science/stepper.ts';
import { after, dayZero, evenAir, hour, jar, noisyAir, numbersOf, type Jar } from './support/lab.ts';

const sorbents = fc.constantFrom('silica', 'alumina', 'magnesium silicate', 'cellulose');
const bed = fc.record({
  sorbent: sorbents,
  depthMm: fc.integer({ min: 5, max: 200 }),
  headspaceMm: fc.integer({ min: 0, max: 100 }),
  start: fc.double({ min: 0, max: 0.03, noNaN: true }),
  humidity: fc.double({ min: 0.15, max: 0.65, noNaN: true }),
  temperatureC: fc.integer({ min: 5, max: 35 }),
  hours: fc.integer({ min: 1, max: 70 }),
});
type Case = Jar & { temperatureC: number; humidity: number; hours: number };
const mean = (input: FoldInput): number => foldExposure(input).answer.meanWaterFraction;
const one = (given: Omit<Case, 'air'>): FoldInput =>
  after(jar({ ...given, air: evenAir(given.temperatureC, given.humidity, 4) }), given.hours);
/** Two runs may differ by the tolerance of each. */
const slack = 1e-4;
const runs = { numRuns: 60, seed: 20260302 };

describe('a container', () => {
  it('is wetter in wetter air', () => {
    fc.assert(
      fc.property(bed, fc.double({ min: 0.01, max: 0.2, noNaN: true }), (given, more) => {
        expect(mean(one({ ...given, humidity: given.humidity + more }))).toBeGreaterThan(mean(one(given)) - slack);
      }),
      runs,
    );
  });

  it('that starts dry is wetter later', () => {
    fc.assert(
      fc.property(bed, fc.integer({ min: 1, max: 24 }), (given, later) => {
        const dry = { ...given, start: 0 };
        expect(mean(one({ ...dry, hours: given.hours + later }))).toBeGreaterThan(mean(one(dry)) - slack);
      }),
      runs,
    );
  });

  it('that starts wetter stays no drier', () => {
    fc.assert(
      fc.property(bed, fc.double({ min: 0.001, max: 0.02, noNaN: true }), (given, more) => {
        expect(mean(one({ ...given, start: given.start + more }))).toBeGreaterThan(mean(one(given)) - slack);
      }),
      runs,
    );
  });

  it('takes up more the less its mouth is shut', () => {
    fc.assert(
      fc.property(bed, (given) => {
        const dry = { ...given, start: 0 };
        const lids = ['sealed', 'tight', 'well closed', 'open'] as const;
        const waters = lids.map((lid) => mean(one({ ...dry, lid })));
        for (let i = 1; i < lids.length; i++) expect(waters[i]).toBeGreaterThan(waters[i - 1]! - slack);
      }),
      runs,
    );
  });

  it('stays between its start and what its room would give it', () => {
    fc.assert(
      fc.property(bed, (given) => {
        const end = mean(one({ ...given, depthMm: 0.5, headspaceMm: 0, hours: 70 }));
        const water = mean(one(given));
        expect(water).toBeGreaterThan(Math.min(given.start, end) - slack);
        expect(water).toBeLessThan(Math.max(given.start, end) + slack);
      }),
      runs,
    );
  });

  it('gains exactly the water that came in, through openings, closings and mixings', () => {
    const air = noisyAir(5, 6);
    const moment = fc.integer({ min: 1, max: 100 * hour });
    const happening = fc.record({ at: moment, kind: fc.constantFrom('opened', 'closed', 'mixed') });
    fc.assert(
      fc.property(bed, fc.array(happening, { maxLength: 6 }), (given, happenings) => {
        const actions = happenings
          .sort((a, b) => a.at - b.at)
          .map(({ at, kind }): Action =>
            kind === 'closed'
              ? { atS: dayZero + at, kind: 'closed', closure: 'well closed' }
              : { atS: dayZero + at, kind: kind === 'opened' ? 'opened' : 'mixed' },
          );
        const { answer, waterGainedKg } = foldExposure({ ...after(jar({ ...given, air }), 110), actions });
        const gained = answer.dryKg * (answer.meanWaterFraction - given.start);
        expect(Math.abs(gained - waterGainedKg)).toBeLessThan(
          1e-10 * Math.max(answer.dryKg * answer.meanWaterFraction, 1e-6),
        );
      }),
      runs,
    );
  });
});

describe('the step', () => {
  it('is of second order: half the step, a quarter of the error', () => {
    const water = (stepS: number): number => {
      const one = emptyBed(numbersOf('silica'), bedGrid(0.03), 1, 1, 101_325, 1);
      one.water.fill(0.02);
      settleActivity(one);
      const inflow = {
        filmSPerM: 1 / 0.003,
        headM: 0.02,
        closureSPerM: 0,
        openDuty: 1,
        openFactor: 1,
        closedFactor: 1,
      };
      const { integrals } = evenAir(25, 0.5, 1).day(dayZero / 86_400);
      carry(one, integrals, 0, 32_000, inflow, { scale: 1e-6, fading: false, fixedStepS: stepS }, false, null);
      return bedMean(one, one.water);
    };
    const [coarse = 0, middle = 0, fine = 0, finest = 0] = [2000, 1000, 500, 250].map(water);
    expect(Math.log2(Math.abs((coarse - middle) / (middle - fine)))).toBeGreaterThan(1.7);
    expect(Math.log2(Math.abs((middle - fine) / (fine - finest)))).toBeGreaterThan(1.7);
    expect(Math.log2(Math.abs((middle - fine) / (fine - finest)))).toBeLessThan(2.4);
  });
});
