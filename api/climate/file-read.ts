// A logger's file ready to be imported: read, settled, and nothing in it from the future.
import { Refused } from '../errors.ts';
import { aheadMs } from './add-readings.ts';
import { HUMIDITY, type LoggerFile, type LeftOut, type Series as FileSeries, TEMPERATURE } from './logger/file.ts';
import { isLoggerFile } from './logger/read.ts';
import type { Answers } from './logger/file.ts';
import { readApart } from './read-apart.ts';
import { indexAt, type Quantity, type Series } from './series.ts';

export interface SensorSeries {
  sensor: string;
  quantity: Quantity;
  series: Series;
}

/** The file as read; refuses what is not a logger's file, naming it for what it is. */
export async function loggerFileOf(
  bytes: Uint8Array,
  fileName: string,
  answers: Answers,
  path: string,
): Promise<LoggerFile> {
  const read = await readApart(bytes, fileName, answers);
  if (isLoggerFile(read)) return read;
  const { is, expected } = read;
  throw new Refused(`invalid ${path}: ${fileName}, it is ${is}; expected ${expected}`, path, expected);
}

/** Refuses a file that leaves something open, with the choices. */
export function refuseOpen(file: LoggerFile, under: string): void {
  const question = file.questions[0];
  if (!question) return;
  const { asks, about, choices } = question;
  const path = under ? `${under}.${asks}` : asks;
  const expected = choices.length > 0 ? `one of ${choices.join(', ')}` : 'an answer';
  throw new Refused(`missing ${path}, ${about.replace(/^\w+: /, '')}`, path, expected);
}

const quantityOf = (series: FileSeries): Quantity | null =>
  series.quantity === TEMPERATURE ? 'TEMPERATURE' : series.quantity === HUMIDITY ? 'RELATIVE_HUMIDITY' : null;

/** The air's series up to now; what is later is left out by line, a clock that ran ahead. */
export function airSeries(
  file: LoggerFile,
  fileName: string,
  now: Date,
  path: string,
): { series: SensorSeries[]; future: LeftOut[] } {
  const future: LeftOut[] = [];
  const series = file.series.flatMap((one): SensorSeries[] => {
    const quantity = quantityOf(one);
    const { atMs, values, lines } = one.readings;
    if (quantity === null) return [];
    const end = indexAt(atMs, now.getTime() + aheadMs);
    for (let i = end; i < atMs.length; i++) {
      future.push({ line: lines[i] ?? 0, why: `${new Date(atMs[i] ?? 0).toISOString()} is in the future` });
    }
    if (end === 0) return [];
    return [{ sensor: one.sensor, quantity, series: { atMs: atMs.subarray(0, end), values: values.subarray(0, end) } }];
  });
  if (series.length > 0) return { series, future };
  const expected = 'readings of temperature or relative humidity, up to now';
  const found = file.series.map(({ quantity }) => quantity).join(', ') || 'nothing';
  throw new Refused(`invalid ${path}: ${fileName}, it holds ${found}; expected ${expected}`, path, expected);
}
