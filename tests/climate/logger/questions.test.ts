// What a file does not say is asked; until then its best reading is shown, and an answer settles it.
import { describe, expect, test } from 'vitest';
import { answerRefused } from '../../../api/climate/logger/answers.ts';
import { HUMIDITY, TEMPERATURE } from '../../../api/climate/logger/file.ts';
import { fixture, halfHourly, humidityPercent, instants, only, read, temperatureC, values } from './air.ts';

const asked = (file: Awaited<ReturnType<typeof fixture>>) => file.questions.map(({ asks }) => asks);

describe('dates', () => {
  test('that may be 3 April or 4 March are asked about, and read day first meanwhile', async () => {
    const file = await fixture('ambiguous-date.csv');
    expect(file.questions).toEqual([
      { asks: 'dates', about: 'dates: is 03/04/2026 day first or month first?', choices: ['day-first', 'month-first'] },
    ]);
    expect(instants(only(file, TEMPERATURE))).toEqual(halfHourly('2026-04-03T20:00:00Z'));
  });

  test('are settled by an answer either way', async () => {
    const dayFirst = await fixture('ambiguous-date.csv', { dates: 'day-first' });
    const monthFirst = await fixture('ambiguous-date.csv', { dates: 'month-first' });
    expect([dayFirst.questions, monthFirst.questions]).toEqual([[], []]);
    expect(instants(only(dayFirst, TEMPERATURE))[0]).toBe('2026-04-03T20:00:00.000Z');
    expect(instants(only(monthFirst, TEMPERATURE))[0]).toBe('2026-03-04T21:00:00.000Z');
  });

  test('need no answer when the heading spells the order out', async () => {
    const file = await fixture('date-order-in-heading.csv');
    expect(file.questions).toEqual([]);
    expect(instants(only(file, TEMPERATURE))).toEqual(halfHourly('2026-04-03T20:00:00Z'));
  });

  test('need no answer when one of them can only be read one way', async () => {
    const rows = (dates: string[]) =>
      `time,T °C,RH %\n${dates.map((date, i) => `${date} 08:00,${20 + i},45`).join('\n')}\n`;
    expect(asked(await read(rows(['11/04/2026', '12/04/2026'])))).toEqual(['dates']);
    expect(asked(await read(rows(['11/04/2026', '12/04/2026', '13/04/2026'])))).toEqual([]);
    expect(asked(await read(rows(['04/11/2026', '04/12/2026', '04/13/2026'])))).toEqual([]);
    expect(asked(await read(rows(['04/04/2026'])))).toEqual([]);
  });

  test('that run on from day to day show the likelier order as best reading, and are still asked about', async () => {
    const file = await read('time,T °C,RH %\n04/01/2026 23:00,20,45\n04/02/2026 00:00,21,45\n04/03/2026 01:00,21,45\n');
    expect(asked(file)).toEqual(['dates']);
    expect(instants(only(file, TEMPERATURE))[0]).toBe('2026-04-01T21:00:00.000Z');
  });

  test('with full stops have the day first, as everywhere where they are written so', async () => {
    const file = await read('Zeit;T °C;RH %\n03.04.2026 08:00;20;45\n03.04.26 09:00;20;45\n');
    expect(file.questions).toEqual([]);
    expect(instants(only(file, TEMPERATURE))).toEqual(['2026-04-03T06:00:00.000Z', '2026-04-03T07:00:00.000Z']);
  });
});

describe('units', () => {
  test('of a temperature of 70 without one are asked about, °F being likelier', async () => {
    const file = await fixture('unit-unnamed.csv');
    expect(file.questions).toEqual([{ asks: 'unit', about: 'unit: is Temperature in °C or °F?', choices: ['C', 'F'] }]);
    expect(only(file, TEMPERATURE).unit).toBe('°F');
    expect(only(file, TEMPERATURE).max).toBeCloseTo(21.7, 1);
    const answered = await fixture('unit-unnamed.csv', { unit: 'C' });
    expect([answered.questions, only(answered, TEMPERATURE).readings.values[0]]).toEqual([[], 70.5]);
  });

  test('of a temperature of 20 or of 294 without one are plain', async () => {
    const celsius = await read('time,temperature,humidity\n2026-03-14 08:00,20.1,45\n');
    const kelvin = await read('time,temperature,humidity\n2026-03-14 08:00,294.15,45\n');
    expect([celsius.questions, kelvin.questions]).toEqual([[], []]);
    expect([values(only(celsius, TEMPERATURE)), values(only(kelvin, TEMPERATURE))]).toEqual([[20.1], [21]]);
  });

  test('of a humidity that never passes 1 are asked about: a fraction, or a desiccator', async () => {
    const file = await fixture('fraction-unnamed.csv');
    expect(asked(file)).toEqual(['humidity']);
    expect(values(only(file, HUMIDITY))).toEqual(humidityPercent);
    const dry = await fixture('fraction-unnamed.csv', { humidity: 'percent' });
    expect(dry.questions).toEqual([]);
    expect(values(only(dry, HUMIDITY))[0]).toBe(0.448);
  });
});

describe('columns without a name', () => {
  test('are asked about one by one, and the likelier reading is shown', async () => {
    const file = await fixture('no-heading.csv');
    expect(file.questions.map(({ about, choices }) => [about, choices])).toEqual([
      ['quantity: what is column 2?', ['temperature', 'humidity']],
      ['quantity: what is column 3?', ['temperature', 'humidity']],
    ]);
    expect(values(only(file, TEMPERATURE))).toEqual(temperatureC);
    expect(values(only(file, HUMIDITY))).toEqual(humidityPercent);
  });

  test('are settled by an answer for each, in their order', async () => {
    const file = await fixture('no-heading.csv', { quantity: ['humidity', 'temperature'], unit: 'C' });
    expect(file.questions).toEqual([]);
    expect(values(only(file, HUMIDITY))).toEqual(temperatureC);
  });

  test('a single one is settled by one answer, or by the name of the file', async () => {
    const text = '1489021895\t44\n1489025507\t45\n1489028517\t46\n';
    expect(asked(await read(text, {}, 'room.tsv'))).toEqual(['quantity']);
    expect(values(only(await read(text, { quantity: ['humidity'] }, 'room.tsv'), HUMIDITY))).toEqual([44, 45, 46]);
    expect(values(only(await read(text, {}, 'room-humidity.tsv'), HUMIDITY))).toEqual([44, 45, 46]);
  });
});

describe('a file without times', () => {
  test('asks for a start and an interval, and shows its values meanwhile', async () => {
    const file = await fixture('no-time.csv');
    expect(asked(file)).toEqual(['start']);
    const temperature = only(file, TEMPERATURE);
    expect([temperature.first, temperature.last, temperature.min, temperature.max]).toEqual([null, null, 20.9, 21.7]);
    expect(temperature.readings.values).toHaveLength(6);
  });

  test("is read from a start in the lab's zone, or in its own offset", async () => {
    const local = await fixture('no-time.csv', { start: '2026-03-14T22:30', everySeconds: 1800 });
    const offset = await fixture('no-time.csv', { start: '2026-03-14T22:30+05:30', everySeconds: 1800 });
    expect(local.questions).toEqual([]);
    expect(instants(only(local, TEMPERATURE))).toEqual(halfHourly('2026-03-14T21:30:00Z'));
    expect(instants(only(offset, HUMIDITY))).toEqual(halfHourly('2026-03-14T17:00:00Z'));
  });

  test('that gives start and interval in its preamble offers them, and still asks', async () => {
    const file = await read('Start: 2026-03-14 22:30\nInterval: 30 min\n\nTemp °C,RH %\n21.4,44.8\n21.5,45.1\n');
    expect(file.questions.map(({ choices }) => choices)).toEqual([['2026-03-14 22:30 every 1800 s']]);
    expect(instants(only(file, TEMPERATURE))).toEqual(['2026-03-14T21:30:00.000Z', '2026-03-14T22:00:00.000Z']);
  });
});

describe('answers', () => {
  test.each([
    [{ zone: 'Middle/Nowhere' }, 'unknown zone: Middle/Nowhere, '],
    [{ start: 'yesterday', everySeconds: 60 }, 'invalid start: yesterday, '],
    [{ start: '2026-03-14T08:00', everySeconds: 0 }, 'invalid every: 0, '],
    [{ start: '2026-03-14T08:00' }, 'missing every, '],
    [{ everySeconds: 60 }, 'missing start, '],
  ])('%j cannot be used, and the refusal says what would be right', (answers, message) => {
    expect(answerRefused({ labZone: 'UTC', ...answers })?.message).toContain(message);
  });

  test('of every kind of zone can be used', () => {
    for (const zone of ['Europe/Berlin', 'UTC', 'UTC+2', '-03:30', 'CET'])
      expect(answerRefused({ labZone: 'UTC', zone })).toBeNull();
  });
});
