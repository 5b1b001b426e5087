// Trays of a table beside the same equations on a far finer grid.
import { describe, expect, it } from 'vitest';
import measured from '../../../fixtures/measured/tray-fine-grid.json' with { type: 'json' };
import { deepestM } from '../../../api/science/tray/deepest.ts';
import { forecast } from '../../../api/science/tray/forecast.ts';
import { loadOf } from '../../../api/science/tray/load.ts';
import { trayOf } from './trays.ts';

describe('a tray on forty cells', () => {
  for (const { name, sorbent, depthMm, start, oven, at, minutesTo } of measured.cases) {
    it(`dries ${depthMm} mm of ${sorbent} in ${oven.kind} at ${oven.temperatureC} °C as three hundred cells do (${name})`, () => {
      const { moments, crossings } = forecast(loadOf(trayOf({ sorbent, depthMm, start, oven })), {
        atS: at.map(([minutes]) => 60 * minutes!),
        targets: [0.01],
        mostS: 86_400,
        profileAtS: null,
      });
      for (const [i, [, mean, wettest, centreC]] of at.entries()) {
        expect(Math.abs(moments[i]!.mean - mean!)).toBeLessThan(Math.max(0.01 * mean!, 1e-4));
        expect(Math.abs(moments[i]!.wettest - wettest!)).toBeLessThan(Math.max(0.02 * wettest!, 2e-4));
        expect(Math.abs(moments[i]!.centreC - centreC!)).toBeLessThan(0.5);
      }
      if (!minutesTo) return;
      expect(Math.abs(crossings[0]!.meanS! / 60 / minutesTo[0]! - 1)).toBeLessThan(0.01);
      expect(Math.abs(crossings[0]!.wettestS! / 60 / minutesTo[1]! - 1)).toBeLessThan(0.01);
    });
  }

  for (const { sorbent, start, oven, minutes, wettest, deepestMm } of measured.deepest) {
    it(`is at most ${deepestMm} mm deep in ${oven.kind} at ${oven.temperatureC} °C for ${minutes} min`, () => {
      const depthM = deepestM(trayOf({ sorbent, start, oven }), wettest, 'wettest', 60 * minutes);
      expect(Math.abs((1000 * depthM!) / deepestMm - 1)).toBeLessThan(0.01);
    });
  }
});
