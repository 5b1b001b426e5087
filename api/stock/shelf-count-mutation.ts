// The mutation that puts the book right by a shelf count.
import { builder } from '../builder.ts';
import { RoomRef } from '../climate/refs.ts';
import { addMutation } from '../mutation.ts';
import { BasisEnum } from './enums.ts';
import { fresh } from './fresh.ts';
import { ContainerRef, EventRef, there } from './refs.ts';
import { shelfCounted, shelfCountSaid, type ShelfCounted } from './shelf-count.ts';

const ShelfCountedRef = builder.objectRef<ShelfCounted>('ShelfCounted').implement({
  description: 'A shelf was counted and the book put right.',
  fields: (t) => ({
    room: t.field({
      type: RoomRef,
      description: 'The room that was counted.',
      resolve: async ({ roomId }, _, { load }) => there(await load.room.load(roomId), 'room'),
    }),
    events: t.field({
      type: [EventRef],
      description: 'What was recorded, in the order of the count; each can be corrected or taken back.',
      resolve: async ({ eventIds }, _, { load }) =>
        (await Promise.all(eventIds.map((id) => load.event.load(id)))).map((row) => there(row, 'event')),
    }),
    asBooked: t.field({
      type: [ContainerRef],
      description: 'What was found as the book has it, so that nothing was recorded.',
      resolve: async ({ asBookedIds }, _, { load }) =>
        (await Promise.all(asBookedIds.map((id) => load.container.load(id)))).map((row) => there(row, 'container')),
    }),
    notes: t.exposeStringList('notes', {
      description: 'What disagreed with the book and was kept all the same, each in one sentence.',
    }),
  }),
});

const MissedAsEnum = builder.enumType('MissedAs', {
  description: 'What became of a container that a count did not find.',
  values: {
    NOT_FOUND: { description: 'Nobody knows: it is marked, and the book keeps it as it was.' },
    USED_UP: { description: 'It is used up.' },
    MOVED: { description: 'It was moved to another room.' },
  },
});

const FoundInput = builder.inputType('ShelfFoundInput', {
  description: 'A container that was found. An amount, where it was counted too, on one of the fields.',
  fields: (t) => ({
    label: t.string({ required: true, description: 'Label of the container.' }),
    grams: t.float({ description: 'What is in it, g, as the balance shows it (or dry, by `basis`).' }),
    basis: t.field({ type: BasisEnum, description: 'What the grams are counted on; as received when not given.' }),
    plates: t.int({ description: 'How many plates are in a box.' }),
    grossGrams: t.float({ description: 'Weight with the vessel, g; its tare must be known or given.' }),
    tareGrams: t.float({ description: 'Weight of the empty vessel, g.' }),
  }),
});

const MissedInput = builder.inputType('ShelfMissedInput', {
  description: 'A container that the book has there and the count did not find.',
  fields: (t) => ({
    label: t.string({ required: true, description: 'Label of the container.' }),
    as: t.field({ type: MissedAsEnum, required: true, description: 'What became of it.' }),
    room: t.string({ description: 'Name of the room it was moved to; wanted where it was moved.' }),
    note: t.string({ description: 'A note beside it.' }),
  }),
});

addMutation('recordShelfCount', {
  description:
    'A shelf was counted: what was found stands in that room from then on, with the amounts that were counted; what was said to be used up or discarded and stands there all the same is taken back; what was missed is marked. All of it or nothing.',
  check: shelfCountSaid,
  success: ShelfCountedRef,
  run: (input, context) => fresh(context, shelfCounted(context, input)),
  fields: (t) => ({
    room: t.string({ required: true, description: 'Name of the room or desiccator that was counted.' }),
    at: t.field({ type: 'DateTime', description: 'When it was counted; now when not given.' }),
    found: t.field({ type: [FoundInput], description: 'What was found there.' }),
    missed: t.field({ type: [MissedInput], description: 'What was not found, and what became of it.' }),
  }),
});
