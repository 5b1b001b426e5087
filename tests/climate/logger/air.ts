// The invented air of the fixtures and how tests read a file.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { HUMIDITY, TEMPERATURE } from '../../../api/climate/logger/file.ts';
import type { Answers, LoggerFile, NotALogger, Series } from '../../../api/climate/logger/file.ts';
import { isLoggerFile, readLogger } from '../../../api/climate/logger/read.ts';

/** Half-hourly from 22:30 on 14 March 2026: a date that is day-first or month-first beyond doubt. */
export const temperatureC = [21.4, 21.5, 21.7, 21.6, 21.2, 20.9];
export const humidityPercent = [44.8, 45.1, 45.9, 46.2, 44.0, 43.7];

/** The six instants when the first was read at `first` (UTC). */
export function halfHourly(first: string): string[] {
  return temperatureC.map((_, index) => new Date(Date.parse(first) + index * 1_800_000).toISOString());
}

const folder = fileURLToPath(new URL('../../../fixtures/loggers/', import.meta.url));

export const labZone = 'Europe/Berlin';

export function bytesOf(name: string): Uint8Array {
  return readFileSync(folder + name);
}

export function reading(name: string, answers: Partial<Answers> = {}): Promise<LoggerFile | NotALogger> {
  return readLogger(bytesOf(name), name, { labZone, ...answers });
}

export async function fixture(name: string, answers: Partial<Answers> = {}): Promise<LoggerFile> {
  const read = await reading(name, answers);
  if (!isLoggerFile(read)) throw new Error(`${name} is ${read.is}`);
  return read;
}

export function fromText(
  text: string,
  answers: Partial<Answers> = {},
  name = 'wet-bench.csv',
): Promise<LoggerFile | NotALogger> {
  return readLogger(new TextEncoder().encode(text), name, { labZone, ...answers });
}

export async function read(text: string, answers: Partial<Answers> = {}, name?: string): Promise<LoggerFile> {
  const file = await fromText(text, answers, name);
  if (!isLoggerFile(file)) throw new Error(`this is ${file.is}`);
  return file;
}

export const air = (file: LoggerFile): Series[] =>
  file.series.filter(({ quantity }) => quantity === TEMPERATURE || quantity === HUMIDITY);

/** Values to six decimals, as conversions leave tails. */
export const values = (series: Series | undefined): number[] =>
  Array.from(series?.readings.values ?? [], (value) => Number(value.toFixed(6)));

export const instants = (series: Series | undefined): string[] =>
  Array.from(series?.readings.atMs ?? [], (ms) => new Date(ms).toISOString());

export function only(file: LoggerFile, quantity: string, sensor?: string): Series {
  const found = file.series.filter(
    (one) => one.quantity === quantity && (sensor === undefined || one.sensor === sensor),
  );
  const [series] = found;
  if (found.length !== 1 || series === undefined)
    throw new Error(`${found.length} series of ${quantity} ${sensor ?? ''}`);
  return series;
}
