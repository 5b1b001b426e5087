// What a drying leaves in a container when depth and minutes are known: the tray model, started from the water that was there.
import { describe, expect, it } from 'vitest';
import { saturationPressurePa } from '../../api/science/air.ts';
import { foldExposure } from '../../api/science/exposure.ts';
import type { Action, FoldInput } from '../../api/science/history.ts';
import type { InOven } from '../../api/science/oven-dried.ts';
import { dryingIsotherm } from '../../api/science/residual.ts';
import { usualPressurePa } from '../../api/science/tray/oven.ts';
import { sorbentClass } from '../../api/science/properties.ts';
import { recipes } from '../../api/science/tray/recipes.ts';
import { after, dayZero, evenAir, hour, jar, noisyAir, numbersOf } from './support/lab.ts';
import { after as trayAfter, sorbentOf, trayOf } from './tray/trays.ts';

const isotherm = dryingIsotherm(numbersOf('silica').isotherm, 'silica');

/** An hour after midnight, out of an oven. */
const dried = (said: Partial<InOven> & { minutes?: number } = {}): Action => {
  const { minutes = 30, ...rest } = said;
  const oven = rest.oven ?? 'vacuum';
  return {
    kind: 'in oven',
    atS: dayZero + hour,
    temperatureC: 130,
    oven,
    pressurePa: usualPressurePa[oven],
    vapourPa: null,
    warmUpS: 0,
    seconds: 60 * minutes,
    depthM: 0.01,
    trayHeatJPerM2K: 2000,
    isotherm,
    sorbent: sorbentOf('silica'),
    openS: 0,
    times: 1,
    ...rest,
  };
};

/** 14 mbar at 22 °C, as the fine-grid table has its room. */
const air = evenAir(22, 1400 / saturationPressurePa(22), 3);
const shut = (depthMm: number, start = 0.1): FoldInput => jar({ air, depthMm, start, lid: 'sealed', startSdLn: 0 });

/** A second after the oven, so that nothing else has happened. */
const leftBy = (action: Action, input: FoldInput = shut(10)) =>
  foldExposure({ ...after(input, 1), actions: [action], asOfS: dayZero + hour }).answer;

describe('a drying of known depth and minutes', () => {
  it.each([
    ['vacuum', 130, 5, 0.05902, 0.09283],
    ['vacuum', 130, 15, 0.00822, 0.01109],
    ['vacuum', 130, 30, 0.00127, 0.00128],
    ['air', 120, 30, 0.03324, 0.04181],
    ['air', 120, 60, 0.00677, 0.00795],
  ] as const)(
    '10 mm of silica from 0.10 in %s at %i °C for %i min holds what an independent fine grid says',
    (oven, temperatureC, minutes, mean, wettest) => {
      const answer = leftBy(dried({ oven, temperatureC, minutes }));
      expect(Math.abs(answer.meanWaterFraction - mean)).toBeLessThan(Math.max(0.01 * mean, 1e-4));
      // The bed's cells are means, so that their wettest lies a little below the wettest spot.
      const most = Math.max(...answer.profile.map(({ waterFraction }) => waterFraction));
      expect(most).toBeLessThan(wettest * 1.02 + 2e-4);
      expect(most).toBeGreaterThan(0.93 * wettest - 2e-4);
    },
  );

  it('is unsure by thirty percent of its time, and by a factor of two of what the oven leaves', () => {
    const range = (minutes: number) => {
      const { low, high } = leftBy(dried({ minutes }));
      return high - low;
    };
    const half =
      (trayAfter(trayOf({ oven: { kind: 'vacuum', temperatureC: 130 } }), 10 / 1.3).mean -
        trayAfter(trayOf({ oven: { kind: 'vacuum', temperatureC: 130 } }), 10 * 1.3).mean) /
      2;
    expect(range(10)).toBeGreaterThan(2 * half);
    expect(range(10)).toBeGreaterThan(3 * range(60));
    // Never surer than 0.2 %, one sigma, or of a drier load than a factor of e.
    expect(range(600)).toBeGreaterThan(0.0025);
  });

  it('from a start that nobody knew is less sure', () => {
    const input = shut(10);
    const unknown: FoldInput = {
      ...input,
      start: { ...input.start, water: { kind: 'unknown', assumedWaterFraction: 0.1 } },
    };
    const sure = leftBy(dried({ minutes: 10 }));
    const unsure = leftBy(dried({ minutes: 10 }), unknown);
    expect(unsure.state).not.toBe('UNKNOWN');
    expect(unsure.high - unsure.low).toBeGreaterThan(1.2 * (sure.high - sure.low));
  });

  it('poured back into a jar it is mixed; dried as it lies it keeps its profile', () => {
    const spread = (depthMm: number) => {
      const water = leftBy(dried({ minutes: 10 }), shut(depthMm)).profile.map(({ waterFraction }) => waterFraction);
      return Math.max(...water) / Math.min(...water);
    };
    expect(spread(120)).toBeCloseTo(1, 9);
    expect(spread(10)).toBeGreaterThan(2);
  });

  it('of a lot that holds more, it is the tray model with an isotherm that much higher', () => {
    const more = 1.3;
    const sorbent = sorbentOf('silica');
    const scaled = {
      ...sorbent.isotherm,
      filmCapacity: more * sorbent.isotherm.filmCapacity,
      poreCapacity: more * sorbent.isotherm.poreCapacity,
      tailCapacity: more * sorbent.isotherm.tailCapacity,
    };
    const oven = { kind: 'vacuum', temperatureC: 130 };
    const tray = { ...trayOf({ oven }), sorbent: { ...sorbent, isotherm: scaled } };
    const input = { ...shut(10), factors: [{ factor: 'capacity', ln: Math.log(more), sd: 0.1 }] };
    expect(leftBy(dried({ minutes: 10 }), input).meanWaterFraction).toBeCloseTo(trayAfter(tray, 10).mean, 5);
  });

  it('without depth or minutes is what its temperature leaves in the room’s air', () => {
    const humid = { ...shut(10), airs: new Map([['room', evenAir(26, 0.7, 3)]]) };
    const leaving = dried({ oven: 'air', temperatureC: 105, depthM: null });
    const dry = leftBy(leaving).meanWaterFraction;
    expect(dry).toBeCloseTo(0.0048, 4);
    expect(leftBy(leaving, humid).meanWaterFraction).toBeGreaterThan(1.1 * dry);
    // The pump knows nothing of the room.
    const pumped = dried({ depthM: null });
    expect(leftBy(pumped, humid).meanWaterFraction).toBe(leftBy(pumped).meanWaterFraction);
  });

  it('a class without figures for drying is not guessed at: what its temperature leaves, however deep', () => {
    const one = leftBy(dried({ sorbent: null, depthM: 0.01 })).meanWaterFraction;
    expect(leftBy(dried({ sorbent: null, depthM: 0.08 })).meanWaterFraction).toBe(one);
    expect(sorbentClass('silica')).not.toBeNull();
  });
});

describe('between oven and desiccator', () => {
  const after = (minutes: number, depthMm: number) =>
    leftBy(dried({ minutes: 240, openS: 60 * minutes, depthM: depthMm / 1000 }), shut(120)).meanWaterFraction;

  it('an open tray takes up more the longer it stands and the shallower it lies', () => {
    const closed = after(0, 5);
    expect(after(10, 5)).toBeGreaterThan(closed);
    expect(after(30, 5)).toBeGreaterThan(after(10, 5));
    expect(after(30, 5) - after(0, 5)).toBeGreaterThan(1.5 * (after(30, 20) - after(0, 20)));
  });

  it('takes up no more than still air can bring to it', () => {
    // 3 mm/s of air that holds 10.3 g/m³, onto 5 mm of bed.
    const density = numbersOf('silica').bulkDensityKgPerM3;
    const most = (0.003 * 0.0103 * 1800) / (density * 0.005);
    const taken = after(30, 5) - after(0, 5);
    expect(taken).toBeLessThan(most);
    expect(taken).toBeGreaterThan(0.3 * most);
  });
});

describe('a history with an oven in it', () => {
  it('has the same digits from every checkpoint', () => {
    const room = noisyAir(5, 14);
    const input: FoldInput = {
      ...jar({ air: room, depthMm: 40, start: 0.04 }),
      actions: [
        { ...dried({ oven: 'air', minutes: 90, depthM: 0.04, openS: 1200 }), atS: dayZero + 30 * hour + 11 },
        { ...dried({ minutes: 20, depthM: 0.01 }), atS: dayZero + 100 * hour },
      ],
    };
    const late = after(input, 12 * 24 + 1);
    const whole = foldExposure(late);
    expect(whole.checkpoints.length).toBeGreaterThan(8);
    for (const checkpoint of whole.checkpoints) {
      expect(foldExposure({ ...late, checkpoint }).answer).toEqual(whole.answer);
    }
  });
});

describe('alumina after an oven', () => {
  const alumina = (actions: readonly Action[]) =>
    foldExposure({
      ...after(jar({ air, sorbent: 'alumina', depthMm: 10, start: 0.01, lid: 'sealed' }), 2),
      actions,
    }).answer.grade;
  const aluminaDried = (temperatureC: number, minutes: number, oven: 'vacuum' | 'air' = 'vacuum') =>
    dried({ temperatureC, minutes, oven, sorbent: sorbentOf('alumina') });

  it('is never grade I by any recipe, however long, whether measured or reckoned; hotter than 300 °C it can be', () => {
    for (const { temperatureC, minutes, name } of recipes) {
      for (const celsius of temperatureC) {
        for (const oven of ['vacuum', 'air'] as const) {
          expect(alumina([aluminaDried(celsius, 20 * minutes[1], oven)]), name).not.toBe('I');
        }
        const measured = {
          atS: dayZero + hour,
          kind: 'dried',
          waterFraction: 0,
          sd: 0.0015,
          driedAtC: celsius,
        } as const;
        expect(alumina([measured]), name).not.toBe('I');
      }
    }
    expect(alumina([aluminaDried(160, 600)])).toBe('II');
    expect(alumina([aluminaDried(350, 180)])).toBe('I');
    // Once hot enough, a later gentle drying takes that back: how active it still is nobody knows.
    const gentle = { ...aluminaDried(130, 600), atS: dayZero + hour + 600 };
    expect(alumina([aluminaDried(350, 180), gentle])).toBe('II');
  });

  it('hands that on with what is poured from it, and into what it is poured', () => {
    const source = {
      ...after(jar({ air, sorbent: 'alumina', depthMm: 40, start: 0.01, lid: 'sealed' as const }), 3),
      actions: [
        aluminaDried(160, 600),
        { atS: dayZero + 2 * hour, kind: 'taken' as const, id: 'some', dryKg: 0.02, openSeconds: 0 },
      ],
    };
    const [left] = foldExposure(source).handovers;
    expect(left?.handover.driedAtC).toBe(160);
    const fresh = { ...aluminaDried(400, 180), atS: dayZero + hour };
    const parts = left ? [{ dryKg: left.dryKg, handover: left.handover }] : [];
    expect(alumina([fresh])).toBe('I');
    expect(alumina([fresh, { atS: dayZero + hour + 60, kind: 'combined', parts }])).toBe('II');
  });
});
