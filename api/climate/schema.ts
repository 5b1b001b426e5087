// What GraphQL knows of rooms and their air: types, queries and mutations.
import { builder } from '../builder.ts';
import { addMutation } from '../mutation.ts';
import { RoomKindEnum } from './room-type.ts';
import { RoomRef } from './refs.ts';
import { addRoom, roomInput } from './rooms.ts';
import './sensor-type.ts';

const RoomAdded = builder.objectRef<{ roomId: string }>('RoomAdded').implement({
  description: 'A room was added.',
  fields: (t) => ({
    room: t.field({
      type: RoomRef,
      description: 'The room.',
      resolve: async ({ roomId }, _, { load }) => {
        const room = await load.room.load(roomId);
        if (!room) throw new Error(`room ${roomId} is gone`);
        return room;
      },
    }),
  }),
});

addMutation('addRoom', {
  description: 'Adds a room, a cold store or a desiccator.',
  check: roomInput,
  success: RoomAdded,
  run: (input, context) => addRoom(context, input),
  fields: (t) => ({
    name: t.string({ required: true, description: 'Its name, once in the lab.' }),
    kind: t.field({ type: RoomKindEnum, description: 'A room (when not given), a cold store or a desiccator.' }),
    assumedHumidityPercent: t.float({
      description: 'Relative humidity to take for granted while there are no readings, %, 0 to 100.',
    }),
    assumedTemperatureC: t.float({
      description: 'Temperature to take for granted while there are no readings, °C, -40 to 85.',
    }),
    desiccantRenewedAt: t.field({ type: 'DateTime', description: 'When its desiccant was last renewed.' }),
  }),
});

builder.queryField('room', (t) =>
  t.field({
    type: RoomRef,
    nullable: true,
    description: 'The room of that name; null when there is none.',
    args: { name: t.arg.string({ required: true, description: 'Its name.' }) },
    resolve: (_, { name }, { database, lab }) =>
      database.read.room.findUnique({ where: { labId_name: { labId: lab.id, name } } }),
  }),
);
