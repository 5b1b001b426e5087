// Writes known air in any of the ways in which loggers write, for tests that read it back.
import fc from 'fast-check';
import { DateTime } from 'luxon';
import type { DateOrder } from '../../../api/climate/logger/file.ts';

export interface Row {
  atMs: number;
  temperatureC: number;
  humidityPercent: number;
}

export interface Dialect {
  separator: ',' | ';' | '\t';
  decimal: '.' | ',';
  lineEnd: '\n' | '\r\n' | '\r';
  encoding: 'utf-8' | 'utf-8 with mark' | 'utf-16le' | 'utf-16be' | 'latin1';
  date: DateOrder | 'month by name' | 'unix' | 'unix ms';
  mark: '-' | '/' | '.';
  twoColumns: boolean;
  twelveHour: boolean;
  zone: 'Europe/Berlin' | 'America/New_York' | 'UTC+05:30';
  zoneSaid: 'beside' | 'heading' | 'preamble' | 'lab';
  temperature: 'C' | 'F' | 'K';
  humidity: 'percent' | 'fraction';
  names: 'heading' | 'units row' | 'comment';
  sensors: 'one' | 'side by side' | 'column' | 'stacked' | 'long';
  quoted: boolean;
  preamble: boolean;
  humidityFirst: boolean;
  unended: boolean;
}

export const dialects: fc.Arbitrary<Dialect> = fc
  .record<Dialect>({
    separator: fc.constantFrom(',', ';', '\t'),
    decimal: fc.constantFrom('.', ','),
    lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
    encoding: fc.constantFrom('utf-8', 'utf-8 with mark', 'utf-16le', 'utf-16be', 'latin1'),
    date: fc.constantFrom('day-first', 'month-first', 'year-first', 'month by name', 'unix', 'unix ms'),
    mark: fc.constantFrom('-', '/', '.'),
    twoColumns: fc.boolean(),
    twelveHour: fc.boolean(),
    zone: fc.constantFrom('Europe/Berlin', 'America/New_York', 'UTC+05:30'),
    zoneSaid: fc.constantFrom('beside', 'heading', 'preamble', 'lab'),
    temperature: fc.constantFrom('C', 'F', 'K'),
    humidity: fc.constantFrom('percent', 'fraction'),
    names: fc.constantFrom('heading', 'units row', 'comment'),
    sensors: fc.constantFrom('one', 'side by side', 'column', 'stacked', 'long'),
    quoted: fc.boolean(),
    preamble: fc.boolean(),
    humidityFirst: fc.boolean(),
    unended: fc.boolean(),
  })
  .map((dialect) => ({
    ...dialect,
    // A decimal comma between commas needs quotes; dots between month and day are written nowhere.
    quoted: dialect.quoted || (dialect.separator === ',' && dialect.decimal === ','),
    mark: dialect.date === 'month-first' && dialect.mark === '.' ? '/' : dialect.mark,
  }));

/** Steady rows with values to two decimals; the spans stay clear of the nights when clocks change. */
export const airs: fc.Arbitrary<Row[]> = fc
  .record({
    day: fc.integer({ min: 0, max: 40 }),
    year: fc.integer({ min: 1995, max: 2085 }),
    stepS: fc.constantFrom(60, 300, 600, 1800, 3600, 86_400),
    values: fc.array(fc.tuple(fc.integer({ min: -2000, max: 3000 }), fc.integer({ min: 150, max: 9900 })), {
      minLength: 4,
      maxLength: 40,
    }),
  })
  .map(({ day, year, stepS, values }) =>
    values.map(([t, h], index) => ({
      atMs: Date.UTC(year, 5, 2 + day, 3) + index * stepS * 1000,
      temperatureC: t / 100,
      humidityPercent: h / 100,
    })),
  );

/** The second sensor, where there is one, reads this much more. */
export const SECOND = { temperatureC: 1.5, humidityPercent: -1 };

export function written(rows: readonly Row[], dialect: Dialect): Uint8Array {
  const lines = linesOf(rows, dialect);
  const text = lines.join(dialect.lineEnd) + (dialect.unended ? '' : dialect.lineEnd);
  if (dialect.encoding === 'latin1') return Buffer.from(text, 'latin1');
  if (dialect.encoding === 'utf-8') return Buffer.from(text, 'utf8');
  if (dialect.encoding === 'utf-8 with mark') return Buffer.from(`\ufeff${text}`, 'utf8');
  const little = Buffer.from(`\ufeff${text}`, 'utf16le');
  return dialect.encoding === 'utf-16le' ? little : little.swap16();
}

function linesOf(rows: readonly Row[], dialect: Dialect): string[] {
  const { sensors, zoneSaid, zone } = dialect;
  const top = [
    ...(dialect.preamble ? ['Fenwick Hollow', 'Interval: 300 s'] : []),
    ...(zoneSaid === 'preamble' ? [`Time zone: ${zone}`] : []),
    ...(dialect.preamble ? [''] : []),
  ];
  const second = rows.map(({ atMs, temperatureC, humidityPercent }) => ({
    atMs,
    temperatureC: temperatureC + SECOND.temperatureC,
    humidityPercent: humidityPercent + SECOND.humidityPercent,
  }));
  const line = (cells: readonly string[]): string =>
    cells.map((cell) => (dialect.quoted ? `"${cell}"` : cell)).join(dialect.separator);
  const body = (cells: readonly string[][]): string[] => cells.map(line);
  const times = timeNames(dialect);
  if (sensors === 'long') {
    const cells = rows.flatMap((row, i) => [
      ...longRows(row, 'A12', dialect),
      ...longRows(second[i] ?? row, 'B07', dialect),
    ]);
    return [...top, line(['sensor', ...times, 'quantity', 'value', 'unit']), ...body(cells)];
  }
  if (sensors === 'side by side') {
    const names = [...valueNames(dialect, 'A12 '), ...valueNames(dialect, 'B07 ')];
    return [
      ...top,
      ...headingOf(
        [...times, ...names.map(([name]) => name)],
        [...times.map(() => ''), ...names.map(([, unit]) => unit)],
        dialect,
        line,
      ),
      ...body(
        rows.map((row, i) => [
          ...timeCells(row.atMs, dialect),
          ...valueCells(row, dialect),
          ...valueCells(second[i] ?? row, dialect),
        ]),
      ),
    ];
  }
  const names = valueNames(dialect, '');
  const own = sensors === 'column' ? ['sensor'] : [];
  const heading = headingOf(
    [...own, ...times, ...names.map(([name]) => name)],
    [...own, ...times].map(() => '').concat(names.map(([, unit]) => unit)),
    dialect,
    line,
  );
  const cellsOf = (row: Row, sensor: string): string[] => [
    ...(own.length > 0 ? [sensor] : []),
    ...timeCells(row.atMs, dialect),
    ...valueCells(row, dialect),
  ];
  if (sensors === 'column')
    return [
      ...top,
      ...heading,
      ...body(rows.flatMap((row, i) => [cellsOf(row, 'A12'), cellsOf(second[i] ?? row, 'B07')])),
    ];
  if (sensors === 'one') return [...top, ...heading, ...body(rows.map((row) => cellsOf(row, '')))];
  return [
    ...top,
    'Sensor: A12',
    ...heading,
    ...body(rows.map((row) => cellsOf(row, ''))),
    '',
    'Sensor: B07',
    ...heading,
    ...body(second.map((row) => cellsOf(row, ''))),
  ];
}

function headingOf(
  names: string[],
  units: string[],
  { names: how }: Dialect,
  line: (cells: readonly string[]) => string,
): string[] {
  if (how === 'units row') return [line(names), line(units)];
  const whole = names.map((name, i) => (units[i] ? `${name} (${units[i]})` : name));
  return how === 'comment' ? [`# ${whole.join(', ')}`] : [line(whole)];
}

function valueNames({ temperature, humidity, humidityFirst }: Dialect, sensor: string): [string, string][] {
  const warm: [string, string] = [`${sensor}Temperature`, temperature === 'K' ? 'K' : `°${temperature}`];
  const damp: [string, string] = [`${sensor}Humidity`, humidity === 'percent' ? '%' : 'fraction'];
  return humidityFirst ? [damp, warm] : [warm, damp];
}

function timeNames({ twoColumns, date, zone, zoneSaid }: Dialect): string[] {
  const said = zoneSaid === 'heading' ? ` (${zone})` : '';
  return twoColumns && !date.startsWith('unix') ? ['Date', `Time${said}`] : [`Timestamp${said}`];
}

function valueCells(row: Row, dialect: Dialect): string[] {
  const cells = [temperatureText(row, dialect), humidityText(row, dialect)];
  return dialect.humidityFirst ? cells.reverse() : cells;
}

function temperatureText({ temperatureC }: Row, { temperature, decimal }: Dialect): string {
  const value =
    temperature === 'F' ? temperatureC * 1.8 + 32 : temperature === 'K' ? temperatureC + 273.15 : temperatureC;
  return value.toFixed(4).replace('.', decimal);
}

function humidityText({ humidityPercent }: Row, { humidity, decimal }: Dialect): string {
  return (humidity === 'fraction' ? humidityPercent / 100 : humidityPercent).toFixed(6).replace('.', decimal);
}

function longRows(row: Row, sensor: string, dialect: Dialect): string[][] {
  const start = [sensor, ...timeCells(row.atMs, dialect)];
  const [[, warmUnit], [, dampUnit]] = valueNames({ ...dialect, humidityFirst: false }, '') as [
    [string, string],
    [string, string],
  ];
  return [
    [...start, 'temperature', temperatureText(row, dialect), warmUnit],
    [...start, 'humidity', humidityText(row, dialect), dampUnit],
  ];
}

const DATES = {
  'day-first': 'dd-MM-yyyy',
  'month-first': 'MM-dd-yyyy',
  'year-first': 'yyyy-MM-dd',
  'month by name': 'dd-LLL-yyyy',
};

function timeCells(atMs: number, dialect: Dialect): string[] {
  if (dialect.date === 'unix') return [String(atMs / 1000)];
  if (dialect.date === 'unix ms') return [String(atMs)];
  const at = DateTime.fromMillis(atMs, { zone: dialect.zone, locale: 'en' });
  const mark = dialect.date === 'month by name' ? '-' : dialect.mark;
  const date = at.toFormat(DATES[dialect.date]).replaceAll('-', mark);
  const time =
    at.toFormat(dialect.twelveHour ? 'hh:mm:ss a' : 'HH:mm:ss') +
    (dialect.zoneSaid === 'beside' ? ` ${at.toFormat('ZZ')}` : '');
  return dialect.twoColumns ? [date, time] : [`${date} ${time}`];
}
