// The verdict on a container, and the sentence that explains it.
import { describe, expect, it } from 'vitest';
import { foldExposure } from '../../api/science/exposure.ts';
import { aluminaGrades, gradeOf } from '../../api/science/grades.ts';
import { stateOf, usualThresholds } from '../../api/science/judge.ts';
import { after, dayZero, evenAir, hour, jar, noisyAir, plateBox } from './support/lab.ts';

const answerOf = (input: Parameters<typeof foldExposure>[0]) => foldExposure(input).answer;

describe('the verdict', () => {
  it('is redry from an even chance, use soon from one in five or within two days, too dry below, good else, unknown first', () => {
    const state = (past: number | null, dry: number | null, hours: number | null, known = true) =>
      stateOf(known, past, dry, hours, usualThresholds);
    expect(state(0.5, null, 0)).toBe('REDRY');
    expect(state(0.49, null, null)).toBe('USE_SOON');
    expect(state(0.2, 0.1, null)).toBe('USE_SOON');
    expect(state(0.1, null, 47)).toBe('USE_SOON');
    expect(state(0.1, null, 49)).toBe('GOOD');
    expect(state(0.1, 0.5, 0)).toBe('TOO_DRY');
    expect(state(null, null, null)).toBe('GOOD');
    expect(state(1, 1, 0, false)).toBe('UNKNOWN');
  });

  it('crosses from good to redry at the hour that was foretold', () => {
    for (const [air, tolerance] of [
      [evenAir(25, 0.5, 6), 0.02],
      [noisyAir(2, 6, 25, 0.5), 0.2],
    ] as const) {
      const now = answerOf(after(jar({ air }), 2));
      const hours = now.hoursToLimit ?? NaN;
      expect(hours).toBe(now.hoursToLimitOpen);
      const then = answerOf(after(jar({ air }), 2 + hours));
      expect(Math.abs(then.scoopWaterFraction / 0.05 - 1)).toBeLessThan(tolerance);
    }
  });

  it('foretells longer when closed than open, and nothing beyond ninety days or in air too dry to reach the limit', () => {
    const open = answerOf(after(jar({ air: evenAir(25, 0.5, 3) }), 10));
    expect(open.hoursToLimitOpen ?? NaN).toBeLessThan(open.hoursToLimitClosed ?? Infinity);
    const dry = answerOf(after(jar({ air: evenAir(25, 0.2, 3) }), 10));
    expect([dry.hoursToLimit, dry.hoursToLimitOpen, dry.hoursToLimitClosed]).toEqual([null, null, null]);
    const sealed = answerOf(after(jar({ air: evenAir(25, 0.5, 3), lid: 'sealed' }), 10));
    expect(sealed.hoursToLimit).toBeNull();
    expect(sealed.hoursToLimitOpen).not.toBeNull();
  });

  it('foretells when over-wet stock in a dry room falls out of its band', () => {
    const air = evenAir(25, 0.1, 20);
    const answer = answerOf(after(jar({ air, start: 0.045, lower: 0.04, depthMm: 15, headspaceMm: 0 }), 1));
    const hours = answer.hoursToLimit ?? NaN;
    const then = answerOf(after(jar({ air, start: 0.045, lower: 0.04, depthMm: 15, headspaceMm: 0 }), 1 + hours));
    expect(Math.abs(then.scoopWaterFraction / 0.04 - 1)).toBeLessThan(0.02);
    expect(answerOf(after(jar({ air, start: 0.01, lower: 0.04 }), 0.1)).state).toBe('TOO_DRY');
  });

  it('says 0 hours when past, and how deep', () => {
    const answer = answerOf(after(jar({ air: evenAir(25, 0.5, 9) }), 8 * 24));
    expect(answer.state).toBe('REDRY');
    expect(answer.hoursToLimit).toBe(0);
    const depth = answer.pastLimitDepthM ?? NaN;
    for (const { depthM, waterFraction } of answer.profile) expect(waterFraction >= 0.05).toBe(depthM <= depth);
  });

  it('gives its reason in one sentence', () => {
    const air = evenAir(22, 0.48, 9);
    expect(answerOf(after(jar({ air }), 19)).reason).toMatch(
      /^open 19 h at 48 % RH, 22 °C; the top \d+ mm is past 5 %$/,
    );
    expect(answerOf(after(jar({ air, lid: 'tight' }), 30)).reason).toMatch(
      /^closed tight, 48 % RH, 22 °C outside; next scoop 1(\.\d)? % of at most 5 %$/,
    );
    expect(answerOf(after(jar({ air, depthMm: 5, headspaceMm: 0 }), 190)).reason).toMatch(
      /^open 8 d at .*; all of it is past 5 %$/,
    );
    expect(answerOf(after({ ...jar({ air }), airs: new Map() }, 5)).reason).toMatch(/no air record: weigh first/);
  });

  it('tells of a plate that its activation is lost within minutes, beside what was measured', () => {
    const answer = answerOf(after(plateBox(evenAir(22, 0.5, 1)), 0.1));
    expect(answer.minutesToRoomEquilibrium ?? NaN).toBeGreaterThan(3);
    expect(answer.minutesToRoomEquilibrium ?? NaN).toBeLessThan(30);
    expect(answer.reason).toMatch(/in equilibrium with the room within about \d+ min$/);
    const minutes = answer.minutesToRoomEquilibrium ?? NaN;
    const end = answerOf(after(plateBox(evenAir(22, 0.5, 1), { start: 0 }), 20)).meanWaterFraction;
    const then = answerOf(after(plateBox(evenAir(22, 0.5, 1), { start: 0 }), minutes / 60)).meanWaterFraction;
    expect(then / end).toBeCloseTo(0.95, 2);
  });

  it('says condensing above 95 % RH and of water that nothing holds', () => {
    expect(answerOf(after(jar({ air: evenAir(20, 0.99, 40), depthMm: 1, headspaceMm: 0 }), 30 * 24)).condensing).toBe(
      true,
    );
    expect(answerOf(after(jar({ air: evenAir(20, 0.5, 2), start: 0.9 }), 1)).condensing).toBe(true);
    expect(answerOf(after(jar({ air: evenAir(20, 0.5, 2) }), 1)).condensing).toBe(false);
  });

  it('grades alumina by the water nearest to the table: I, II at 3 %, III at 6 % of the whole', () => {
    const total = (percent: number) => percent / 100 / (1 - percent / 100);
    for (const [percent, grade] of [
      [0, 'I'],
      [1.4, 'I'],
      [3, 'II'],
      [6, 'III'],
      [10, 'IV'],
      [15, 'V'],
    ] as const) {
      expect(gradeOf(aluminaGrades, total(percent))).toBe(grade);
    }
    expect(gradeOf(null, 0.03)).toBeNull();
    const answer = answerOf(
      after(jar({ air: evenAir(25, 0.5, 4), sorbent: 'alumina', start: 0.003, depthMm: 10, upper: 0.03 }), 70),
    );
    expect(answer.grade).toBe('III');
  });

  it('counts a habit as the time it leaves the lid off', () => {
    const air = evenAir(25, 0.6, 9);
    const habit = { timesPerDay: 4, openSeconds: 900, fromS: 8 * hour, toS: 18 * hour };
    const bare = jar({ air, lid: 'tight', start: 0 });
    const held = foldExposure(after({ ...bare, start: { ...bare.start, habit } }, 7 * 24)).waterGainedKg;
    const never = foldExposure(after(bare, 7 * 24)).waterGainedKg;
    const openings = Array.from(
      { length: 28 },
      (_, i) => dayZero + Math.floor(i / 4) * 86_400 + (8 + 2.5 * (i % 4)) * hour,
    ).flatMap((atS) => [
      { atS, kind: 'opened' } as const,
      { atS: atS + 900, kind: 'closed', closure: 'tight' } as const,
    ]);
    const logged = foldExposure(after({ ...bare, actions: openings }, 7 * 24)).waterGainedKg;
    expect(held).toBeGreaterThan(2 * never);
    expect(Math.abs(held / logged - 1)).toBeLessThan(0.1);
  });
});
