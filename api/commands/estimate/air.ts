// The air of a scenario: its own list of readings, or a logger's file.
import { readFile } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import { HUMIDITY, TEMPERATURE, type Series } from '../../climate/logger/file.ts';
import { isLoggerFile, readLogger } from '../../climate/logger/read.ts';
import { blockSeconds } from '../../science/climate.ts';
import type { Reading } from '../../science/blocks.ts';
import { BadInput } from '../../bad-input.ts';
import type { Scenario } from '../../exposure/scenario.ts';

/** Readings in order of time; a file is looked for beside the scenario's. */
export async function readingsOf({ climate }: Scenario, folder: string): Promise<Reading[]> {
  if (Array.isArray(climate)) {
    return climate
      .map(({ at, temperatureC, humidityPercent }) => ({ atS: at, temperatureC, humidity: humidityPercent / 100 }))
      .sort((a, b) => a.atS - b.atS);
  }
  const { file, ...answers } = climate;
  const path = resolve(folder, file);
  const bytes = await readFile(path).catch((error: unknown) => {
    throw new BadInput(
      `invalid climate.file: ${JSON.stringify(file)}, expected a file that can be read (${error instanceof Error ? error.message : ''})`,
    );
  });
  const read = await readLogger(bytes, basename(path), { ...answers, labZone: answers.zone ?? 'UTC' });
  if (!isLoggerFile(read))
    throw new BadInput(`invalid climate.file: ${JSON.stringify(file)}, it is ${read.is}, expected ${read.expected}`);
  const [question] = read.questions;
  if (question)
    throw new BadInput(
      `missing climate.${keyOf[question.asks]}, expected ${question.choices.join(' or ')}: ${question.about}`,
    );
  return together(
    read.series.filter(({ quantity }) => quantity === TEMPERATURE),
    read.series.filter(({ quantity }) => quantity === HUMIDITY),
    file,
  );
}

const keyOf = {
  dates: 'dates',
  zone: 'zone',
  unit: 'unit',
  humidity: 'humidity',
  quantity: 'quantity',
  start: 'start',
} as const;

// Sensors rarely read at the same second: on a grid of blocks each is a line, and the room is their median.
function together(temperatures: readonly Series[], humidities: readonly Series[], file: string): Reading[] {
  const told = (series: readonly Series[]) => series.filter(({ readings }) => readings.atMs.length > 0);
  const warm = told(temperatures);
  const damp = told(humidities);
  if (warm.length === 0)
    throw new BadInput(`missing climate temperature, expected a temperature column in ${JSON.stringify(file)}`);
  if (damp.length === 0)
    throw new BadInput(`missing climate humidity, expected a relative humidity column in ${JSON.stringify(file)}`);
  const all = [...warm, ...damp];
  const fromS = Math.min(...all.map(({ readings }) => readings.atMs[0] ?? Infinity)) / 1000;
  const toS = Math.max(...all.map(({ readings }) => readings.atMs.at(-1) ?? -Infinity)) / 1000;
  const warmLines = warm.map(line);
  const dampLines = damp.map(line);
  const readings: Reading[] = [];
  for (let atS = fromS; atS < toS + blockSeconds; atS += blockSeconds) {
    const ms = Math.min(atS, toS) * 1000;
    readings.push({
      atS: Math.min(atS, toS),
      temperatureC: median(warmLines.map((at) => at(ms))),
      humidity: Math.min(1, Math.max(0, median(dampLines.map((at) => at(ms))) / 100)),
    });
  }
  return readings;
}

// Asked in order of time; held beyond the ends.
function line({ readings: { atMs, values } }: Series): (ms: number) => number {
  let next = 0;
  return (ms) => {
    while (next < atMs.length && (atMs[next] ?? 0) <= ms) next++;
    const before = values[next - 1];
    const after = values[next];
    if (before === undefined || after === undefined) return before ?? after ?? NaN;
    const from = atMs[next - 1] ?? 0;
    return before + ((after - before) * (ms - from)) / ((atMs[next] ?? 0) - from);
  };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return ((sorted[Math.floor(half)] ?? NaN) + (sorted[Math.ceil(half) - 1] ?? NaN)) / 2;
}
