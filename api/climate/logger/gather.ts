/** The rows of a section to raw values by series, with what cannot be a reading left out and named. */
import type { LeftOut, Unit } from './file.ts';
import { HUMIDITY, TEMPERATURE } from './file.ts';
import { headingScore } from './heading.ts';
import { isMissingWord, isSentinel } from './missing.ts';
import { blankMoment, readMoment, shown } from './moment.ts';
import type { Dates } from './moment.ts';
import { measuredOf, numberOf } from './number.ts';
import { ownersOf } from './owners.ts';
import { quantityOfUnit } from './quantity.ts';
import type { Roles, ValueColumn } from './roles.ts';
import type { Section } from './section.ts';
import { tornWhy } from './torn.ts';
import { converted, inUnit } from './unit.ts';
import { zoneNamed } from './zone.ts';

/** The rows kept; the arrays run together. `date` is a place in `Dates` or -1, `offset` NaN for none; without times `ms` counts the rows. */
export type Rows = {
  line: Uint32Array;
  date: Int32Array;
  ms: Float64Array;
  offset: Float64Array;
  group: Uint32Array;
  absolute: boolean;
};

/** `row` points into `Rows`; values are in the file's unit. */
export type RawSeries = {
  key: string;
  sensor: string;
  title: string;
  /** Its place in the row, from 0. */
  column: number;
  quantity: string | null;
  unit: Unit | null;
  row: number[];
  value: number[];
  missing: number[];
};

export type Gathered = { section: Section; rows: Rows; series: RawSeries[]; leftOut: LeftOut[] };

export function gathered(section: Section, roles: Roles, dates: Dates): Gathered {
  const { table, first, end, width, clock } = section;
  const room = end - first;
  const rows: Rows = {
    line: new Uint32Array(room),
    date: new Int32Array(room),
    ms: new Float64Array(room),
    offset: new Float64Array(room),
    group: new Uint32Array(room),
    absolute: clock.kind === 'unix',
  };
  const leftOut: LeftOut[] = [];
  const owners = ownersOf(roles);
  const moment = blankMoment();
  const torn = tornWhy(section, roles);
  let counted = 0;
  let kept = 0;
  for (let index = first; index < end; index++) {
    const cells = table.rows[index] ?? [];
    if (isBlank(cells)) continue;
    const line = table.lines[index] ?? 0;
    const why = readMoment(cells, clock, dates, moment) ?? torn(cells, index);
    const sequence = counted++;
    if (why !== null || !holdsValue(cells, roles)) {
      if (why === null && !isEvent(cells, roles) && cells.length >= width) countMissing(cells, line, sequence);
      else leftOut.push({ line, why: unreadWhy(cells, roles, why) });
      continue;
    }
    keep(cells, line, sequence);
  }
  return { section: inZone(section, roles), rows: cutTo(rows, kept), series: owners.all(), leftOut };

  function offsetBeside(cells: readonly string[]): number {
    return roles.zone < 0 ? NaN : (zoneNamed(cells[roles.zone] ?? '')?.fixed ?? NaN);
  }

  function addRow(cells: readonly string[], line: number, sequence: number): number {
    rows.line[kept] = line;
    rows.date[kept] = moment.date;
    rows.ms[kept] = clock.kind === 'none' ? sequence : moment.ms;
    rows.offset[kept] = moment.offsetMinutes ?? offsetBeside(cells);
    rows.group[kept] = owners.group(cells);
    return kept++;
  }

  function keep(cells: readonly string[], line: number, sequence: number): void {
    const row = addRow(cells, line, sequence);
    for (const column of roles.values) {
      const why = keepValue(cells, column, row);
      if (why !== null) leftOut.push({ line, why: `${column.title}: ${why}` });
    }
  }

  /** Why the cell is left out, or null when it is kept or counted as missing. */
  function keepValue(cells: readonly string[], column: ValueColumn, row: number): string | null {
    const cell = cells[column.column] ?? '';
    const series = owners.of(cells, column, null);
    const value = numberOf(cell);
    if (Number.isNaN(value) ? isMissingWord(cell) : isAir(series.quantity) && isSentinel(value)) {
      series.missing.push(row);
      return null;
    }
    if (!Number.isNaN(value)) return keepIn(series, value, row);
    const measured = measuredOf(cell);
    if (measured === null) return `${shown(cell)} is no number`;
    // One column may hold temperature and humidity in turn, each with its unit.
    const isOther = isAir(series.quantity) && series.quantity !== quantityOfUnit(measured.unit);
    const its = isOther ? owners.of(cells, column, measured.unit) : series;
    its.unit ??= measured.unit;
    return keepIn(its, inUnit(converted(measured.value, measured.unit), its.unit), row);
  }

  function countMissing(cells: readonly string[], line: number, sequence: number): void {
    const row = addRow(cells, line, sequence);
    for (const column of roles.values) owners.of(cells, column, null).missing.push(row);
  }
}

/** A zone by name in a column of its own holds for the section. */
function inZone(section: Section, { zone }: Roles): Section {
  const named = zone < 0 ? null : zoneNamed(section.table.rows[section.first]?.[zone] ?? '');
  return named === null || named.fixed !== null ? section : { ...section, facts: { ...section.facts, zone: named } };
}

function cutTo({ line, date, ms, offset, group, absolute }: Rows, count: number): Rows {
  return {
    line: line.subarray(0, count),
    date: date.subarray(0, count),
    ms: ms.subarray(0, count),
    offset: offset.subarray(0, count),
    group: group.subarray(0, count),
    absolute,
  };
}

function isBlank(cells: readonly string[]): boolean {
  for (const cell of cells) if (cell !== '') return false;
  return true;
}

/** At least one value to keep. */
function holdsValue(cells: readonly string[], { values }: Roles): boolean {
  for (const { column } of values) {
    const cell = cells[column] ?? '';
    if (cell !== '' && (!Number.isNaN(numberOf(cell)) || measuredOf(cell) !== null)) return true;
  }
  return false;
}

/** Words where values or notes stand, and no value: the logger tells what happened to it. */
function isEvent(cells: readonly string[], { values, notes }: Roles): boolean {
  return (
    values.some(({ column }) => !isMissingWord(cells[column] ?? '')) ||
    (notes.some((column) => (cells[column] ?? '') !== '') && values.every(({ column }) => (cells[column] ?? '') === ''))
  );
}

function unreadWhy(cells: readonly string[], roles: Roles, why: string | null): string {
  if (why !== null && holdsValue(cells, roles)) return why;
  if (headingScore(cells) >= 2) return 'the heading again';
  const text = cells.filter((cell) => cell !== '').join(' ');
  return why !== null && !/\p{L}/u.test(text) ? why : `no reading: ${shown(text)}`;
}

function keepIn(series: RawSeries, value: number, row: number): null {
  series.row.push(row);
  series.value.push(value);
  return null;
}

/** Elsewhere 999.9 may be a pressure. */
function isAir(quantity: string | null): boolean {
  return quantity === TEMPERATURE || quantity === HUMIDITY || quantity === null;
}
