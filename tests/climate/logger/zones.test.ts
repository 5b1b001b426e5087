// Wall clocks: the hour that spring skips and the hour that autumn repeats. Changes of clocks from the tz database.
import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, test } from 'vitest';
import { TEMPERATURE } from '../../../api/climate/logger/file.ts';
import { wallClock, zoneNamed } from '../../../api/climate/logger/zone.ts';
import { fixture, instants, only, read, temperatureC, values } from './air.ts';

const AUTUMN = ['23:30', '00:00', '00:30', '01:00', '01:30', '02:00'].map(
  (time, i) => `2025-10-2${i === 0 ? 5 : 6}T${time}:00.000Z`,
);

describe('an autumn night', () => {
  test('shows 02:00 and 02:30 twice, told apart by the order of the rows', async () => {
    const file = await fixture('autumn.csv');
    expect(instants(only(file, TEMPERATURE))).toEqual(AUTUMN);
    expect(values(only(file, TEMPERATURE))).toEqual(temperatureC);
    expect([file.leftOut, file.questions]).toEqual([[], []]);
  });

  test('is read backwards in a file that has the newest row first', async () => {
    const file = await fixture('newest-first.csv');
    expect(instants(only(file, TEMPERATURE))).toEqual(AUTUMN);
    expect(values(only(file, TEMPERATURE))).toEqual(temperatureC);
  });

  test('of an hourly logger shows 02:00 twice in a row', async () => {
    const file = await read(
      'Time,T °C,RH %\n2025-10-26 01:00,20,45\n2025-10-26 02:00,21,45\n2025-10-26 02:00,22,45\n2025-10-26 03:00,23,45\n',
    );
    expect(instants(only(file, TEMPERATURE)).map((at) => at.slice(11, 16))).toEqual([
      '23:00',
      '00:00',
      '01:00',
      '02:00',
    ]);
    expect(values(only(file, TEMPERATURE))).toEqual([20, 21, 22, 23]);
  });

  test('is told apart for each sensor by itself', async () => {
    const rows = ['01:30', '02:30', '02:30', '03:00'].flatMap((time, i) => [
      `A,2025-10-26 ${time},${i},45`,
      `B,2025-10-26 ${time},${i + 10},45`,
    ]);
    const file = await read(`sensor,time,T °C,RH %\n${rows.join('\n')}\n`);
    for (const sensor of ['A', 'B']) {
      expect(instants(only(file, TEMPERATURE, sensor)).map((at) => at.slice(11, 16))).toEqual([
        '23:30',
        '00:30',
        '01:30',
        '02:00',
      ]);
    }
  });
});

describe('a spring night', () => {
  test('has no 02:30: the row is left out, and whether the logger was set forward is asked', async () => {
    const file = await fixture('spring.csv');
    expect(file.leftOut).toEqual([
      { line: 3, why: '2026-03-29 02:30 was skipped in Europe/Berlin: clocks went forward' },
    ]);
    expect(file.questions.map(({ asks, choices }) => [asks, choices])).toEqual([
      ['zone', ['Europe/Berlin', 'UTC+01:00']],
    ]);
  });

  test("is settled by the answer: the lab's zone leaves the row out, winter time all year keeps it", async () => {
    const forward = await fixture('spring.csv', { zone: 'Europe/Berlin' });
    const winter = await fixture('spring.csv', { zone: 'UTC+01:00' });
    expect([forward.questions, winter.questions, winter.leftOut]).toEqual([[], [], []]);
    expect(values(only(forward, TEMPERATURE))).toHaveLength(5);
    expect(instants(only(winter, TEMPERATURE))[1]).toBe('2026-03-29T01:30:00.000Z');
  });
});

describe('a wall clock', () => {
  const zones = [
    'Europe/Berlin',
    'America/New_York',
    'Australia/Lord_Howe',
    'Asia/Kathmandu',
    'America/Santiago',
    'Pacific/Auckland',
    'UTC',
  ];

  test('gives back every instant that it shows once, in zones of both hemispheres (against luxon)', () => {
    const instant = fc.integer({ min: Date.UTC(1995, 0, 1), max: Date.UTC(2037, 0, 1) });
    fc.assert(
      fc.property(fc.constantFrom(...zones), instant, (zone, at) => {
        const whole = Math.floor(at / 1000) * 1000;
        const wall = whole + DateTime.fromMillis(whole, { zone }).offset * 60_000;
        const found = wallClock({ name: zone, fixed: null })(wall);
        return 'once' in found ? found.once === whole : 'twice' in found && found.twice.includes(whole);
      }),
      { numRuns: 2000 },
    );
  });

  test('changes by half an hour on Lord Howe Island (tz database: 4 April 2027, 02:00 to 01:30)', () => {
    const clock = wallClock({ name: 'Australia/Lord_Howe', fixed: null });
    expect(clock(Date.UTC(2027, 3, 4, 1, 45))).toEqual({
      twice: [Date.UTC(2027, 3, 3, 14, 45), Date.UTC(2027, 3, 3, 15, 15)],
    });
    expect(clock(Date.UTC(2027, 3, 4, 1, 15))).toEqual({ once: Date.UTC(2027, 3, 3, 14, 15) });
    expect(clock(Date.UTC(2026, 9, 4, 2, 15))).toEqual({ never: true });
  });

  test.each([
    ['UTC+2', 120],
    ['UTC+02:00', 120],
    ['GMT-3', -180],
    ['+05:30', 330],
    ['-0330', -210],
    ['Z', 0],
    ['CET', 60],
    ['CEST', 120],
    ['EST', -300],
  ])('of %s is %d minutes ahead of UTC', (name, minutes) => {
    expect(zoneNamed(name)?.fixed).toBe(minutes);
  });

  test.each(['', 'Berlin', 'Europe/Nowhere', 'UTC+25', 'local'])('of %j does not exist', (name) => {
    expect(zoneNamed(name)).toBeNull();
  });
});
