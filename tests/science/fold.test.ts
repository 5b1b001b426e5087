// A history folded in one go, in pieces and from checkpoints: the same digits.
import { describe, expect, it } from 'vitest';
import { worthKeeping } from '../../api/science/checkpoint.ts';
import { daySeconds } from '../../api/science/climate.ts';
import { foldExposure } from '../../api/science/exposure.ts';
import type { Action, Checkpoint, FoldInput, Handover } from '../../api/science/history.ts';
import { waterAt, waterSeries } from '../../api/science/series.ts';
import { after, dayZero, dice, evenAir, hour, jar, noisyAir, plateBox } from './support/lab.ts';

const busy: readonly Action[] = [
  { atS: dayZero + 7 * hour, kind: 'closed', closure: 'tight' },
  { atS: dayZero + 30 * hour + 17, kind: 'taken', id: 'scoop', dryKg: 0.04, openSeconds: 300 },
  {
    atS: dayZero + 48 * hour,
    kind: 'habit',
    habit: { timesPerDay: 3, openSeconds: 600, fromS: 7 * hour, toS: 16 * hour },
  },
  { atS: dayZero + 75 * hour, kind: 'moved', room: 'cold' },
  { atS: dayZero + 100 * hour, kind: 'opened' },
  { atS: dayZero + 110 * hour, kind: 'mixed' },
  { atS: dayZero + 111 * hour, kind: 'closed', closure: 'well closed' },
  { atS: dayZero + 160 * hour, kind: 'observed', of: 'scoop', waterFraction: 0.03, sd: 0.0015 },
  { atS: dayZero + 9 * daySeconds, kind: 'counted', dryKg: 0.3, plates: 1 },
  { atS: dayZero + 10 * daySeconds + 5, kind: 'dried', waterFraction: 0.004, sd: 0.001 },
];

function history(): FoldInput {
  const airs = new Map([
    ['room', noisyAir(3, 16)],
    ['cold', noisyAir(4, 16, 6, 0.6)],
  ]);
  return { ...jar({ air: noisyAir(3, 16) }), airs, actions: busy };
}

const water = (input: FoldInput): number => foldExposure(input).answer.meanWaterFraction;

describe('the fold of a history', () => {
  it('gives the same bits from the start as day by day from checkpoints, whenever somebody asked', () => {
    const input = history();
    const roll = dice(11);
    const whole = foldExposure(after(input, 13 * 24 + 5.3));
    let checkpoint: Checkpoint | null = null;
    for (let hours = 2; hours < 13 * 24; hours += 3 + 20 * roll()) {
      const { checkpoints } = foldExposure({ ...after(input, hours), checkpoint });
      checkpoint = checkpoints.at(-1) ?? checkpoint;
    }
    expect(checkpoint).not.toBeNull();
    const last = foldExposure({ ...after(input, 13 * 24 + 5.3), checkpoint });
    expect(last.answer).toEqual(whole.answer);
    expect(last.waterGainedKg).toBe(whole.waterGainedKg);
    expect(last.steps).toBe(whole.steps);
    expect(last.checkpoints.at(-1)).toEqual(whole.checkpoints.at(-1));
  });

  it('gives the same from every checkpoint it leaves', () => {
    const input = after(history(), 12 * 24 + 1);
    const whole = foldExposure(input);
    expect(whole.checkpoints.length).toBeGreaterThan(10);
    for (const checkpoint of whole.checkpoints)
      expect(foldExposure({ ...input, checkpoint }).answer).toEqual(whole.answer);
  });

  it('keeps a checkpoint small', () => {
    for (const { bytes } of foldExposure(after(jar({ air: evenAir(22, 0.5, 9) }), 200)).checkpoints)
      expect(bytes.length).toBeLessThan(1600);
  });

  it('keeps checkpoints daily for eight days, then at doubling distances', () => {
    const today = 1000;
    const kept = Array.from({ length: 200 }, (_, age) => today - age).filter((day) =>
      worthKeeping(day * daySeconds, today * daySeconds),
    );
    expect(kept.slice(0, 9)).toEqual([1000, 999, 998, 997, 996, 995, 994, 993, 992]);
    expect(kept.length).toBeLessThan(30);
    for (const [i, day] of kept.entries())
      if (i > 0) expect(kept[i - 1]! - day).toBeLessThanOrEqual(Math.max(1, (today - day) / 4));
    // What is kept later was kept before: nothing is missing when it is wanted.
    for (const day of kept)
      for (let t = day; t < today; t++) expect(worthKeeping(day * daySeconds, t * daySeconds)).toBe(true);
  });

  it('opens a closed jar for a scoop and shuts it again', () => {
    const air = evenAir(25, 0.6, 3);
    const scoop: Action = { atS: dayZero + 5 * hour, kind: 'taken', id: 'a', dryKg: 1e-9, openSeconds: 300 };
    const shut = { ...jar({ air, lid: 'sealed' }), actions: [scoop] };
    expect(foldExposure(after(shut, 5.05)).answer.isOpen).toBe(true);
    expect(foldExposure(after(shut, 5.1)).answer.isOpen).toBe(false);
    const opened: Action[] = [
      { atS: scoop.atS, kind: 'opened' },
      { atS: scoop.atS + 300, kind: 'closed', closure: 'tight' },
    ];
    expect(Math.abs(water(after(shut, 20)) / water(after({ ...shut, actions: opened }, 20)) - 1)).toBeLessThan(1e-6);
  });

  it('takes the wet top with a scoop off the top, and a fair sample from the side or after rolling', () => {
    const air = evenAir(25, 0.5, 3);
    const take: Action = { atS: dayZero + 24 * hour, kind: 'taken', id: 'a', dryKg: 0.05, openSeconds: 0 };
    for (const scooping of ['top', 'side', 'rolled'] as const) {
      const input = { ...jar({ air, scooping }), actions: [take] };
      const before = foldExposure(after({ ...input, actions: [] }, 24)).answer;
      const { answer, handovers } = foldExposure(after(input, 24));
      const [left] = handovers;
      const taken = left?.handover.waterFraction ?? NaN;
      if (scooping === 'top') expect(taken).toBeGreaterThan(1.5 * before.meanWaterFraction);
      else expect(taken).toBeCloseTo(before.meanWaterFraction, 12);
      // Water is neither made nor lost.
      const kept = answer.dryKg * answer.meanWaterFraction + (left?.dryKg ?? NaN) * taken;
      expect(Math.abs(kept / (before.dryKg * before.meanWaterFraction) - 1)).toBeLessThan(1e-12);
      if (scooping === 'rolled') expect(answer.topWaterFraction).toBeCloseTo(answer.meanWaterFraction, 12);
      if (scooping === 'side') expect(answer.topWaterFraction).toBeGreaterThan(answer.meanWaterFraction);
    }
  });

  it('gains more through a headspace that has grown by what was taken no faster than without it', () => {
    const air = evenAir(25, 0.5, 4);
    const take: Action = { atS: dayZero + hour, kind: 'taken', id: 'a', dryKg: 0.2, openSeconds: 0 };
    const full = foldExposure(after(jar({ air, start: 0 }), 48)).waterGainedKg;
    const less = foldExposure(after({ ...jar({ air, start: 0 }), actions: [take] }, 48)).waterGainedKg;
    expect(less).toBeLessThan(full);
  });

  it('carries a portion’s doubts over to where it went', () => {
    const air = evenAir(25, 0.5, 4);
    const take: Action = { atS: dayZero + 24 * hour, kind: 'taken', id: 'a', dryKg: 0.05, openSeconds: 0 };
    const parent = { ...jar({ air }), actions: [take] };
    const { handovers } = foldExposure(after(parent, 24));
    const handover = handovers[0]?.handover as Handover;
    const before = foldExposure(after(jar({ air }), 24)).answer;
    const bare = jar({ air, key: 'portion' });
    const child = foldExposure({
      ...bare,
      start: { ...bare.start, atS: take.atS, water: { kind: 'handover', handover } },
      asOfS: take.atS,
    }).answer;
    expect(child.meanWaterFraction).toBeCloseTo(before.scoopWaterFraction, 12);
    expect(child.low).toBeCloseTo(before.scoopLow, 10);
    expect(child.high).toBeCloseTo(before.scoopHigh, 10);
    // Handovers travel as JSON and lose nothing.
    expect(JSON.parse(JSON.stringify(handover))).toEqual(handover);
  });

  it('mixes what is combined by mass, and is surer of two independent jars than of one', () => {
    const air = evenAir(25, 0.5, 3);
    const part = (waterFraction: number): Handover => ({
      waterFraction,
      factors: [{ factor: `start:tray${waterFraction}`, value: waterFraction }],
      startSdLn: 0.3,
      known: true,
    });
    const action: Action = {
      atS: dayZero,
      kind: 'combined',
      parts: [
        { dryKg: 0.2, handover: part(0.02) },
        { dryKg: 0.1, handover: part(0.05) },
      ],
    };
    const bare = jar({ air, start: 0.02, depthMm: 20, lid: 'sealed' });
    const { answer } = foldExposure({ ...bare, start: { ...bare.start, dryKg: 0.2 }, actions: [action] });
    expect(answer.dryKg).toBeCloseTo(0.5, 12);
    expect(answer.meanWaterFraction).toBeCloseTo((0.2 * 0.02 + 0.2 * 0.02 + 0.1 * 0.05) / 0.5, 12);
    const sd = Math.hypot(0.2 * 0.02 * 0.3, 0.2 * 0.02 * 0.3, 0.1 * 0.05 * 0.3) / 0.5;
    expect(Math.log(answer.high / answer.meanWaterFraction)).toBeCloseTo((1.645 * sd) / answer.meanWaterFraction, 9);
  });

  it('does not know what it was never told, until a weighing', () => {
    const air = evenAir(25, 0.5, 3);
    const bare = jar({ air });
    const unknown: FoldInput = {
      ...bare,
      start: { ...bare.start, water: { kind: 'unknown', assumedWaterFraction: 0.03 } },
    };
    expect(foldExposure(after(unknown, 5)).answer.state).toBe('UNKNOWN');
    const weighed: Action = { atS: dayZero + 6 * hour, kind: 'observed', of: 'whole', waterFraction: 0.02, sd: 0.001 };
    const told = foldExposure(after({ ...unknown, actions: [weighed] }, 6)).answer;
    expect(told.state).not.toBe('UNKNOWN');
    expect(told.meanWaterFraction).toBeCloseTo(0.02, 12);
    const noAir: FoldInput = { ...bare, airs: new Map() };
    expect(foldExposure(after(noAir, 5)).answer.state).toBe('UNKNOWN');
    expect(foldExposure(after(noAir, 5)).answer.meanWaterFraction).toBeCloseTo(0.01, 12);
    expect(foldExposure(after({ ...noAir, start: { ...bare.start, lid: 'sealed' } }, 50)).answer.state).toBe('GOOD');
  });

  it('puts a weighed scoop where it was found, and keeps the shape of the rest', () => {
    const air = evenAir(25, 0.5, 3);
    const action: Action = { atS: dayZero + 24 * hour, kind: 'observed', of: 'scoop', waterFraction: 0.02, sd: 0.001 };
    const before = foldExposure(after(jar({ air }), 24)).answer;
    const { answer } = foldExposure(after({ ...jar({ air }), actions: [action] }, 24));
    expect(answer.scoopWaterFraction).toBeCloseTo(0.02, 12);
    expect(answer.meanWaterFraction / before.meanWaterFraction).toBeCloseTo(0.02 / before.scoopWaterFraction, 10);
    expect(Math.log(answer.scoopHigh / 0.02)).toBeCloseTo((1.645 * 0.001) / 0.02, 9);
  });

  it('stands at its salt’s water after equilibrating, doubtful by capacity and humidity alone', () => {
    const air = evenAir(25, 0.5, 3);
    const action: Action = { atS: dayZero + hour, kind: 'equilibrated', humidity: 0.33, temperatureC: 25 };
    const { answer } = foldExposure(after({ ...jar({ air, depthMm: 10 }), actions: [action] }, 1));
    expect(answer.meanWaterFraction).toBeGreaterThan(0.061);
    expect(answer.meanWaterFraction).toBeLessThan(0.076);
    const sd = Math.log(answer.high / answer.meanWaterFraction) / 1.645;
    expect(sd).toBeGreaterThan(Math.log(1.3));
    expect(sd).toBeLessThan(Math.log(1.3) * 1.1);
  });

  it('takes no part while it is wetted', () => {
    const air = evenAir(25, 0.8, 3);
    const wet = { ...jar({ air }), actions: [{ atS: dayZero, kind: 'wetted' }] as const };
    expect(foldExposure(after(wet, 40)).answer.state).toBe('UNKNOWN');
    expect(water(after(wet, 40))).toBeCloseTo(0.01, 12);
  });

  it('a packed column that is wetted keeps its water, and what was said of it stays true', () => {
    const input = jar({ air: evenAir(25, 0.8, 3) });
    const column = { ...input.spec, geometry: { kind: 'column', areaM2: 7e-4, volumeM3: 1e-4 } } as const;
    const wet = { ...input, spec: column, actions: [{ atS: dayZero, kind: 'wetted' }] as const };
    const { answer } = foldExposure(after(wet, 40));
    expect(answer.meanWaterFraction).toBeCloseTo(0.01, 12);
    expect(answer.state).toBe('GOOD');
    expect(answer.hoursToLimit).toBeNull();
    expect(answer.reason).toContain('no more water from the air');
  });

  it('plots what it answers', () => {
    const input = after(history(), 150);
    const instants = [0, 10, 31, 80, 104, 150].map((hours) => dayZero + hours * hour);
    const series = waterSeries(input, instants);
    for (const [i, atS] of instants.entries()) {
      const at = waterAt({ ...input, asOfS: atS });
      expect(series[i]?.atS).toBe(atS);
      expect(Math.abs((series[i]?.mean ?? NaN) / at.mean - 1)).toBeLessThan(0.003);
      expect(Math.abs((series[i]?.scoop ?? NaN) / at.scoop - 1)).toBeLessThan(0.003);
      const { answer } = foldExposure({ ...input, asOfS: atS });
      expect([at.mean, at.low, at.high, at.scoop]).toEqual([
        answer.meanWaterFraction,
        answer.low,
        answer.high,
        answer.scoopWaterFraction,
      ]);
    }
  });

  it('shares a box’s air among all its plates, and hands plates on as they are', () => {
    const air = evenAir(25, 0.5, 4);
    const one = foldExposure(after(plateBox(air, { plates: 1, lid: 'tight' }), 24)).answer;
    const all = foldExposure(after(plateBox(air, { plates: 25, lid: 'tight' }), 24)).answer;
    expect(all.meanWaterFraction).toBeLessThan(one.meanWaterFraction);
    const taken: Action = { atS: dayZero + hour, kind: 'plates taken', id: 'three', plates: 3, openSeconds: 0 };
    const { answer, handovers } = foldExposure(after({ ...plateBox(air, { lid: 'tight' }), actions: [taken] }, 1));
    expect(answer.plates).toBe(22);
    expect(answer.dryKg).toBeCloseTo(22 * 0.004, 12);
    expect(handovers[0]?.dryKg).toBeCloseTo(3 * 0.004, 12);
    expect(handovers[0]?.handover.waterFraction).toBeCloseTo(answer.meanWaterFraction, 12);
  });
});
