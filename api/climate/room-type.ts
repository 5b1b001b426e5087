// A room as GraphQL shows it.
import { builder } from '../builder.ts';
import { AirPointRef } from './air-type.ts';
import { dayRange } from './day-range.ts';
import { airNow } from './now.ts';
import { plotOf } from './plot.ts';
import { RoomRef, SensorRef } from './refs.ts';
import { type AssumedStep, stepsOf } from './room-assumed.ts';
import { sensorFacts } from './sensor-facts.ts';
import { Refused } from '../errors.ts';

const mostPoints = 2000;

export const RoomKindEnum = builder.enumType('RoomKind', {
  description: 'What a room is: a room one works in, a cold store, or a desiccator (a room with its own humidity).',
  values: {
    ROOM: { description: 'A room one works in.' },
    COLD_STORE: { description: 'A cold store or refrigerator.' },
    DESICCATOR: { description: 'A desiccator or dry box, with a humidity of its own.' },
  },
});

const AssumedWhyEnum = builder.enumType('AssumedWhy', {
  description: 'Why an air was taken for granted from an instant on.',
  values: {
    RENEWED: { description: 'The desiccant was renewed.' },
    READ: { description: 'A dial or a hygrometer without a memory showed it.' },
    SAID: { description: 'Somebody said so.' },
  } satisfies Record<AssumedStep['why'], { description: string }>,
});

const AssumedStepRef = builder.objectRef<AssumedStep>('AssumedAir').implement({
  description: 'Air taken for granted from an instant on, wherever nothing is read.',
  fields: (t) => ({
    from: t.field({ type: 'DateTime', description: 'From here on.', resolve: ({ fromMs }) => new Date(fromMs) }),
    humidityPercent: t.exposeFloat('humidityPercent', {
      nullable: true,
      description: 'Relative humidity, %; null: it stays what it was.',
    }),
    temperatureC: t.exposeFloat('temperatureC', {
      nullable: true,
      description: 'Temperature, °C; null: what the room is assumed to have, else 20 °C.',
    }),
    why: t.field({ type: AssumedWhyEnum, description: 'Why.', resolve: ({ why }) => why }),
  }),
});

builder.node(RoomRef, {
  name: 'Room',
  description: 'A place with air of its own, in which containers stand: a room, a cold store or a desiccator.',
  id: { resolve: (room) => room.id },
  loadWithoutCache: (id, context) => context.load.room.load(id),
  fields: (t) => ({
    name: t.exposeString('name', { description: 'Its name, once in the lab.' }),
    kind: t.field({
      type: RoomKindEnum,
      description: 'A room one works in, a cold store or a desiccator.',
      resolve: (room) => room.kind,
    }),
    temperatureC: t.float({
      nullable: true,
      description: 'Temperature now, °C; null where nothing is known.',
      resolve: async (room, _, context) => (await airNow(context, room.id))?.temperatureC ?? null,
    }),
    relativeHumidityPercent: t.float({
      nullable: true,
      description: 'Relative humidity now, %; null where nothing is known.',
      resolve: async (room, _, context) => (await airNow(context, room.id))?.humidityPercent ?? null,
    }),
    vapourGramsPerM3: t.float({
      nullable: true,
      description: 'Water vapour in the air now, g/m³; null where nothing is known.',
      resolve: async (room, _, context) => {
        const air = await airNow(context, room.id);
        return air ? 1000 * air.vapourKgPerM3 : null;
      },
    }),
    airAsOf: t.field({
      type: 'DateTime',
      nullable: true,
      description: 'The instant these three hold for; null where nothing is known.',
      resolve: async (room, _, context) => (await airNow(context, room.id))?.at ?? null,
    }),
    isAirFilled: t.boolean({
      description:
        'The air now is not measured: no reading for two hours, so the typical day stands in, or the assumed air.',
      resolve: async (room, _, context) => (await airNow(context, room.id))?.isFilled ?? false,
    }),
    lastReadingAt: t.field({
      type: 'DateTime',
      nullable: true,
      description: 'When any of its sensors last read anything.',
      resolve: async (room, _, context) => {
        const last = [...(await sensorFacts(context, room.id)).values()].map(({ lastMs }) => lastMs ?? 0);
        return last.length > 0 ? new Date(Math.max(...last)) : null;
      },
    }),
    assumedHumidityPercent: t.exposeFloat('assumedHumidityPercent', {
      nullable: true,
      description:
        'Relative humidity taken for granted where there are no readings, %; estimates count it as uncertain.',
    }),
    assumedTemperatureC: t.exposeFloat('assumedTemperatureC', {
      nullable: true,
      description: 'Temperature taken for granted where there are no readings, °C; estimates count it as uncertain.',
    }),
    desiccantRenewedAt: t.expose('desiccantRenewedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When the desiccant of a desiccator was last renewed.',
    }),
    assumedAir: t.field({
      type: [AssumedStepRef],
      description: 'What was noted by hand of its air and taken for granted from then on, oldest first.',
      resolve: ({ assumedAir }) => stepsOf(assumedAir),
    }),
    sensors: t.field({
      type: [SensorRef],
      description: 'Its temperature and humidity sensors, by name.',
      resolve: (room, _, { database }) =>
        database.read.sensor.findMany({ where: { roomId: room.id }, orderBy: { name: 'asc' } }),
    }),
    air: t.field({
      type: [AirPointRef],
      description: "Its air over time: the median of its sensors, gaps filled by the room's typical day.",
      complexity: { field: 10, multiplier: 0 },
      args: {
        from: t.arg({ type: 'DateTime', description: 'From here on; a week before `until` when not given.' }),
        until: t.arg({
          type: 'DateTime',
          description: 'Until here; now when not given. What is yet to come is typical.',
        }),
        points: t.arg.int({
          defaultValue: 300,
          description: `How many points at most, 1 to ${mostPoints}; each stands for as many 5-minute blocks.`,
        }),
      },
      resolve: (room, { points, ...range }, context) => {
        const most = points ?? 300;
        if (most < 1 || most > mostPoints) {
          const expected = `a whole number from 1 to ${mostPoints}`;
          throw new Refused(`invalid points: ${most}, ${expected}`, 'points', expected);
        }
        const { from, until } = dayRange(range, context.now(), { days: 7, most: 3700 });
        return plotOf(context.database, room.id, from, until, most);
      },
    }),
  }),
});
