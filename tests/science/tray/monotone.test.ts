// What makes a tray dry later: depth, a cooler oven, wetter or thicker air, more water.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { secondsTo } from '../../../api/science/tray/deepest.ts';
import { loadOf, type Tray } from '../../../api/science/tray/load.ts';
import { after, ovenOf, trayOf } from './trays.ts';

// What two runs may differ by from their steps alone.
const slack = 1e-4;
const sorbent = fc.constantFrom('silica', 'alumina', 'magnesium silicate', 'cellulose');
const kind = fc.constantFrom('air', 'vacuum');
const depthMm = fc.double({ min: 2, max: 40, noNaN: true });
const temperatureC = fc.double({ min: 60, max: 150, noNaN: true });
const start = fc.double({ min: 0.01, max: 0.07, noNaN: true });
// Wetter than a cold load would become in the chamber's air: it only dries.
const wetStart = fc.double({ min: 0.055, max: 0.1, noNaN: true });
const minutes = fc.double({ min: 5, max: 300, noNaN: true });
const more = fc.double({ min: 1.05, max: 2, noNaN: true });
const runs = { numRuns: 40, endOnFailure: true };

describe('a tray stays wetter', () => {
  it('the deeper it is', () => {
    fc.assert(
      fc.property(sorbent, kind, depthMm, temperatureC, wetStart, minutes, more, (...given) => {
        const [of, oven, depth, celsius, water, time, factor] = given;
        const words = { sorbent: of, start: water, oven: { kind: oven, temperatureC: celsius, waterMbar: 5 } };
        const shallow = trayOf({ ...words, depthMm: depth });
        const deep = trayOf({ ...words, depthMm: depth * factor });
        expect(after(deep, time).mean).toBeGreaterThan(after(shallow, time).mean - slack);
        // The wettest spot is first wetted by the vapour of its neighbours, so it is the time to dry that counts.
        const [soon, late] = [shallow, deep].map((tray) => secondsTo(loadOf(tray), 0.7 * water, 'wettest', 1e6));
        expect(late!).toBeGreaterThan(soon! * 0.99);
      }),
      runs,
    );
  });

  it('the cooler the oven', () => {
    fc.assert(
      fc.property(sorbent, kind, depthMm, temperatureC, start, minutes, (of, oven, depth, celsius, water, time) => {
        const words = { sorbent: of, depthMm: depth, start: water };
        const cool = after(trayOf({ ...words, oven: { kind: oven, temperatureC: celsius } }), time);
        const hot = after(trayOf({ ...words, oven: { kind: oven, temperatureC: celsius + 15 } }), time);
        expect(cool.mean).toBeGreaterThan(hot.mean - slack);
      }),
      runs,
    );
  });

  it('the wetter the oven’s air', () => {
    fc.assert(
      fc.property(sorbent, depthMm, temperatureC, start, minutes, more, (of, depth, celsius, water, time, factor) => {
        const words = { sorbent: of, depthMm: depth, start: water };
        const dry = after(trayOf({ ...words, oven: { kind: 'air', temperatureC: celsius, waterMbar: 10 } }), time);
        const wet = after(
          trayOf({ ...words, oven: { kind: 'air', temperatureC: celsius, waterMbar: 10 * factor } }),
          time,
        );
        expect(wet.mean).toBeGreaterThan(dry.mean - slack);
      }),
      runs,
    );
  });

  it('the more air stands over it, when as much heat comes in (a harder vacuum also insulates)', () => {
    fc.assert(
      fc.property(
        sorbent,
        depthMm,
        temperatureC,
        wetStart,
        minutes,
        more,
        (of, depth, celsius, water, time, factor) => {
          const at = (pressureMbar: number): Tray => {
            const usual = trayOf({ sorbent: of, depthMm: depth, start: water });
            const oven = ovenOf({ kind: 'vacuum', temperatureC: celsius, pressureMbar, waterMbar: 5 });
            const { exchange } = ovenOf({ kind: 'vacuum', temperatureC: celsius });
            return { ...usual, conductivityWPerMK: 0.08, oven: { ...oven, exchange } };
          };
          expect(after(at(20 * factor * factor), time).mean).toBeGreaterThan(after(at(20), time).mean - slack);
        },
      ),
      runs,
    );
  });

  it('the wetter it went in', () => {
    fc.assert(
      fc.property(
        sorbent,
        kind,
        depthMm,
        temperatureC,
        start,
        minutes,
        more,
        (...[of, oven, depth, celsius, water, time, factor]) => {
          const words = { sorbent: of, depthMm: depth, oven: { kind: oven, temperatureC: celsius } };
          const less = after(trayOf({ ...words, start: water }), time);
          expect(after(trayOf({ ...words, start: water * factor }), time).mean).toBeGreaterThan(less.mean - slack);
        },
      ),
      runs,
    );
  });
});

describe('a load is wetter for the same minutes', () => {
  const vacuum = trayOf({ oven: { kind: 'vacuum', temperatureC: 130 } });
  const meanOf = (oven: Tray['oven'], trayHeatJPerM2K = vacuum.trayHeatJPerM2K): number =>
    after({ ...vacuum, oven, trayHeatJPerM2K }, 12).mean;
  const { oven } = vacuum;

  it('when the pump is small for its trays', () => {
    const pumped = (m3PerH: number): number =>
      meanOf({ ...oven, pump: { speedM3PerS: m3PerH / 3600, trayAreaM2: 0.1 } });
    expect(pumped(1)).toBeGreaterThan(pumped(10));
    expect(pumped(10)).toBeGreaterThan(meanOf(oven));
    // A pump without limit holds the chamber where no load would.
    expect(pumped(1e9)).toBeCloseTo(meanOf(oven), 6);
  });

  it('when the oven is still warming up, or the tray is heavy', () => {
    expect(meanOf({ ...oven, warmUpS: 600 })).toBeGreaterThan(meanOf(oven));
    expect(meanOf(oven, 4200)).toBeGreaterThan(meanOf(oven));
    expect(meanOf(oven)).toBeGreaterThan(meanOf(oven, 0));
  });
});

describe('the time to dry', () => {
  it('grows as depth to the power of 1.3 to 1.8 (rule of the drying model, 1.4 to 1.6)', () => {
    for (const oven of [
      { kind: 'air', temperatureC: 120 },
      { kind: 'vacuum', temperatureC: 130 },
    ]) {
      const minutesTo = (depth: number): number => {
        let [low, high] = [0, 2000];
        while (high - low > 0.05) {
          const middle = (low + high) / 2;
          if (after(trayOf({ depthMm: depth, oven }), middle).mean > 0.01) low = middle;
          else high = middle;
        }
        return high;
      };
      const power = Math.log2(minutesTo(20) / minutesTo(10));
      expect(power).toBeGreaterThan(1.3);
      expect(power).toBeLessThan(1.8);
    }
  });
});
