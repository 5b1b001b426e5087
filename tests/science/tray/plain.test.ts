// Trays beside the same equations in plain code under an off-the-shelf integrator.
import { describe, expect, it } from 'vitest';
import { plainTray } from './plain.ts';
import { after, trayOf } from './trays.ts';

describe('a tray', () => {
  it('dries as the same equations do in plain code under an explicit integrator, on cases of no table', () => {
    const cases = [
      {
        sorbent: 'alumina',
        depthMm: 15,
        start: 0.04,
        minutes: 40,
        oven: { kind: 'air', fan: true, temperatureC: 150, warmUpMinutes: 10 },
      },
      { sorbent: 'cellulose', depthMm: 12, start: 0.05, minutes: 20, oven: { kind: 'air', temperatureC: 95 } },
    ];
    for (const { minutes, ...words } of cases) {
      const tray = trayOf(words);
      const plain = plainTray(tray, 60 * minutes, 20, 1e-4);
      const { mean, centreC } = after(tray, minutes);
      // Twenty cells of the plain one err by most of this.
      expect(Math.abs(mean / plain.mean - 1)).toBeLessThan(0.015);
      expect(Math.abs(centreC - plain.centreC)).toBeLessThan(0.5);
    }
  }, 120_000);
});
