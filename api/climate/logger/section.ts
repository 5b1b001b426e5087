/** A sheet to its sections: one preamble, one heading, the readings below. Stacked sensors and restarted loggers make several. */
import { lookOf } from './cell.ts';
import { clockColumnsOf, columnsOfClock } from './clock.ts';
import type { ClockColumns } from './clock.ts';
import { factsOf, sensorSaid } from './facts.ts';
import type { Facts } from './facts.ts';
import type { Table } from './file.ts';
import { headingAbove, headingScore } from './heading.ts';
import type { Heading } from './heading.ts';

export type Section = {
  table: Table;
  /** Rows of the table: the readings are `first` to `end`. */
  first: number;
  end: number;
  width: number;
  clock: ClockColumns;
  heading: Heading;
  facts: Facts;
};

/** Rows looked at to learn what the columns hold. */
const SAMPLE = 600;

/** How far above a repeated heading its own preamble may begin. */
const PREAMBLE = 30;

export function sectionsOf(table: Table): Section[] {
  const starts = startsOf(table.rows);
  const sections: Section[] = [];
  starts.forEach((start, index) => {
    const section = sectionOf(table, start, starts[index + 1] ?? table.rows.length, sections.at(-1) ?? null);
    if (section) sections.push(section);
  });
  return sections;
}

/** Where sections begin: at the top, and at each later heading or naming of a sensor together with the text above it. */
function startsOf(rows: readonly string[][]): number[] {
  const starts = [0];
  let readSince = false;
  for (let index = 0; index < rows.length; index++) {
    const cells = rows[index] ?? [];
    if (isReading(cells)) readSince = true;
    else if (readSince && (headingScore(cells) >= 2 || sensorSaid([cells.filter((cell) => cell !== '')]) !== null)) {
      let start = index;
      while (start > index - PREAMBLE && isProse(rows[start - 1] ?? [])) start--;
      starts.push(start);
      readSince = false;
    }
  }
  return starts;
}

/** Quick first: a digit in front is nearly always a reading. */
function isReading(cells: readonly string[]): boolean {
  const code = (cells[0] ?? '').charCodeAt(0);
  if (cells.length > 1 && code >= 48 && code <= 57) return true;
  return (
    cells.length > 1 &&
    cells.some((cell) => /^[+\-\u2212]?\d/.test(cell)) &&
    cells.filter((cell) => lookOf(cell) !== 'text' && cell !== '').length >= 2
  );
}

function isProse(cells: readonly string[]): boolean {
  return !isReading(cells) && cells.filter((cell) => cell !== '').length <= 2;
}

function sectionOf(table: Table, start: number, end: number, before: Section | null): Section | null {
  const rows = table.rows.slice(start, end);
  const sample = sampleOf(rows);
  const guess = rows.slice(0, 100).findLast((row) => headingScore(row) >= 2) ?? [];
  const own = clockColumnsOf(sample, guess);
  const clock = own.kind === 'none' && before && guess.length === 0 ? before.clock : own;
  const first = rows.findIndex((row) => isData(row, clock));
  if (first < 0) return null;
  const width = usualWidth(sampleOf(rows.slice(first)));
  const above = rows.slice(0, first);
  const found = headingAbove(above, width, columnsOfClock(clock)[0] ?? -1);
  const inherits = before !== null && found.names.length === 0;
  const heading = inherits ? before.heading : found;
  const facts = factsOf(above, heading.names);
  return {
    table,
    first: start + first,
    end,
    width,
    clock,
    heading,
    facts: before ? filled(facts, before.facts) : facts,
  };
}

function sampleOf(rows: readonly string[][]): string[][] {
  const step = Math.max(1, Math.floor(rows.length / SAMPLE));
  return rows.filter((row, index) => (index < SAMPLE / 2 || index % step === 0) && row.some((cell) => cell !== ''));
}

/** A time where times stand and something measured beside it; without times, two numbers. */
function isData(row: readonly string[], clock: ClockColumns): boolean {
  const times = columnsOfClock(clock);
  const looks = row.map(lookOf);
  const measured = looks.filter(
    (look, column) => !times.includes(column) && (look === 'number' || look === 'measured' || look === 'none'),
  ).length;
  if (clock.kind === 'none')
    return measured >= 2 && looks.some((look) => look !== 'none') && looks.every((look) => look !== 'text');
  const timed =
    clock.kind === 'stamp'
      ? looks[clock.column] === 'stamp'
      : clock.kind === 'two'
        ? looks[clock.date] === 'date' && looks[clock.clock] === 'clock'
        : clock.kind === 'date'
          ? looks[clock.column] === 'date'
          : looks[clock.column] === 'number';
  return timed && measured >= 1;
}

function usualWidth(rows: readonly string[][]): number {
  const counts = new Map<number, number>();
  for (const { length } of rows) counts.set(length, (counts.get(length) ?? 0) + 1);
  return [...counts].sort((one, other) => other[1] - one[1] || other[0] - one[0])[0]?.[0] ?? 0;
}

/** What a later preamble does not repeat still holds; the sensor too, unless it names another. */
function filled(facts: Facts, before: Facts): Facts {
  return {
    zone: facts.zone ?? before.zone,
    sensor: facts.sensor ?? before.sensor,
    temperatureUnit: facts.temperatureUnit ?? before.temperatureUnit,
    humidityUnit: facts.humidityUnit ?? before.humidityUnit,
    dates: facts.dates ?? before.dates,
    start: facts.start ?? before.start,
    everySeconds: facts.everySeconds ?? before.everySeconds,
  };
}
