// What happened, as GraphQL shows it: corrected events stay readable beside what counts instead.
import { builder } from '../builder.ts';
import type { Event } from '../database/generated/sqlite/client.ts';
import { connectionOf, pageOf, pageQuery, type Column } from '../page.ts';
import { saidOf } from './details.ts';
import { EventTypeEnum } from './enums.ts';
import { ContainerRef, EventRef, PersonRef, there } from './refs.ts';
import { roomIdIn, sentenceOf } from './sentence.ts';
import { totalCount } from './total.ts';

builder.node(EventRef, {
  name: 'Event',
  description:
    'Something that happened to a container: when it happened, when it was written down, by whom. Never edited; a later event may correct it.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.event.load(id),
  fields: (t) => ({
    type: t.field({ type: EventTypeEnum, description: 'What happened.', resolve: ({ type }) => type }),
    at: t.expose('at', { type: 'DateTime', description: 'When it happened.' }),
    recordedAt: t.expose('recordedAt', { type: 'DateTime', description: 'When it was written down.' }),
    by: t.field({
      type: PersonRef,
      nullable: true,
      description: 'Who wrote it down; null when nobody said.',
      resolve: ({ actorId }, _, { load }) => (actorId ? load.person.load(actorId) : null),
    }),
    note: t.exposeString('note', { nullable: true, description: 'What somebody noted beside it.' }),
    sentence: t.string({
      description: 'It in one sentence, such as `210 g poured into 4M7-2XK`.',
      resolve: async (event, _, { load }) => {
        const said = saidOf(event.type, event.detail);
        const roomId = roomIdIn(said);
        const other = event.otherContainerId ? await load.container.load(event.otherContainerId) : null;
        const room = roomId ? await load.room.load(roomId) : null;
        const { dryGrams, plates } = event;
        return sentenceOf(said, { dryGrams, plates, other: other?.label ?? null, room: room?.name ?? null });
      },
    }),
    container: t.field({
      type: ContainerRef,
      description: 'What it happened to.',
      resolve: async ({ containerId }, _, { load }) => there(await load.container.load(containerId), 'container'),
    }),
    otherContainer: t.field({
      type: ContainerRef,
      nullable: true,
      description: 'The container that was made, packed or filled by it, when there is one.',
      resolve: ({ otherContainerId }, _, { load }) => (otherContainerId ? load.container.load(otherContainerId) : null),
    }),
    dryGrams: t.exposeFloat('dryGrams', {
      nullable: true,
      description: 'Dry sorbent that left the container (or came in with it), as booked, g; null when none did.',
    }),
    plates: t.exposeInt('plates', { nullable: true, description: 'Plates that left (or came in), as booked.' }),
    detail: t.field({
      type: 'JSON',
      description: 'What else was said, by keys that name their units; water fractions are kg per kg dry sorbent.',
      resolve: ({ detail }) => detail,
    }),
    corrects: t.field({
      type: EventRef,
      nullable: true,
      description: 'The event it supersedes, when it is a correction.',
      resolve: ({ correctsId }, _, { load }) => (correctsId ? load.event.load(correctsId) : null),
    }),
    correctedBy: t.field({
      type: EventRef,
      nullable: true,
      description: 'The later event that supersedes it, when there is one.',
      resolve: ({ id }, _, { load }) => load.correctionOf.load(id),
    }),
    isVoid: t.boolean({
      description: 'It says that something did not happen, or was taken back itself.',
      resolve: ({ type, stands }) => type === 'CORRECTED' || !stands,
    }),
    counts: t.boolean({
      description: 'It counts: it was neither corrected nor taken back.',
      resolve: ({ stands }) => stands,
    }),
  }),
});

/** Newest first. */
const newestFirst: Column<Event>[] = [
  { path: ['at'], direction: 'desc', isTime: true, value: ({ at }) => at.getTime() },
  { path: ['place'], direction: 'desc', value: ({ place }) => place },
  { path: ['recordedSeq'], direction: 'desc', value: ({ recordedSeq }) => recordedSeq },
];

builder.interfaceField(ContainerRef, 'timeline', (t) =>
  t.connection(
    {
      type: EventRef,
      description: 'What happened to it, newest first, corrected events too.',
      resolve: async ({ id }, args, { database }) => {
        const page = pageOf(args, newestFirst);
        const about = { OR: [{ containerId: id }, { otherContainerId: id }] };
        const { where, ...rest } = pageQuery(newestFirst, page);
        const rows = await database.read.event.findMany({ where: { AND: [about, where] }, ...rest });
        return connectionOf(newestFirst, page, rows, () => database.read.event.count({ where: about }));
      },
    },
    {
      name: 'ContainerTimelineConnection',
      description: 'A page of a timeline.',
      fields: (t) => ({ totalCount: t.int(totalCount) }),
    },
    { name: 'ContainerTimelineEdge', description: 'An event with its place in the timeline.' },
  ),
);
