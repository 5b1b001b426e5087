// Rooms and their air as a script sees them.
import { expect, it } from 'vitest';
import { addReadings } from '../../api/climate/add-readings.ts';
import type { Context } from '../../api/context.ts';
import { newId } from '../../api/work.ts';
import { yogaOf } from '../../api/yoga.ts';
import { describeEngines } from '../support/engines.ts';
import { day, hour, labsOf, minute, readings, start } from './lab.ts';

type Data = Record<string, unknown>;

/** Asks as a script would. Gives the data; an error of the query fails the test. */
async function ask(lab: Context, query: string, variables: Data = {}): Promise<Data> {
  const headers = { 'content-type': 'application/json' };
  const body = JSON.stringify({ query, variables });
  const response = await yogaOf(lab).fetch('http://127.0.0.1/graphql', { method: 'POST', headers, body });
  const { data, errors } = (await response.json()) as { data?: Data; errors?: { message: string }[] };
  if (errors || !data) throw new Error(errors?.map(({ message }) => message).join('\n') ?? 'no data');
  return data;
}

const addRoom = `mutation ($input: AddRoomInput!) { addRoom(input: $input) {
  __typename ... on RoomAdded { room { name kind } } ... on Refusal { message path expected } } }`;
const add = `mutation ($input: AddReadingsInput!) { addReadings(input: $input) {
  __typename
  ... on ReadingsAdded { added repeated disagreeing notes sensor { name readings lastReadingAt setAsideWhy } room { name } }
  ... on Refusal { message path expected } } }`;

const sent = (from: number, until: number) =>
  readings(from, until, 10 * minute, () => [21, 50]).map((one) => ({ ...one, at: one.at.toISOString() }));

describeEngines('rooms over GraphQL', (on) => {
  const newLab = labsOf(on);

  it('a room is added once, by any case of its name', async () => {
    const lab = await newLab();
    const room = { name: 'Wet bench', kind: 'ROOM' };
    expect(await ask(lab, addRoom, { input: room })).toEqual({ addRoom: { __typename: 'RoomAdded', room } });
    expect(await ask(lab, addRoom, { input: { name: 'wet BENCH' } })).toEqual({
      addRoom: {
        __typename: 'Refusal',
        message: 'invalid input.name: wet BENCH, there is a room of that name; another name',
        path: 'input.name',
        expected: 'there is a room of that name; another name',
      },
    });
    expect(
      await ask(
        lab,
        '{ room(name: "WET BENCH") { name temperatureC sensors { name } } none: room(name: "attic") { name } }',
      ),
    ).toEqual({
      room: { name: 'Wet bench', temperatureC: null, sensors: [] },
      none: null,
    });
  });

  it('readings sent twice are there once, and the room tells its air', async () => {
    const now = new Date(start + day + hour);
    const lab = await newLab(now);
    await ask(lab, addRoom, { input: { name: 'wet bench' } });
    const input = { room: 'wet bench', sensor: 'shelf', readings: sent(start, start + day + 1) };
    const first = {
      __typename: 'ReadingsAdded',
      added: 290,
      repeated: 0,
      disagreeing: 0,
      notes: [],
      room: { name: 'wet bench' },
    };
    const lastReadingAt = new Date(start + day).toISOString();
    const sensor = { name: 'shelf', readings: 290, lastReadingAt, setAsideWhy: null };
    expect(await ask(lab, add, { input })).toEqual({ addReadings: { ...first, sensor } });
    expect(await ask(lab, add, { input })).toEqual({ addReadings: { ...first, added: 0, repeated: 290, sensor } });
    const { room } = await ask(
      lab,
      `{ room(name: "wet bench") { temperatureC relativeHumidityPercent vapourGramsPerM3 airAsOf isAirFilled lastReadingAt
      air(from: "${new Date(start).toISOString()}", until: "${now.toISOString()}", points: 25) { at temperatureC relativeHumidityPercent isFilled } } }`,
    );
    expect(room).toMatchObject({
      temperatureC: expect.closeTo(21, 3),
      relativeHumidityPercent: expect.closeTo(50, 3),
      // Half of the saturated vapour at 21 °C: p_s M / (R T) with p_s = 2487.7 Pa (ASHRAE 2017, ch. 1, table 3).
      vapourGramsPerM3: expect.closeTo(9.162, 2),
      airAsOf: now.toISOString(),
      isAirFilled: false,
      lastReadingAt,
    });
    expect((room as { air: unknown[] }).air).toHaveLength(25);
  });

  it('a reading that cannot be is refused where it stands, and nothing of the call is kept', async () => {
    const lab = await newLab(new Date(start + day));
    await ask(lab, addRoom, { input: { name: 'wet bench' } });
    const good = sent(start, start + hour);
    const refusalOf = async (reading: Data) => {
      const answer = await ask(lab, add, { input: { room: 'wet bench', readings: [...good, reading] } });
      return (answer['addReadings'] as Data)['message'];
    };
    const later = new Date(start + 2 * day).toISOString();
    expect(await refusalOf({ at: later, temperatureC: 21 })).toMatch(
      /^invalid input\.readings\.6\.at: 2026-03-04T00:00:00\.000Z, not after now/,
    );
    expect(await refusalOf({ at: good[0]?.at })).toMatch(/^missing input\.readings\.6, temperatureC in °C/);
    const many = Array.from({ length: 10_001 }, (_, i) => ({
      at: new Date(start + i).toISOString(),
      temperatureC: 21,
    }));
    const answer = await ask(lab, add, { input: { room: 'wet bench', readings: many } });
    expect(answer['addReadings']).toMatchObject({
      path: 'input.readings',
      expected: 'at most 10000 readings in one call',
    });
    expect(await lab.database.read.readingDay.count({ where: { labId: lab.lab.id } })).toBe(0);
  });

  it('the same client key answers the first answer', async () => {
    const lab = await newLab();
    await ask(lab, addRoom, { input: { name: 'wet bench' } });
    const input = { room: 'wet bench', readings: sent(start, start + hour), clientKey: newId() };
    const first = await ask(lab, add, { input });
    expect(await ask(lab, add, { input })).toEqual(first);
    expect(await ask(lab, add, { input: { ...input, sensor: 'other' } })).toMatchObject({
      addReadings: { __typename: 'Refusal', path: 'input.clientKey' },
    });
  });

  it('a stuck sensor says so, and what of it was left out', async () => {
    const lab = await newLab(new Date(start + 3 * day));
    await ask(lab, addRoom, { input: { name: 'wet bench' } });
    const wave = (at: number) => Math.sin((2 * Math.PI * (at - start)) / day);
    const of = (humidity: (at: number) => number) =>
      readings(start, start + 3 * day, 30 * minute, (at) => [21, humidity(at)]);
    await addReadings(lab, { room: 'wet bench', sensor: 'good', readings: of((at) => 45 + 8 * wave(at)) });
    await addReadings(lab, {
      room: 'wet bench',
      sensor: 'old',
      readings: of((at) => (at < start + day ? 45 + 8 * wave(at) : 45)),
    });
    const { room } = await ask(
      lab,
      '{ room(name: "wet bench") { sensors { name setAsideWhy isSetAsideByHand leftOut { from quantity why } } } }',
    );
    const why = 'stuck at 45.0 % RH while the other sensors moved';
    expect(room).toEqual({
      sensors: [
        { name: 'good', setAsideWhy: null, isSetAsideByHand: false, leftOut: [] },
        {
          name: 'old',
          setAsideWhy: `${why}, since 3 Mar 2026, 02:00`,
          isSetAsideByHand: false,
          leftOut: [{ from: new Date(start + day).toISOString(), quantity: 'relative humidity', why }],
        },
      ],
    });
  });

  it('rooms are listed by name, whatever their number in as many statements', async () => {
    const lab = await newLab();
    for (const name of ['c', 'a', 'b']) await ask(lab, addRoom, { input: { name } });
    const query = '{ rooms(first: 2) { totalCount nodes: edges { node { name } } pageInfo { hasNextPage } } }';
    const { result, texts } = await lab.database.statements.during(() => ask(lab, query));
    expect(result).toEqual({
      rooms: {
        totalCount: 3,
        nodes: [{ node: { name: 'a' } }, { node: { name: 'b' } }],
        pageInfo: { hasNextPage: true },
      },
    });
    expect(texts).toHaveLength(1);
  });

  it('a stretch that is too long, or backwards, is refused with its limit', async () => {
    const lab = await newLab();
    await ask(lab, addRoom, { input: { name: 'wet bench' } });
    const air = (args: string) => ask(lab, `{ room(name: "wet bench") { air(${args}) { at } } }`);
    await expect(air('points: 5000')).rejects.toThrow('invalid points: 5000, a whole number from 1 to 2000');
    await expect(air('from: "2026-03-02T00:00:00Z", until: "2026-03-01T00:00:00Z"')).rejects.toThrow(
      'invalid from: 2026-03-02T00:00:00.000Z, before until',
    );
  });
});
