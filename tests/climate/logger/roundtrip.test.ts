// Whatever dialect known air is written in, the same values at the same instants are read back.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { LoggerFile } from '../../../api/climate/logger/file.ts';
import { HUMIDITY, TEMPERATURE } from '../../../api/climate/logger/file.ts';
import { isLoggerFile, readText } from '../../../api/climate/logger/read.ts';
import { air, only } from './air.ts';
import { airs, dialects, SECOND, written } from './dialect.ts';
import type { Dialect, Row } from './dialect.ts';

const runs = process.env['LONG'] === '1' ? 10_000 : 1000;

const orders = ['day-first', 'month-first', 'year-first'] as const;

function readBack(rows: readonly Row[], dialect: Dialect): LoggerFile {
  const dates = orders.find((order) => order === dialect.date);
  const file = readText(written(rows, dialect), 'air.csv', { labZone: dialect.zone, ...(dates ? { dates } : {}) });
  if (!isLoggerFile(file)) throw new Error(`read as ${file.is}`);
  return file;
}

test(
  'air written in any dialect is read back as it was',
  () => {
    fc.assert(
      fc.property(airs, dialects, (rows, dialect) => {
        const file = readBack(rows, dialect);
        expect([file.questions, file.leftOut]).toEqual([[], []]);
        const sensors = dialect.sensors === 'one' ? [['air', 0] as const] : [['A12', 0] as const, ['B07', 1] as const];
        expect(air(file)).toHaveLength(sensors.length * 2);
        for (const [sensor, more] of sensors) {
          const [warm, damp] = [only(file, TEMPERATURE, sensor), only(file, HUMIDITY, sensor)];
          for (const { readings } of [warm, damp])
            expect(Array.from(readings.atMs)).toEqual(rows.map(({ atMs }) => atMs));
          rows.forEach(({ temperatureC, humidityPercent }, i) => {
            expect(warm.readings.values[i]).toBeCloseTo(temperatureC + more * SECOND.temperatureC, 3);
            expect(damp.readings.values[i]).toBeCloseTo(humidityPercent + more * SECOND.humidityPercent, 3);
          });
        }
      }),
      { numRuns: runs, seed: 20260314 },
    );
  },
  runs * 600,
);
