// The range beside an estimate holds the truth as often as it says.
import { describe, expect, it } from 'vitest';
import { foldExposure } from '../../api/science/exposure.ts';
import type { Action, Factor, FoldInput, Lid } from '../../api/science/history.ts';
import { handoverOf, scoopDepthM } from '../../api/science/events.ts';
import { courseOf } from '../../api/science/exposure.ts';
import { heldBlocks } from '../../api/science/blocks.ts';
import { daySeconds, roomAir } from '../../api/science/climate.ts';
import { chancePast, intervalOf, waterAtSigmas } from '../../api/science/interval.ts';
import { normalBelow } from '../../api/science/normal.ts';
import { capacitySd } from '../../api/science/uncertainty.ts';
import { usualPace } from '../../api/science/stepper.ts';
import { after, dayZero, dice, hour, jar, noisyAir, noisyReadings, normalDraw, numbersOf } from './support/lab.ts';

const sharp = { ...usualPace, scale: 1e-3, fading: false };
const waters = (input: FoldInput): [mean: number, scoop: number] => {
  const { condition } = courseOf(input, null, sharp);
  const { bed } = condition;
  return [
    handoverOf(condition, bed.grid.depthM).waterFraction,
    handoverOf(condition, scoopDepthM(input.spec, condition)).waterFraction,
  ];
};

const shifted = (humidityShift: number) =>
  roomAir(
    heldBlocks(
      noisyReadings(9, 5).map((one) => ({ ...one, humidity: one.humidity + humidityShift })),
      dayZero,
      dayZero + 5 * daySeconds,
    ),
    null,
  );

const actions: readonly Action[] = [
  { atS: dayZero + 20 * hour, kind: 'closed', closure: 'well closed' },
  { atS: dayZero + 30 * hour, kind: 'taken', id: 'a', dryKg: 0.05, openSeconds: 300 },
  { atS: dayZero + 50 * hour, kind: 'opened' },
  { atS: dayZero + 60 * hour, kind: 'mixed' },
];

describe('the responses carried along', () => {
  it('are the differences that two nearby courses make, through closings, scoops and mixings', () => {
    const input = { ...after(jar({ air: shifted(0) }), 80), actions };
    const { condition } = courseOf(input, null, sharp);
    const { factors } = handoverOf(condition, scoopDepthM(input.spec, condition));
    const response = (name: string): number => factors.find(({ factor }) => factor === name)?.value ?? NaN;
    const factor = (name: string, ln: number): Factor => ({ factor: name, ln, sd: 0.1 });
    const differs = (name: string): number => {
      const e = 0.02;
      return (
        (waters({ ...input, factors: [factor(name, e)] })[1] - waters({ ...input, factors: [factor(name, -e)] })[1]) /
        (2 * e)
      );
    };
    const close = (is: number, should: number) => expect(Math.abs(is / should - 1)).toBeLessThan(0.02);
    close(response('bed'), differs('bed'));
    close(response('open'), differs('open'));
    close(response('closed:well closed/jar'), differs('closed:well closed'));
    close(
      response('bias'),
      (waters({ ...input, airs: new Map([['room', shifted(0.01)]]) })[1] -
        waters({ ...input, airs: new Map([['room', shifted(-0.01)]]) })[1]) /
        0.02,
    );
    const start = (ln: number) =>
      waters({
        ...input,
        start: { ...input.start, water: { kind: 'known', waterFraction: 0.01 * Math.exp(ln), sdLn: 0.3 } },
      })[1];
    close(response('start:jar'), (start(0.02) - start(-0.02)) / 0.04);
    // Capacity comes free by the identity.
    const water = handoverOf(condition, scoopDepthM(input.spec, condition)).waterFraction;
    const identity = factors.reduce((left, { factor, value }) => (factor === 'bias' ? left : left - value), water);
    close(identity, differs('capacity'));
  });
});

/** Two and a half sigmas of a share of 0.9 in this many are 0.034. */
const samples = 500;

/** One jar whose truth is drawn from the doubts, and whether the estimate's interval holds it. */
function coverage(
  sorbent: string,
  lid: Lid,
  hours: number,
  depthMm: number,
  samples: number,
): [mean: number, scoop: number] {
  const roll = dice(20260302);
  const readings = noisyReadings(9, 6);
  const air = (bias: number) =>
    roomAir(
      heldBlocks(
        readings.map((one) => ({ ...one, humidity: one.humidity + bias })),
        dayZero,
        dayZero + 6 * daySeconds,
      ),
      null,
    );
  const input = after(jar({ sorbent, depthMm, lid, air: air(0), start: sorbent === 'c18' ? 0.0015 : 0.01 }), hours);
  const { answer } = foldExposure(input);
  const { doubt } = numbersOf(sorbent);
  let mean = 0;
  let scoop = 0;
  for (let n = 0; n < samples; n++) {
    const draw = (sd: number) => sd * normalDraw(roll);
    const { water } = input.start;
    const start = water.kind === 'known' ? water.waterFraction * Math.exp(draw(0.3)) : NaN;
    const factors: Factor[] = [
      { factor: 'capacity', ln: draw(doubt.below), sd: 0 },
      { factor: 'bed', ln: draw(0.2), sd: 0 },
      { factor: 'open', ln: draw(0.3), sd: 0 },
      { factor: 'closed:well closed', ln: draw(0.25), sd: 0 },
      { factor: 'container', ln: draw(0.3), sd: 0 },
    ];
    const truth = {
      ...input,
      factors,
      airs: new Map([['room', air(draw(0.02))]]),
      start: { ...input.start, water: { kind: 'known', waterFraction: start, sdLn: 0 } as const },
    };
    const { condition } = courseOf(truth);
    const { bed } = condition;
    const trueMean = handoverOf(condition, bed.grid.depthM).waterFraction;
    const trueScoop = handoverOf(condition, scoopDepthM(input.spec, condition)).waterFraction;
    if (trueMean >= answer.low && trueMean <= answer.high) mean++;
    if (trueScoop >= answer.scoopLow && trueScoop <= answer.scoopHigh) scoop++;
  }
  return [mean / samples, scoop / samples];
}

describe('the 90 % interval', () => {
  for (const [sorbent, low, high] of [
    ['silica', 0.85, 0.95],
    ['alumina', 0.85, 0.95],
    ['magnesium silicate', 0.84, 0.95],
    ['c18', 0.8, 0.98],
  ] as const) {
    it(`of ${sorbent} holds the truth about nine times in ten, open and closed, deep and shallow`, () => {
      for (const [lid, hours, depthMm] of [
        ['open', 30, 120],
        ['open', 110, 20],
        ['well closed', 120, 80],
      ] as const) {
        for (const share of coverage(sorbent, lid, hours, depthMm, samples)) {
          expect(share).toBeGreaterThan(low);
          expect(share).toBeLessThan(high);
        }
      }
    });
  }

  it('is wider where the air was filled in than where it was measured', () => {
    const recorded = heldBlocks(noisyReadings(9, 5), dayZero, dayZero + 5 * daySeconds);
    const filled = recorded.map((blocks) => ({ ...blocks, uncertain: new Uint8Array(288).fill(1) }));
    const measured = foldExposure(after(jar({ air: roomAir(recorded, null) }), 90)).answer;
    const guessed = foldExposure(after(jar({ air: roomAir(filled, null) }), 90)).answer;
    expect(guessed.meanWaterFraction).toBe(measured.meanWaterFraction);
    expect(guessed.high / guessed.low).toBeGreaterThan(1.05 * (measured.high / measured.low));
  });

  it('is wider while wet silica dries in air, since desorption lies higher', () => {
    const air = noisyAir(3, 10, 22, 0.3);
    const wet = foldExposure(
      after(jar({ air, start: 0.12, depthMm: 10, headspaceMm: 0, startSdLn: 0.01 }), 100),
    ).answer;
    const dry = foldExposure(
      after(jar({ air, start: 0.03, depthMm: 10, headspaceMm: 0, startSdLn: 0.01 }), 100),
    ).answer;
    expect(wet.high / wet.low).toBeGreaterThan(1.1 * (dry.high / dry.low));
  });

  it('of capacity is 30 % up to 60 % RH for silica and a factor of 2 from 70 % RH', () => {
    const doubts = { capacity: numbersOf('silica').doubt, factors: [] };
    expect(capacitySd(doubts, 0.3)).toBeCloseTo(Math.log(1.3), 12);
    expect(capacitySd(doubts, 0.8)).toBeCloseTo(Math.LN2, 12);
    expect(capacitySd(doubts, 0.65)).toBeCloseTo((Math.log(1.3) + Math.LN2) / 2, 12);
    expect(capacitySd({ ...doubts, factors: [{ factor: 'capacity', ln: 0.1, sd: 0.05 }] }, 0.3)).toBeCloseTo(0.05, 12);
  });
});

describe('the normal distribution', () => {
  it('has the published quantiles (Abramowitz and Stegun 1964, table 26.1)', () => {
    for (const [x, p] of [
      [0, 0.5],
      [1, 0.8413447],
      [1.645, 0.950015],
      [2, 0.9772499],
      [3, 0.9986501],
      [-1.5, 0.0668072],
    ] as const) {
      expect(Math.abs(normalBelow(x) - p)).toBeLessThan(2e-7);
    }
  });

  it('puts a twentieth beyond each end of the interval', () => {
    for (const shift of [0, 0.002, 0.01]) {
      const spread = { water: 0.03, sd: 0.009, shift };
      const [low, high] = intervalOf(spread);
      expect(chancePast(spread, high)).toBeCloseTo(0.05, 4);
      expect(chancePast(spread, low)).toBeCloseTo(0.95, 4);
      expect(chancePast(spread, 0.03)).toBeCloseTo(0.5, 6);
    }
    expect(chancePast({ water: 0.03, sd: 0, shift: 0 }, 0.029)).toBe(1);
    expect(chancePast({ water: 0.03, sd: 0, shift: 0 }, 0.031)).toBe(0);
  });

  it('is one log-normal while doubts are small, and stays near the sum where a wrong hygrometer is all the doubt', () => {
    const small = { water: 0.03, sd: 0.0003, shift: 0.00025 };
    const both = Math.hypot(0.0003, 0.00025) / 0.03;
    for (const z of [-1.645, 1.645]) {
      expect(waterAtSigmas(small, z) / (0.03 * Math.exp(z * both))).toBeCloseTo(1, 3);
    }
    // A desiccator at 3 % RH, give or take 8 %: 1 % of water, give or take 2 %, is 0 to 4.3 % and not 0 to 27 %.
    const [low, high] = intervalOf({ water: 0.01, sd: 0, shift: 0.02 });
    expect(low).toBe(0);
    expect(high).toBeCloseTo(0.01 + 1.645 * 0.02, 4);
  });
});
