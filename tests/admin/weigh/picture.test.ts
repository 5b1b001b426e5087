// The picture of a factor, and weighings in words.
import { describe, expect, it } from 'vitest';
import { isClear, pictureOf } from '../../../admin/weigh/picture.ts';
import { againstWords, residualPlot } from '../../../admin/weigh/words.ts';

const tight = { kind: 'CLOSURE', priorLow: 0.66, priorHigh: 1.51, value: 0.7, low: 0.6, high: 0.82, says: [] } as const;

describe('a factor as a picture', () => {
  it('has what was assumed in its middle, twice as much as far to the right as half as much to the left', () => {
    const says = [2, 0.5, 40].map((value) => ({ value, low: value / 1.1, high: value * 1.1 }));
    const { assumed, says: marks, now } = pictureOf({ ...tight, priorLow: 0.4, priorHigh: 2.5, says });
    expect(assumed.at).toBe(50);
    const [twice, half, far] = marks;
    expect((twice?.at ?? 0) - 50).toBeCloseTo(50 - (half?.at ?? 0), 9);
    expect(far).toMatchObject({ at: 100, beyond: 'right' });
    expect(now.at).toBeLessThan(50);
    expect(now.from).toBeLessThan(now.at);
    expect(now.to).toBeGreaterThan(now.at);
  });

  it('names places that do not touch each other, 1 always among them', () => {
    for (const priorHigh of [1.2, 2, 6, 30]) {
      const { ticks } = pictureOf({ ...tight, priorLow: 1 / priorHigh, priorHigh });
      expect(ticks.map(({ label }) => label)).toContain('1');
      ticks.slice(1).forEach(({ at }, i) => expect(at - (ticks[i]?.at ?? 0)).toBeGreaterThanOrEqual(17));
    }
  });

  it('adds humidity instead of multiplying', () => {
    const { assumed, ticks } = pictureOf({
      ...tight,
      kind: 'HUMIDITY',
      priorLow: -0.033,
      priorHigh: 0.033,
      value: 0,
      low: -0.01,
      high: 0.01,
    });
    expect(assumed.at).toBe(50);
    expect(ticks.map(({ label }) => label)).toEqual(['−2 %', '0', '+2 %']);
  });

  it('is clear once it is surer, or far from what was assumed', () => {
    expect(isClear({ kind: 'BED', value: 1, sd: 0.19, priorSd: 0.2 })).toBe(false);
    expect(isClear({ kind: 'BED', value: 1, sd: 0.1, priorSd: 0.2 })).toBe(true);
    expect(isClear({ kind: 'BED', value: 1.25, sd: 0.19, priorSd: 0.2 })).toBe(true);
  });
});

describe('a weighing in words', () => {
  it('says water in percent, a gain in grams, and on which side it lies', () => {
    const sample = { of: 'SCOOP', found: 0.091, expectedNow: 0.0362, sigmas: 29.2 } as const;
    expect(againstWords(sample)).toBe('9.10\u00a0% found, 3.62\u00a0% expected: 29 σ wetter');
    const gain = { of: 'GAIN', found: 0.00125, expectedNow: 0.0013, sigmas: -0.71 } as const;
    expect(againstWords(gain)).toBe('1.25\u00a0g found, 1.30\u00a0g expected: 0.7 σ drier');
  });

  it('of a gross error is drawn no further off than leaves the others to be told apart', () => {
    const weighing = {
      event: { id: 'e', sentence: '' },
      container: { label: 'A' },
      at: '2026-03-02T12:00:00Z',
      counts: 'LEFT_OUT',
      of: 'SCOOP',
      found: 0.1,
      expectedNow: 0.03,
      sigmas: 40,
      isRight: null,
    } as const;
    const { data } = residualPlot({ says: [{ value: 1, low: 1, high: 1, weighing }] });
    expect(data.lines[0]?.values).toEqual([6]);
  });
});
