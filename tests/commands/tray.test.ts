// The tray command as a person runs it: a file in, JSON out, one line on what is wrong.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import measured from '../../fixtures/measured/tray-fine-grid.json' with { type: 'json' };
import { BadInput } from '../../api/bad-input.ts';
import { trayInput } from '../../api/commands/tray/input.ts';
import { trayOf } from '../../api/commands/tray/load.ts';
import { command, type Ended } from '../support/command.ts';

const folder = mkdtempSync(join(tmpdir(), 'tray-'));
afterAll(() => rmSync(folder, { recursive: true }));

const input = {
  sorbent: 'silica',
  depthMm: 10,
  start: { waterFraction: 0.1, temperatureC: 22 },
  oven: { kind: 'air', temperatureC: 120 },
  minutes: 60,
};

async function tray(value: unknown): Promise<Ended> {
  const file = join(folder, 'tray.json');
  writeFileSync(file, typeof value === 'string' ? value : JSON.stringify(value));
  return command('tray', [file]);
}

interface Answer {
  at: {
    minutes: number;
    mean: number;
    meanAsReceived: number;
    wettest: number;
    wettestAtMm: number;
    centreC: number;
  }[];
  minutesTo: { target: number; mean: number | null; wettest: number | null }[];
  deepestMm: number | null;
  conductivityWPerMK: number;
  balance: { water: number; energy: number };
  profile: { mm: number; w: number; temperatureC: number }[];
}
async function answerOf(value: unknown): Promise<Answer> {
  const { code, stdout, stderr } = await tray(value);
  if (code !== 0) throw new Error(stderr);
  return JSON.parse(stdout) as Answer;
}

describe('the tray command', () => {
  it('tells water over time, minutes to targets, the deepest tray and the profile', async () => {
    const answer = await answerOf({
      ...input,
      atMinutes: [10, 30, 60],
      targets: [0.01, 0.001],
      deepest: { target: 0.01, of: 'wettest' },
    });
    const table = measured.cases.find(({ name }) => name === 'P1');
    const means = answer.at.map(({ minutes, mean }) => [minutes, mean]);
    const closeTo = (value: number | undefined, allowed: number): unknown =>
      expect.toSatisfy((given: number) => Math.abs(given - (value ?? NaN)) <= allowed);
    expect(means).toEqual(
      table?.at.map(([minutes, mean = NaN]) => [minutes, closeTo(mean, Math.max(1e-4, 0.01 * mean))]),
    );
    for (const { mean, meanAsReceived, wettestAtMm } of answer.at) {
      expect(meanAsReceived).toBeCloseTo(mean / (1 + mean), 12);
      expect(wettestAtMm).toBeGreaterThan(0);
      expect(wettestAtMm).toBeLessThanOrEqual(10);
    }
    const [mean, wettest] = table?.minutesTo ?? [];
    expect(answer.minutesTo).toEqual([
      { target: 0.01, mean: closeTo(mean, 0.5), wettest: closeTo(wettest, 0.5) },
      { target: 0.001, mean: null, wettest: null },
    ]);
    expect(answer.deepestMm).toBeGreaterThan(10);
    expect(answer.deepestMm).toBeLessThan(11.5);
    expect(answer.conductivityWPerMK).toBeCloseTo(0.1185, 4);
    expect(Math.abs(answer.balance.water)).toBeLessThan(1e-10);
    expect(Math.abs(answer.balance.energy)).toBeLessThan(1e-6);
    expect(answer.profile.at(0)?.mm).toBe(0);
    expect(answer.profile.at(-1)?.mm).toBe(10);
    expect(answer.profile.every(({ w }) => w > 0.003 && w < 0.01)).toBe(true);
  });

  it('takes the lab’s own numbers for sorbent, oven and tray', async () => {
    const answer = await answerOf({
      ...input,
      oven: {
        kind: 'vacuum',
        temperatureC: 130,
        pressureMbar: 20,
        waterMbar: 2,
        warmUpMinutes: 5,
        gapMm: 2,
        pumpM3PerH: 5,
        trayAreaM2: 0.05,
        coefficients: { topWPerM2K: 2, emissivityTop: 0.5, filmMm: 20, bottomWPerM2K: 25, emissivityBottom: 0.1 },
      },
      trayHeatJPerM2K: 4200,
      properties: {
        bulkDensityKgPerM3: 480,
        voidFraction: 0.42,
        particleUm: 40,
        heatCapacityJPerKgK: 900,
        conductivityWPerMK: 0.1,
        heatOfSorptionKJPerKg: 2700,
        isotherm: { filmCapacity: 0.05, tailCapacity: 0.008 },
      },
      atMinutes: [15],
    });
    expect(answer.conductivityWPerMK).toBe(0.1);
    expect(answer.at).toHaveLength(1);
    expect(answer.deepestMm).toBeNull();
    expect(answer.minutesTo).toEqual([]);
  });

  it('ends with one line on standard error', async () => {
    const missing = await tray({ ...input, depthMm: undefined });
    expect(missing).toEqual({ code: 1, stdout: '', stderr: 'missing depthMm, expected a depth of 0.1 to 500 mm\n' });
    const torn = await tray('{ "sorbent": ');
    expect(torn).toMatchObject({ code: 1, stdout: '' });
    expect(torn.stderr).toMatch(/^invalid FILE: [^\n]+\n$/);
  });

  it('says what is wrong, where, and what would be right', () => {
    const { oven } = input;
    const wrong: [unknown, string][] = [
      [[], 'invalid input: [], expected an object'],
      [{ ...input, sorbent: 'sand' }, 'unknown sorbent: "sand", expected one of silica, alumina, '],
      [{ ...input, oven: { ...oven, fan: 'yes' } }, 'invalid oven.fan: "yes", expected true or false'],
      [{ ...input, oven: { ...oven, colour: 'red' } }, 'unknown oven.colour: "red", expected no such field here'],
      [
        { ...input, start: { ...input.start, waterFraction: 0.9 } },
        'invalid start.waterFraction: 0.9, expected at most 0.77',
      ],
      [
        { ...input, oven: { ...oven, temperatureC: 210 } },
        'invalid oven.temperatureC: 210, expected at most 200 for silica',
      ],
      [{ ...input, oven: { ...oven, waterMbar: 1100 } }, 'invalid oven.waterMbar: 1100, expected at most the pressure'],
      [
        { ...input, oven: { kind: 'vacuum', temperatureC: 90, fan: true } },
        'invalid oven.fan: true, expected false in a vacuum',
      ],
      [{ ...input, oven: { ...oven, pumpM3PerH: 5 } }, 'missing oven.trayAreaM2, expected the area of all trays'],
      [{ ...input, atMinutes: [10, -1] }, 'invalid atMinutes[1]: -1, expected minutes, 0 or more'],
      [{ ...input, deepest: { target: 0.01, of: 'driest' } }, 'unknown deepest.of: "driest", expected mean or wettest'],
    ];
    for (const [value, message] of wrong) {
      let said = '';
      try {
        trayOf(trayInput(value));
      } catch (error) {
        if (error instanceof BadInput) said = error.message;
      }
      expect(said.slice(0, message.length)).toBe(message);
    }
  });

  it('refuses air that would condense on the cold load', async () => {
    const { code, stderr } = await tray({
      ...input,
      sorbent: 'cellulose',
      start: { waterFraction: 0.02, temperatureC: 22 },
      oven: { kind: 'air', temperatureC: 56, waterMbar: 570 },
    });
    expect([code, stderr]).toEqual([
      1,
      'invalid oven.waterMbar: 570, expected air that does not condense on this load\n',
    ]);
  });
});
