/** The rows of a section to raw values by series, with what cannot be a reading left out and named. */
import type { LeftOut, Unit } from './file.ts';
import { HUMIDITY, TEMPERATURE } from './file.ts';
import { headingScore } from './heading.ts';
import { isMissingWord, isSentinel } from './missing.ts';
import { blankMoment, readMoment, shown } from './moment.ts';
import type { Dates } from './moment.ts';
import { measuredOf, numberOf } from './number.ts';
import { meaningOf } from './quantity.ts';
import type { Meaning } from './quantity.ts';
import type { Roles, ValueColumn } from './roles.ts';
import type { Section } from './section.ts';
import { tornWhy } from './torn.ts';
import { converted, inUnit, unitOf } from './unit.ts';

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
  return { section, rows: cutTo(rows, kept), series: owners.all(), leftOut };

  function addRow(cells: readonly string[], line: number, sequence: number): number {
    rows.line[kept] = line;
    rows.date[kept] = moment.date;
    rows.ms[kept] = clock.kind === 'none' ? sequence : moment.ms;
    rows.offset[kept] = moment.offsetMinutes ?? NaN;
    rows.group[kept] = owners.group(cells);
    return kept++;
  }

  function keep(cells: readonly string[], line: number, sequence: number): void {
    const row = addRow(cells, line, sequence);
    for (const column of roles.values) {
      const why = keepValue(cells[column.column] ?? '', owners.of(cells, column), row);
      if (why !== null) leftOut.push({ line, why: `${column.title}: ${why}` });
    }
  }

  function countMissing(cells: readonly string[], line: number, sequence: number): void {
    const row = addRow(cells, line, sequence);
    for (const column of roles.values) owners.of(cells, column).missing.push(row);
  }
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

/** Why the cell is left out, or null when it is kept or counted as missing. */
function keepValue(cell: string, series: RawSeries, row: number): string | null {
  let value = numberOf(cell);
  if (Number.isNaN(value)) {
    if (isMissingWord(cell)) return (void series.missing.push(row), null);
    const measured = measuredOf(cell);
    if (measured === null) return `${shown(cell)} is no number`;
    series.unit ??= measured.unit;
    value = inUnit(converted(measured.value, measured.unit), series.unit);
  } else if (isSentinel(value) && isAir(series.quantity)) {
    return (void series.missing.push(row), null);
  }
  series.row.push(row);
  series.value.push(value);
  return null;
}

/** Elsewhere 999.9 may be a pressure. */
function isAir(quantity: string | null): boolean {
  return quantity === TEMPERATURE || quantity === HUMIDITY || quantity === null;
}

type Owners = {
  of: (cells: readonly string[], column: ValueColumn) => RawSeries;
  group: (cells: readonly string[]) => number;
  all: () => RawSeries[];
};

/** Whose a value is: its column's, or what the row says beside it. */
function ownersOf(roles: Roles): Owners {
  const series = new Map<string, RawSeries>();
  const meanings = new Map<string, Meaning>();
  const groups = new Map<string, number>();
  const fixed = roles.sensor < 0 && roles.quantity < 0;
  const plain = new Map<ValueColumn, RawSeries>();
  const labelOf = (cells: readonly string[]): string => `${cells[roles.sensor] ?? ''}\0${cells[roles.quantity] ?? ''}`;
  const made = (key: string, cells: readonly string[], column: ValueColumn): RawSeries => {
    const said = roles.quantity >= 0 ? meaningSaid(cells[roles.quantity] ?? '') : null;
    const sensor = [
      cells[roles.sensor] ?? '',
      said?.sensor ?? '',
      column.sensor === column.title && roles.sensor >= 0 ? '' : column.sensor,
    ]
      .filter((part) => part !== '')
      .join(' ');
    const unit = unitOf(cells[roles.unit] ?? '') ?? said?.unit ?? column.unit;
    const quantity = said ? (said.quantity ?? (cells[roles.quantity] || 'unnamed')) : column.quantity;
    return { key, sensor, title: column.title, quantity, unit, row: [], value: [], missing: [] };
  };
  function meaningSaid(cell: string): Meaning {
    let meaning = meanings.get(cell);
    if (!meaning) meanings.set(cell, (meaning = meaningOf(cell)));
    return meaning;
  }
  function of(cells: readonly string[], column: ValueColumn): RawSeries {
    const known = fixed ? plain.get(column) : undefined;
    if (known) return known;
    const key = `${labelOf(fixed ? [] : cells)}\0${column.column}\0${column.title}\0${cells[roles.unit] ?? ''}`;
    let found = series.get(key);
    if (!found) series.set(key, (found = made(key, cells, column)));
    if (fixed) plain.set(column, found);
    return found;
  }
  function group(cells: readonly string[]): number {
    if (fixed) return 0;
    const label = labelOf(cells);
    let place = groups.get(label);
    if (place === undefined) groups.set(label, (place = groups.size));
    return place;
  }
  return { of, group, all: () => [...series.values()] };
}
