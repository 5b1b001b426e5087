/** The series of all sections together: sensors named, the same column under each other joined, left-out lines in order. */
import { HUMIDITY, TEMPERATURE } from './file.ts';
import type { LeftOut, Series } from './file.ts';
import type { Gathered, RawSeries } from './gather.ts';
import type { Instants } from './instants.ts';
import { seriesOf } from './series.ts';
import type { Part } from './series.ts';
import type { Zone } from './zone.ts';

export type Timed = Gathered & Instants & { zone: Zone };

type Gathering = { sensor: string; column: string; twin: number; parts: Part[]; timed: boolean };

export function merged(
  parts: readonly Timed[],
  fileName: string,
  isWorkbook: boolean,
): { series: Series[]; leftOut: LeftOut[] } {
  const together = new Map<string, Gathering>();
  for (const part of parts) {
    const timed = part.section.clock.kind !== 'none' || part.at.some((ms) => !Number.isNaN(ms));
    const twins = new Map<string, number[]>();
    for (const raw of part.series) {
      const sensor = sensorOf(raw, part, fileName, isWorkbook);
      const name = [sensor, raw.quantity, raw.title].join('\0');
      const columns = twins.get(name) ?? [];
      if (!columns.includes(raw.column)) twins.set(name, [...columns, raw.column]);
      const twin = columns.includes(raw.column) ? columns.indexOf(raw.column) : columns.length;
      const found = together.get(`${name}\0${twin}`);
      const one: Part = { raw, at: part.at, lines: part.rows.line };
      if (found) found.parts.push(one);
      else together.set(`${name}\0${twin}`, { sensor, column: raw.title, twin, parts: [one], timed });
    }
  }
  const all = [...together.values()];
  const read = all.map((one) => seriesOf(one.parts, sensorAmong(one, all), one.column, one.timed));
  return {
    series: read.map(({ series }) => series),
    leftOut: inOrder([...parts.flatMap((part) => part.leftOut), ...read.flatMap(({ leftOut }) => leftOut)]),
  };
}

/** A sensor's name has no more signs than this. */
const LONGEST_NAME = 100;

function sensorOf({ sensor }: RawSeries, { section }: Timed, fileName: string, isWorkbook: boolean): string {
  const name = sensor || section.facts.sensor || (isWorkbook && section.table.name) || stemOf(fileName);
  return (
    name
      .replace(/[\s\p{Cc}]+/gu, ' ')
      .trim()
      .slice(0, LONGEST_NAME) || 'logger'
  );
}

/** Two columns of one quantity are two sensors, even where nothing but the column tells them apart. */
function sensorAmong(one: Gathering, all: readonly Gathering[]): string {
  const quantity = one.parts[0]?.raw.quantity;
  if (quantity !== TEMPERATURE && quantity !== HUMIDITY) return one.sensor;
  const alike = all.filter(({ sensor, parts }) => sensor === one.sensor && parts[0]?.raw.quantity === quantity);
  if (alike.length === 1) return one.sensor;
  const named = new Set(alike.map(({ column }) => column)).size === alike.length;
  return `${one.sensor}, ${named ? one.column : `${one.column} ${one.twin + 1}`}`.slice(0, LONGEST_NAME + 15);
}

/** `flat-room1-humidity.tsv` and `flat-room1-temperature.tsv` are one sensor, `flat-room1`. */
export function stemOf(fileName: string): string {
  const stem = fileName.replace(/^.*[\\/]/, '').replace(/\.\w{1,5}$/, '');
  const bare = stem
    .replace(
      /[-_ .]*(?:rel(?:ative)?[-_ .]?)?(?:temperatur\w*|temp|humid\w*|hum|luftfeucht\w*|feucht\w*|\brh\b)(?![a-z])/i,
      '',
    )
    .replace(/^[-_ .]+/, '');
  return bare === '' ? stem || 'logger' : bare;
}

/** By line, each cause once. */
function inOrder(leftOut: readonly LeftOut[]): LeftOut[] {
  const seen = new Set<string>();
  const once = leftOut.filter(({ line, why }) => {
    const key = `${line} ${why}`;
    return !seen.has(key) && seen.add(key);
  });
  return once.sort((one, other) => one.line - other.line);
}
