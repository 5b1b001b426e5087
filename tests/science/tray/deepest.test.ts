// The deepest tray of a recipe, and whether heat or vapour holds a tray back.
import { describe, expect, it } from 'vitest';
import { deepestM, secondsTo } from '../../../api/science/tray/deepest.ts';
import { limitOf } from '../../../api/science/tray/limits.ts';
import { loadOf } from '../../../api/science/tray/load.ts';
import { trayOf } from './trays.ts';

const hour = 3600;

describe('the deepest tray of a recipe', () => {
  it('just dries in the time, and no deeper one does', () => {
    for (const sorbent of ['silica', 'alumina', 'cellulose']) {
      const tray = trayOf({ sorbent, oven: { kind: 'air', fan: true, temperatureC: 110 } });
      const depthM = deepestM(tray, 0.012, 'mean', hour)!;
      const needed = (share: number): number =>
        secondsTo(loadOf({ ...tray, depthM: share * depthM }), 0.012, 'mean', 1e6);
      expect(needed(1)).toBeGreaterThan(0.998 * hour);
      expect(needed(1)).toBeLessThan(1.002 * hour);
      expect(needed(1.02)).toBeGreaterThan(hour);
    }
  });

  it('does not depend on the depth somebody had in mind', () => {
    const depths = [2, 10, 80].map((depthMm) => deepestM(trayOf({ depthMm }), 0.01, 'wettest', hour));
    expect(new Set(depths).size).toBe(1);
  });

  it('is none where even a millimetre stays too wet', () => {
    // 120 °C and room air leave 0.31 % in silica.
    expect(deepestM(trayOf(), 0.003, 'mean', hour)).toBeNull();
    expect(deepestM(trayOf(), 0.01, 'mean', 60)).toBeNull();
  });

  it('is a hundred millimetres, the most it is asked for, where that dries or is dry', () => {
    expect(deepestM(trayOf({ start: 0.008 }), 0.01, 'mean', hour)).toBe(0.1);
    expect(deepestM(trayOf(), 0.01, 'mean', 48 * hour)).toBe(0.1);
  });
});

describe('what holds a tray back', () => {
  const limitIn = (oven: { kind: string; temperatureC: number; fan?: boolean }, filmM?: number) => {
    const tray = trayOf({ oven });
    const exchange = filmM === undefined ? tray.oven.exchange : { ...tray.oven.exchange, filmM };
    return limitOf(loadOf({ ...tray, oven: { ...tray.oven, exchange } }), 0.01, 'wettest', 1e6)!;
  };

  it('is heat in vacuum', () => {
    expect(limitIn({ kind: 'vacuum', temperatureC: 130 }).by).toBe('heat');
  });

  it('is vapour under a lid of half a metre of still air', () => {
    expect(limitIn({ kind: 'air', fan: true, temperatureC: 120 }, 0.5).by).toBe('vapour');
  });

  it('is heat and vapour together: both a tenth freer, and the time is about a tenth shorter', () => {
    for (const oven of [
      { kind: 'air', temperatureC: 120 },
      { kind: 'air', fan: true, temperatureC: 140 },
      { kind: 'vacuum', temperatureC: 130 },
    ]) {
      const { heat, vapour } = limitIn(oven);
      expect(heat).toBeGreaterThan(0);
      expect(vapour).toBeGreaterThan(0);
      expect(Math.abs(heat + vapour - 1)).toBeLessThan(0.1);
    }
  });

  it('is not told of a target that is never reached or already met', () => {
    expect(limitOf(loadOf(trayOf()), 0.002, 'mean', 1e5)).toBeNull();
    expect(limitOf(loadOf(trayOf()), 0.2, 'mean', 1e5)).toBeNull();
  });
});
