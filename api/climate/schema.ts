// What GraphQL knows of rooms and their air: types, queries and mutations.
import { builder } from '../builder.ts';
import { RoomRef } from './refs.ts';
import './room-type.ts';
import './sensor-type.ts';
import './room-mutations.ts';
import './reading-mutations.ts';

builder.queryField('room', (t) =>
  t.field({
    type: RoomRef,
    nullable: true,
    description: 'The room of that name, in any case; null when there is none.',
    args: { name: t.arg.string({ required: true, description: 'Its name.' }) },
    resolve: async (_, { name }, { database, lab }) => {
      const rooms = await database.read.room.findMany({ where: { labId: lab.id } });
      const wanted = name.trim().toLowerCase();
      return (
        rooms.find((room) => room.name === name) ?? rooms.find((room) => room.name.toLowerCase() === wanted) ?? null
      );
    },
  }),
);
