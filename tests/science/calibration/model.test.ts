// What the fit takes from the estimator: its ranges, its air, its events; and what teaches nothing.
import { describe, expect, it } from 'vitest';
import { heldBlocks } from '../../../api/science/blocks.ts';
import { biased } from '../../../api/science/calibration/biased.ts';
import { nothingHeld } from '../../../api/science/calibration/gaussian.ts';
import { learn } from '../../../api/science/calibration/learn.ts';
import { learnedSpread } from '../../../api/science/calibration/spread.ts';
import { storyOf } from '../../../api/science/calibration/story.ts';
import { taught } from '../../../api/science/calibration/taught.ts';
import type { Found, Weighed, Weighing } from '../../../api/science/calibration/weighing.ts';
import { roomAir } from '../../../api/science/climate.ts';
import { scoopDepthM } from '../../../api/science/events.ts';
import { courseOf, foldExposure } from '../../../api/science/exposure.ts';
import type { Action, FoldInput } from '../../../api/science/history.ts';
import { waterAtActivity } from '../../../api/science/isotherm.ts';
import { spreadOf } from '../../../api/science/uncertainty.ts';
import { after, dayZero, hour, jar, noisyAir, noisyReadings, numbersOf } from '../support/lab.ts';

const air = noisyAir(11, 12);
const weighedOf = (input: FoldInput, lot = 'a'): Weighed => ({
  input,
  lot,
  pool: 'silica',
});
const weighing = (container: string, atS: number, found: Found, id = 'w'): Weighing => ({
  id,
  container,
  atS,
  found,
  confirmed: false,
});
const actions: readonly Action[] = [
  { atS: dayZero + 20 * hour, kind: 'closed', closure: 'well closed' },
  { atS: dayZero + 50 * hour, kind: 'opened' },
  { atS: dayZero + 60 * hour, kind: 'closed', closure: 'tight' },
];
const sample = (waterFraction: number): Found => ({ of: 'whole', waterFraction, sd: 0.0015 });

describe('before anything is learned', () => {
  it('a container is as sure as the estimator says', () => {
    const input = { ...after(jar({ air }), 100), actions };
    const { condition } = courseOf(input);
    const doubts = { capacity: input.spec.sorbent.doubt, factors: [] };
    for (const depthM of [condition.bed.grid.depthM, scoopDepthM(input.spec, condition)]) {
      const theirs = spreadOf(condition.bed, depthM, doubts, condition.startSdLn, 0.1);
      const ours = learnedSpread(weighedOf(input), condition, depthM, nothingHeld, 0.1);
      expect(ours.water).toBeCloseTo(theirs.water, 12);
      expect(ours.sd).toBeCloseTo(theirs.sd, 12);
      expect(ours.shift).toBeCloseTo(theirs.shift, 12);
    }
  });
});

describe('a hygrometer that reads too low', () => {
  it('is put right as if it had recorded so much more', () => {
    const readings = noisyReadings(5, 4);
    const end = dayZero + 3 * 86_400;
    const recorded = roomAir(heldBlocks(readings, dayZero, end), null);
    const more = readings.map((one) => ({ ...one, humidity: one.humidity + 0.03 }));
    const shifted = roomAir(heldBlocks(more, dayZero, end), null);
    const waterIn = (one: typeof air): number =>
      foldExposure(after(jar({ air: one, depthMm: 30 }), 60)).answer.meanWaterFraction;
    expect(waterIn(biased(recorded, 0.03))).toBeCloseTo(waterIn(shifted), 5);
    expect(waterIn(shifted)).toBeGreaterThan(1.01 * waterIn(recorded));
  });
});

describe('a sample weighed after standing over a salt', () => {
  it('rescales its lot, and every other lot of its class by half of that', () => {
    const stood: Action = { atS: dayZero + hour, kind: 'equilibrated', humidity: 0.33, temperatureC: 25 };
    const input = { ...after(jar({ air, lid: 'tight' }), 2), actions: [stood] };
    const there = waterAtActivity(numbersOf('silica').isotherm, 0.33);
    const found = 1.3 * there;
    const learned = learn([weighedOf(input)], [weighing('jar', stood.atS + 60, sample(found))]);
    const rows = taught(learned, [weighedOf(input), weighedOf(input, 'b')]);
    const own = rows.find(({ factor }) => factor === 'capacity:a');
    expect(own?.lnValue).toBeGreaterThan(0.8 * Math.log(1.3));
    expect(own?.lnValue).toBeLessThan(Math.log(1.3));
    expect(own?.lnSd).toBeLessThan(0.12);
    expect(rows.find(({ factor }) => factor === 'capacity:b')?.lnValue).toBeCloseTo((own?.lnValue ?? NaN) / 2, 9);
    // The salt has a doubt of its own: it says nothing of the loggers.
    expect(learned.values.get(`salt:jar@${stood.atS}`)).toBeGreaterThan(0);
    expect(Math.abs(learned.values.get('bias') ?? 0)).toBeLessThan(1e-4);
  });
});

describe('a portion', () => {
  it('teaches about what it was poured from', () => {
    const taken: Action = { atS: dayZero + 30 * hour, kind: 'taken', id: 'p', dryKg: 0.05, openSeconds: 300 };
    const parent = { ...after(jar({ air, key: 'drum', lid: 'tight' }), 100), actions: [taken] };
    const [portion] = courseOf(parent).departures;
    if (!portion) throw new Error('missing portion');
    const child = jar({ air, key: 'beaker', lid: 'tight', depthMm: 16 });
    const water = { kind: 'handover', handover: portion.handover } as const;
    const beaker = { ...after(child, 40), start: { ...child.start, atS: taken.atS, water }, asOfS: taken.atS + hour };
    const containers = [weighedOf(parent), weighedOf(beaker)];
    const expected = portion.handover.waterFraction;
    const learned = learn(containers, [weighing('beaker', taken.atS + 60, sample(1.5 * expected))]);
    expect(learned.values.get(`start:drum@${dayZero}`)).toBeGreaterThan(0.05);
    const [row] = learned.after;
    expect(row?.expected).toBeGreaterThan(1.3 * expected);
  });
});

describe('what teaches nothing is told, not used', () => {
  it('a gain across a portion taken, and a weighing before the beginning', () => {
    const taken: Action = { atS: dayZero + 30 * hour, kind: 'taken', id: 'p', dryKg: 0.05, openSeconds: 300 };
    const input = { ...after(jar({ air, lid: 'tight' }), 100), actions: [taken] };
    const story = storyOf(
      learn(
        [weighedOf(input)],
        [
          weighing('jar', dayZero - hour, sample(0.01), 'early'),
          weighing('jar', dayZero + 40 * hour, { of: 'gain', gainKg: 0.001, sinceS: dayZero, sdKg: 5e-5 }, 'across'),
          weighing('jar', dayZero + 40 * hour, sample(0.012), 'good'),
          weighing('jar', dayZero + 41 * hour, sample(0.2), 'wild'),
        ],
      ),
    );
    const told = new Map(story.map((one) => [one.id, one]));
    expect(told.get('early')?.why).toBe('before its history began');
    expect(told.get('across')?.why).toBe('something was taken out or put in between');
    expect(told.get('good')?.counts).toBe('used');
    expect(told.get('wild')?.counts).toBe('left out');
    expect(Math.abs(told.get('wild')?.sigmas ?? 0)).toBeGreaterThan(4);
  });

  it('no weighing counts twice: those already in a history are looked at as weighings alone', () => {
    const input = { ...after(jar({ air, lid: 'tight' }), 100), actions };
    const observed: Action = {
      atS: dayZero + 30 * hour,
      kind: 'observed',
      of: 'whole',
      waterFraction: 0.02,
      sd: 0.0015,
    };
    const seen = { ...input, actions: [observed, ...actions].sort((one, other) => one.atS - other.atS) };
    const one = weighing('jar', dayZero + 70 * hour, sample(0.02));
    expect([...learn([weighedOf(seen)], [one]).values]).toEqual([...learn([weighedOf(input)], [one]).values]);
  });
});
