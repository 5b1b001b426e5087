// A room as GraphQL shows it.
import { builder } from '../builder.ts';
import { RoomRef, SensorRef } from './refs.ts';

export const RoomKindEnum = builder.enumType('RoomKind', {
  description: 'What a room is: a room one works in, a cold store, or a desiccator (a room with its own humidity).',
  values: ['ROOM', 'COLD_STORE', 'DESICCATOR'] as const,
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
    sensors: t.field({
      type: [SensorRef],
      description: 'Its temperature and humidity sensors, by name.',
      resolve: (room, _, { database }) =>
        database.read.sensor.findMany({ where: { roomId: room.id }, orderBy: { name: 'asc' } }),
    }),
  }),
});
