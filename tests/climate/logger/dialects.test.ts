// One small file for each way in which loggers write, all of the same invented air.
import { describe, expect, test } from 'vitest';
import { HUMIDITY, TEMPERATURE } from '../../../api/climate/logger/file.ts';
import { air, fixture, halfHourly, humidityPercent, instants, only, read, temperatureC, values } from './air.ts';

/** 22:30 on 14 March 2026 on the wall, as UTC. Offsets of that day: Europe/Berlin +1, America/New_York -4 (tz database). */
const BERLIN = '2026-03-14T21:30:00.000Z';
const UTC = '2026-03-14T22:30:00.000Z';
const NEW_YORK = '2026-03-15T02:30:00.000Z';

const whole: [file: string, how: string, first: string, units: [string, string]][] = [
  ['comma-iso.csv', 'with commas, ISO times and units grown onto the names', BERLIN, ['°C', '%']],
  ['semicolon-decimal-comma.csv', 'with semicolons, decimal commas, and date and time apart', BERLIN, ['°C', '%']],
  ['tab.tsv', 'with tabs and slashes in the date', BERLIN, ['°C', '%']],
  ['utf8-bom.csv', 'in UTF-8 with a byte order mark', BERLIN, ['°C', '%']],
  ['utf16-le.csv', 'in UTF-16, little end first', BERLIN, ['°C', '%']],
  ['utf16-be.csv', 'in UTF-16, big end first', BERLIN, ['°C', '%']],
  ['latin1.csv', 'in Latin-1', BERLIN, ['°C', '%']],
  ['preamble.csv', 'under a preamble', BERLIN, ['°C', '%']],
  ['day-first.csv', 'with the day first', BERLIN, ['°C', '%']],
  ['month-first-am-pm.csv', 'with the month first, AM and PM, in °F', BERLIN, ['°F', '%']],
  ['month-by-name.csv', 'with the month by name', BERLIN, ['°C', '%']],
  ['unix-seconds.tsv', 'with Unix seconds', UTC, ['°C', '%']],
  ['unix-milliseconds.csv', 'with Unix milliseconds', '2026-03-14T22:30:00.250Z', ['°C', '%']],
  ['offset.csv', 'with an offset beside each time, in K', '2026-03-14T17:00:00.000Z', ['K', '%']],
  ['zone-in-heading.csv', 'with the offset in the heading', '2026-03-15T01:30:00.000Z', ['°C', '%']],
  ['zone-in-preamble.csv', 'with zone and unit named in the preamble', NEW_YORK, ['°F', '%']],
  ['units-row.csv', 'with a row of units under the names', BERLIN, ['°C', '%']],
  ['names-in-comment.csv', 'with names only in a comment', BERLIN, ['°C', '%']],
  ['units-in-cells.csv', 'with the unit in every cell', BERLIN, ['°C', '%']],
  ['fraction.csv', 'with humidity as a fraction', BERLIN, ['°C', 'fraction']],
  ['decimal-comma-in-commas.csv', 'with decimal commas between commas, without quotes', BERLIN, ['°C', '%']],
  ['zone-column.csv', 'with the offset in a column of its own', '2026-03-14T20:30:00.000Z', ['°C', '%']],
  ['spaces.txt', 'with columns set apart by spaces', BERLIN, ['°C', '%']],
  ['in-turn.csv', 'with temperature and humidity in turn in one column', BERLIN, ['°C', '%']],
  ['in-turn-blanks.csv', 'with temperature and humidity in turn, each in its column', BERLIN, ['°C', '%']],
  ['spreadsheet-days.csv', "with a spreadsheet's days", BERLIN, ['°C', '%']],
  ['quoted-heading.csv', 'with quotes, and line breaks in the heading', BERLIN, ['°C', '%']],
];

describe('a file', () => {
  test.each(whole)('%s, %s, gives its twelve readings and asks nothing', async (name, _, first, units) => {
    const file = await fixture(name);
    expect(file.questions).toEqual([]);
    expect(file.leftOut).toEqual([]);
    const [temperature, humidity] = [only(file, TEMPERATURE), only(file, HUMIDITY)];
    expect([temperature.unit, humidity.unit]).toEqual(units);
    expect(values(temperature)).toEqual(temperatureC);
    expect(values(humidity)).toEqual(humidityPercent);
    expect(instants(temperature)).toEqual(halfHourly(first));
    expect(instants(humidity)).toEqual(halfHourly(first));
    expect(new Set(air(file).map(({ sensor }) => sensor)).size).toBe(1);
  });

  test('says in one sentence what was understood', async () => {
    expect((await fixture('semicolon-decimal-comma.csv')).understood).toBe(
      'semicolon-separated UTF-8 text, dates day first, times in Europe/Berlin; temperature in °C and relative humidity in % ' +
        'of "semicolon-decimal-comma"; 12 readings from 2026-03-14 21:30 to 2026-03-15 00:00 UTC.',
    );
  });

  test('knows the line of each reading', async () => {
    expect(Array.from(only(await fixture('preamble.csv'), HUMIDITY).readings.lines)).toEqual([9, 10, 11, 12, 13, 14]);
  });

  test('takes the name of its sensor from the preamble', async () => {
    expect(only(await fixture('preamble.csv'), TEMPERATURE).sensor).toBe('instrument bay');
  });

  test('keeps what is not the air apart: a dew point in °C is no temperature', async () => {
    const file = await fixture('month-by-name.csv');
    expect(file.series.map(({ quantity }) => quantity)).toEqual([TEMPERATURE, 'dew point', HUMIDITY]);
    expect(values(only(file, 'dew point'))).toEqual([9.1, 9.1, 9.1, 9.1, 9.1, 9.1]);
  });

  test('may write a Unicode minus, and thousands in what is not the air', async () => {
    const file = await fixture('minus.csv');
    expect(values(only(file, TEMPERATURE))).toEqual(temperatureC.map((value) => -value));
    expect(values(only(file, 'pressure'))[5]).toBe(1013.5);
  });

  test('of one quantity is told by its name, and two such files are one sensor', async () => {
    const [warm, damp] = [await fixture('bay-temperature.csv'), await fixture('bay-humidity.csv')];
    expect(values(only(warm, TEMPERATURE, 'bay'))).toEqual(temperatureC);
    expect(values(only(damp, HUMIDITY, 'bay'))).toEqual(humidityPercent);
    expect([warm.questions, damp.questions]).toEqual([[], []]);
  });
});

describe('several sensors in one file', () => {
  const shifted = (by: number): number[] => temperatureC.map((value) => Number((value + by).toFixed(1)));

  test.each([
    ['side-by-side.csv', 'Wet bench', 'Cold store', -16],
    ['stacked.csv', 'A12', 'B07', 2],
    ['sensor-column.csv', 'A12', 'B07', 2],
    ['serial-numbers.csv', '20417', '20418', 1],
    ['workbook.xlsx', 'A12', 'B07', 2],
    ['labels-between.csv', 'A12', 'B07', 2],
  ])('%s tells %s from %s', async (name, one, other, by) => {
    const file = await fixture(name);
    expect(file.questions).toEqual([]);
    expect(file.leftOut).toEqual([]);
    expect(air(file)).toHaveLength(4);
    expect(values(only(file, TEMPERATURE, one))).toEqual(temperatureC);
    expect(values(only(file, HUMIDITY, one))).toEqual(humidityPercent);
    expect(values(only(file, TEMPERATURE, other))).toEqual(shifted(by));
    expect(instants(only(file, HUMIDITY, other))).toEqual(halfHourly(BERLIN));
  });

  test('long-form.csv names sensor, quantity and unit in every row', async () => {
    const file = await fixture('long-form.csv');
    expect(file.series.map(({ sensor, quantity }) => `${sensor} ${quantity}`)).toEqual([
      'A12 temperature',
      'A12 relative humidity',
      'A12 battery',
    ]);
    expect(values(only(file, TEMPERATURE))).toEqual(temperatureC);
    expect(values(only(file, HUMIDITY))).toEqual(humidityPercent);
  });
});

test('a heading in the middle that names the columns anew is believed', async () => {
  const file = await fixture('heading-changes.csv');
  expect(values(only(file, TEMPERATURE))).toEqual(temperatureC);
  expect(values(only(file, HUMIDITY))).toEqual(humidityPercent);
});

test.each([
  ['Timezone;America/New_York', '2026-03-14T12:00:00.000Z'],
  ['Zeitzone: MEZ', '2026-03-14T07:00:00.000Z'],
  ['TZ=+0100', '2026-03-14T07:00:00.000Z'],
  ['UTC offset: 2', '2026-03-14T06:00:00.000Z'],
  ['UTC offset (min): -210', '2026-03-14T11:30:00.000Z'],
  ['GMT Offset;+01:00', '2026-03-14T07:00:00.000Z'],
  ['All times are UTC', '2026-03-14T08:00:00.000Z'],
  ['Exported at 10:00 UTC', '2026-03-14T13:00:00.000Z'],
])('a preamble that says %s puts 08:00 at %s', async (line, at) => {
  // The lab's own zone is Winnipeg's, five hours behind UTC on that day (tz database): it holds where no line speaks of a zone.
  const file = await read(`${line}\n\ntime;T;RH\n2026-03-14 08:00;20;45\n2026-03-14 08:10;20;45\n`, {
    labZone: 'America/Winnipeg',
  });
  expect(instants(only(file, TEMPERATURE))[0]).toBe(at);
});

describe('what is left out', () => {
  test('events between readings are named with their lines, and the readings around them stay', async () => {
    const file = await fixture('events.csv');
    expect(file.leftOut).toEqual([
      { line: 4, why: 'no reading: "2026-03-14 23:10 button pressed"' },
      { line: 5, why: 'no reading: "2026-03-14 23:12 logging paused"' },
      { line: 8, why: 'no reading: "*** battery changed ***"' },
    ]);
    expect(values(only(file, TEMPERATURE))).toEqual(temperatureC);
    expect(only(file, TEMPERATURE).missing).toBe(0);
  });

  test('NaN, an empty cell, -- and sentinels are missing values, not readings', async () => {
    const file = await fixture('missing.csv');
    expect(values(only(file, TEMPERATURE))).toEqual([21.4, 21.7, 21.2, 20.9]);
    expect(values(only(file, HUMIDITY))).toEqual([44.8, 45.1, 43.7]);
    expect([only(file, TEMPERATURE).missing, only(file, HUMIDITY).missing]).toEqual([2, 3]);
    expect(file.leftOut).toEqual([]);
  });

  test('rows out of order are put in order; a repeated row, or a second value for an instant, is left out', async () => {
    const file = await fixture('disorder.csv');
    expect(values(only(file, TEMPERATURE))).toEqual(temperatureC);
    expect(instants(only(file, TEMPERATURE))).toEqual(halfHourly(BERLIN));
    expect(file.leftOut).toEqual([
      { line: 5, why: 'repeats line 4' },
      { line: 8, why: 'another value at the time of line 4' },
    ]);
  });

  test('a last row cut short is left out, though what is left of it looks like a number', async () => {
    const file = await fixture('torn.csv');
    expect(values(only(file, HUMIDITY))).toEqual(humidityPercent.slice(0, 5));
    expect(file.leftOut).toEqual([{ line: 7, why: 'torn at the end of the file' }]);
  });
});

describe('a row whose time was damaged', () => {
  const rows = (times: string[]): string =>
    `time,T °C,RH %\n${times.map((time, i) => `2026-03-14 ${time},${20 + i},45`).join('\n')}\n`;
  const steady = [
    '08:00',
    '08:10',
    '08:20',
    '08:30',
    '08:40',
    '08:50',
    '09:00',
    '09:10',
    '09:20',
    '09:30',
    '09:40',
    '09:50',
  ];

  test('does not fit where it stands, and the row that has its time by right is kept', async () => {
    const file = await read(rows(steady.with(4, '09:20')));
    expect(file.leftOut).toEqual([
      { line: 6, why: 'its time, 2026-03-14 08:20 UTC, does not fit between the rows beside it' },
    ]);
    expect(values(only(file, TEMPERATURE))).toEqual([20, 21, 22, 23, 25, 26, 27, 28, 29, 30, 31]);
  });

  test('is told from a row that is merely late', async () => {
    const late = [...steady.slice(0, 3), ...steady.slice(4, 8), steady[3] ?? '', ...steady.slice(8)];
    const file = await read(rows(late));
    expect(file.leftOut).toEqual([]);
    expect(only(file, TEMPERATURE).readings.values).toHaveLength(12);
  });

  test('may claim another century', async () => {
    const file = await read(
      rows(steady).replace('2026-03-14 08:40', '2126-03-14 08:40').replace('2026-03-14 09:10', '2062-03-14 09:10'),
    );
    expect(file.leftOut.map(({ line }) => line)).toEqual([6, 9]);
    expect(file.leftOut[0]?.why).toBe('2126-03-14 is no date from 1990 to 2099');
  });
});

describe("a thermometer's 85 °C", () => {
  const with85 = (t: number[]): string =>
    `time,T °C,RH %\n${t.map((value, i) => `2026-03-14 08:0${i},${value},45`).join('\n')}\n`;

  test('alone among others is its power-on value and is left out', async () => {
    const file = await read(with85([21.1, 85, 21.2, 21.3]));
    expect(values(only(file, TEMPERATURE))).toEqual([21.1, 21.2, 21.3]);
    expect(file.leftOut.map(({ line }) => line)).toEqual([3]);
  });

  test('in a warm cupboard is its air', async () => {
    expect(values(only(await read(with85([84.8, 85, 85, 84.9]), { unit: 'C' }), TEMPERATURE))).toEqual([
      84.8, 85, 85, 84.9,
    ]);
  });
});
