// What GraphQL knows of rooms and their air: types, queries and mutations.
import { resolveArrayConnection } from '@pothos/plugin-relay';
import { builder } from '../builder.ts';
import type { Context } from '../context.ts';
import { RoomRef } from './refs.ts';
import './room-type.ts';
import './sensor-type.ts';
import './room-mutations.ts';
import './reading-mutations.ts';
import './import-fields.ts';

const roomsOf = ({ database, lab }: Context) =>
  database.read.room.findMany({ where: { labId: lab.id }, orderBy: { name: 'asc' } });

builder.queryField('room', (t) =>
  t.field({
    type: RoomRef,
    nullable: true,
    description: 'The room of that name, in any case; null when there is none.',
    args: { name: t.arg.string({ required: true, description: 'Its name.' }) },
    resolve: async (_, { name }, context) => {
      const rooms = await roomsOf(context);
      const wanted = name.trim().toLowerCase();
      const exact = rooms.find((room) => room.name === name);
      return exact ?? rooms.find((room) => room.name.toLowerCase() === wanted) ?? null;
    },
  }),
);

builder.queryField('rooms', (t) =>
  t.connection(
    {
      type: RoomRef,
      description: 'Rooms, cold stores and desiccators, by name.',
      resolve: async (_, args, context) => {
        const rooms = await roomsOf(context);
        return { ...resolveArrayConnection({ args }, rooms), totalCount: rooms.length };
      },
    },
    {
      name: 'RoomsConnection',
      description: 'A page of rooms.',
      fields: (connection) => ({
        totalCount: connection.int({
          description: 'How many there are in all.',
          resolve: (rooms) => (rooms as unknown as { totalCount: number }).totalCount,
        }),
      }),
    },
    { name: 'RoomsEdge', description: 'A room with its place in the list.' },
  ),
);
