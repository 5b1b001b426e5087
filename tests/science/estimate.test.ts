// The estimate command, run as a person runs it.
import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';

const folder = mkdtempSync(join(tmpdir(), 'estimate-'));
afterAll(() => rmSync(folder, { recursive: true }));

const scenario = {
  sorbent: 'silica',
  container: { bedDepthMm: 120, bedDiameterMm: 90, headspaceMm: 30, mouthDiameterMm: 90, volumeL: 1, closure: 'open' },
  start: { at: '2026-03-02T08:00:00Z', waterFraction: 0 },
  climate: [{ at: '2026-03-02T08:00:00Z', temperatureC: 25, humidityPercent: 50 }],
  limitWaterFraction: 0.05,
  lowestWaterFraction: null,
  scoopGrams: 50,
  topMm: 10,
  report: ['2026-03-03T08:00:00Z'],
};

interface Outcome {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

function run(input: unknown, name = 'scenario.json'): Promise<Outcome> {
  const file = join(folder, name);
  writeFileSync(file, typeof input === 'string' ? input : JSON.stringify(input));
  return new Promise((resolve) => {
    execFile(process.execPath, ['--import', 'tsx', 'api/commands/estimate.ts', file], (error, out, err) => {
      resolve({ code: error ? Number(error.code) : 0, out, err });
    });
  });
}

describe('the estimate command', () => {
  it('prints the fine-grid value of silica open for a day, in every field that scripts rely on', async () => {
    const { code, out } = await run(scenario);
    expect(code).toBe(0);
    const { exposure, waterGainedGrams, steps } = JSON.parse(out) as {
      exposure: Record<string, unknown>[];
      waterGainedGrams: number;
      steps: number;
    };
    expect(Object.keys(exposure[0] ?? {})).toEqual([
      'at',
      'meanWaterFraction',
      'topWaterFraction',
      'scoopWaterFraction',
      'low',
      'high',
      'scoopLow',
      'scoopHigh',
      'chancePastLimit',
      'hoursToLimit',
      'state',
      'reason',
    ]);
    expect(Math.abs(Number(exposure[0]?.['meanWaterFraction']) - 0.0059)).toBeLessThan(5e-5);
    expect(Math.abs(Number(exposure[0]?.['topWaterFraction']) - 0.04645)).toBeLessThan(1.4e-4);
    expect(exposure[0]?.['state']).toBe('USE_SOON');
    expect(Math.abs(waterGainedGrams / (381.7 * 0.0059) - 1)).toBeLessThan(0.01);
    expect(steps).toBeGreaterThan(5);
  });

  it('follows events, a lab’s own sorbent, a plate, and a logger’s file', async () => {
    writeFileSync(
      join(folder, 'air.csv'),
      'time;temperature (°C);humidity (%)\n2026-03-02 08:00:00;25,0;50,0\n2026-03-04 08:00:00;25,0;50,0\n',
    );
    const outcomes = await Promise.all([
      run({ ...scenario, climate: { file: 'air.csv', zone: 'UTC', dates: 'day-first' } }, 'file.json'),
      run(
        {
          ...scenario,
          events: [
            { at: '2026-03-02T16:00:00Z', type: 'closed', closure: 'tight' },
            { at: '2026-03-02T20:00:00Z', type: 'taken', grams: 50 },
            { at: '2026-03-03T00:00:00Z', type: 'weighed', waterFraction: 0.004 },
          ],
        },
        'events.json',
      ),
      run(
        {
          ...scenario,
          sorbent: {
            isotherm: { filmCapacity: 0.05, filmC: 5, filmK: 0.8 },
            bulkDensityKgPerM3: 600,
            voidFraction: 0.4,
          },
        },
        'own.json',
      ),
      run({ ...scenario, container: { kind: 'plate', layerMm: 0.25, areaCm2: 400, closure: 'open' } }, 'plate.json'),
      run({ ...scenario, start: { ...scenario.start, waterFraction: null } }, 'unknown.json'),
    ]);
    const first = outcomes.map(({ code, out, err }) => {
      expect(err).toBe('');
      expect(code).toBe(0);
      return (JSON.parse(out) as { exposure: { meanWaterFraction: number; state: string; reason: string }[] })
        .exposure[0];
    });
    expect(Math.abs((first[0]?.meanWaterFraction ?? NaN) - 0.0059)).toBeLessThan(5e-5);
    expect(first[1]?.meanWaterFraction).toBeGreaterThan(0.004);
    expect(first[1]?.meanWaterFraction).toBeLessThan(0.0042);
    expect(first[3]?.meanWaterFraction).toBeCloseTo(0.095, 2);
    expect(first[3]?.reason).toMatch(/in equilibrium with the room/);
    expect(first[4]?.state).toBe('UNKNOWN');
  });

  it('refuses what cannot be in one line with its path, and ends with 1', async () => {
    const wrong: [unknown, string][] = [
      [
        { ...scenario, container: { ...scenario.container, bedDepthMm: -3 } },
        'invalid container.bedDepthMm: -3, expected a length in mm above 0',
      ],
      [{ ...scenario, sorbent: 'silca' }, 'unknown sorbent: "silca", expected one of silica'],
      [{ ...scenario, climate: undefined }, 'missing climate, expected'],
      [
        { ...scenario, climate: [{ at: '2026-03-02T08:00:00Z', temperatureC: 25, humidityPercent: 150 }] },
        'invalid climate[0].humidityPercent: 150',
      ],
      [{ ...scenario, climate: { file: 'nowhere.csv' } }, 'invalid climate.file: "nowhere.csv"'],
      [
        { ...scenario, events: [{ at: '2026-03-02T09:00:00Z', type: 'taken', grams: 900 }] },
        'invalid events[0].grams: 900, expected at most the 381.7 g',
      ],
      [
        { ...scenario, report: ['2026-03-01T08:00:00Z'] },
        'invalid report[0]: "2026-03-01T08:00:00Z", expected not before start.at',
      ],
      [{ ...scenario, lidClosed: true }, 'unknown lidClosed: true'],
      ['{ "sorbent": ', 'invalid FILE:'],
    ];
    const outcomes = await Promise.all(wrong.map(([input], i) => run(input, `wrong${i}.json`)));
    for (const [i, { code, out, err }] of outcomes.entries()) {
      expect(err).toContain(wrong[i]?.[1]);
      expect(err.trim().split('\n')).toHaveLength(1);
      expect(code).toBe(1);
      expect(out).toBe('');
    }
  });
});
