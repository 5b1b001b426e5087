// Damaged files: never a crash, never nonsense among the readings, and an untouched line still means what it meant.
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { LoggerFile } from '../../../api/climate/logger/file.ts';
import { HUMIDITY, TEMPERATURE } from '../../../api/climate/logger/file.ts';
import { isLoggerFile, readLogger, readText } from '../../../api/climate/logger/read.ts';
import { air, bytesOf, labZone } from './air.ts';

const runs = process.env['LONG'] === '1' ? 10_000 : 1000;

const fixtures = readdirSync(fileURLToPath(new URL('../../../fixtures/loggers/', import.meta.url)));

interface Damage {
  how: 'set' | 'cut' | 'insert' | 'repeat' | 'swap' | 'end' | 'zeros';
  at: number;
  size: number;
  byte: number;
}

const damages = fc.array(
  fc.record<Damage>({
    how: fc.constantFrom('set', 'cut', 'insert', 'repeat', 'swap', 'end', 'zeros'),
    at: fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true }),
    size: fc.integer({ min: 1, max: 60 }),
    byte: fc.oneof(
      fc.integer({ min: 0, max: 255 }),
      fc.constantFrom(...'0123456789,;.:-/"\n\t '.split('').map((sign) => sign.charCodeAt(0))),
    ),
  }),
  { minLength: 1, maxLength: 4 },
);

function damaged(bytes: Uint8Array, damage: readonly Damage[], from = 0): Uint8Array {
  return damage.reduce<Uint8Array>((whole, { how, at, size, byte }) => {
    const place = from + Math.floor(at * Math.max(1, whole.length - from));
    const [before, piece, after] = [
      whole.subarray(0, place),
      whole.subarray(place, place + size),
      whole.subarray(place + size),
    ];
    if (how === 'set') return Buffer.concat([before, Uint8Array.of(byte), whole.subarray(place + 1)]);
    if (how === 'insert') return Buffer.concat([before, Uint8Array.of(byte), piece, after]);
    if (how === 'repeat') return Buffer.concat([before, piece, piece, after]);
    if (how === 'swap') return Buffer.concat([before, after.subarray(0, size), piece, after.subarray(size)]);
    if (how === 'zeros') return Buffer.concat([before, new Uint8Array(piece.length), after]);
    return how === 'end' ? before : Buffer.concat([before, after]);
  }, bytes);
}

/** Everything that is kept could have been read by a sensor, once, at a time that a logger has. */
function expectSense(file: LoggerFile): void {
  for (const { quantity, readings, first, last, min, max } of air(file)) {
    const { atMs, values, lines } = readings;
    expect([values.length, lines.length]).toEqual([atMs.length, atMs.length]);
    expect(lines.every((line) => line >= 1)).toBe(true);
    if (first === null || last === null || min === null || max === null) continue;
    expect(atMs.every((ms, i) => i === 0 || ms > (atMs[i - 1] ?? Infinity))).toBe(true);
    expect(first).toBeGreaterThanOrEqual(Date.UTC(1990, 0, 1) - 86_400_000);
    expect(last).toBeLessThan(Date.UTC(2100, 0, 2));
    const [low, high] = quantity === TEMPERATURE ? [-90, 100] : [-3, 105];
    expect(min).toBeGreaterThanOrEqual(low);
    expect(max).toBeLessThanOrEqual(high);
    expect(values.every((value) => value >= min && value <= max)).toBe(true);
  }
  expect(file.leftOut.every(({ line, why }) => line >= 1 && why !== '')).toBe(true);
  expect(file.understood).not.toBe('');
}

test(
  'a damaged file of any dialect is read with sense, or called what it is',
  async () => {
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...fixtures), damages, async (name, damage) => {
        const file = await readLogger(damaged(bytesOf(name), damage), name, { labZone });
        if (isLoggerFile(file)) expectSense(file);
        else expect(file.is).not.toBe('');
      }),
      { numRuns: runs, seed: 20260315 },
    );
  },
  runs * 600,
);

const HEADING = 'time;temperature [°C];humidity [%]\n';

/** A day of ten-minute readings, each line different from all others. */
const truth = Array.from({ length: 144 }, (_, i) => {
  const atMs = Date.UTC(2026, 2, 13, 5) + i * 600_000;
  const [temperatureC, humidityPercent] = [(2000 + 3 * i) / 100, (6000 - 7 * i) / 100];
  const [date, time] = [
    new Date(atMs + 3_600_000).toISOString().slice(0, 10),
    new Date(atMs + 3_600_000).toISOString().slice(11, 19),
  ];
  const text = `${date.split('-').reverse().join('/')} ${time};${temperatureC.toFixed(2)};${humidityPercent.toFixed(2)}`;
  return { text, atMs, temperatureC, humidityPercent };
});

/** The heading and the first rows stay whole: damage there may change what every line means. */
const whole = Buffer.byteLength(
  HEADING +
    truth
      .slice(0, 20)
      .map(({ text }) => `${text}\n`)
      .join(''),
);
const sound = new TextEncoder().encode(HEADING + truth.map(({ text }) => `${text}\n`).join(''));
const byText = new Map(truth.map((row) => [row.text, row]));

function readByLine(file: LoggerFile, quantity: string): Map<number, { atMs: number; value: number }> {
  const read = new Map<number, { atMs: number; value: number }>();
  for (const { readings } of file.series.filter((one) => one.quantity === quantity)) {
    readings.lines.forEach((line, i) =>
      read.set(line, { atMs: readings.atMs[i] ?? NaN, value: readings.values[i] ?? NaN }),
    );
  }
  return read;
}

test(
  'a line that was not damaged gives its own reading at its own time, or is named among those left out',
  () => {
    fc.assert(
      fc.property(damages, (damage) => {
        const bytes = damaged(sound, damage, whole);
        const file = readText(bytes, 'air.csv', { labZone });
        if (!isLoggerFile(file)) throw new Error(`read as ${file.is}`);
        expectSense(file);
        expect(file.questions).toEqual([]);
        const lines = new TextDecoder().decode(bytes).split(/\r\n|\r|\n/);
        const leftOut = new Set(file.leftOut.map(({ line }) => line));
        for (const [quantity, of] of [
          [TEMPERATURE, 'temperatureC'],
          [HUMIDITY, 'humidityPercent'],
        ] as const) {
          const read = readByLine(file, quantity);
          const wrong = lines.flatMap((text, index) => {
            const [meant, found] = [byText.get(text), read.get(index + 1)];
            if (meant === undefined || (found === undefined && leftOut.has(index + 1))) return [];
            return found?.atMs === meant.atMs && found.value === meant[of] ? [] : [{ line: index + 1, text, found }];
          });
          expect(wrong).toEqual([]);
        }
      }),
      { numRuns: runs, seed: 20260316 },
    );
  },
  runs * 600,
);
