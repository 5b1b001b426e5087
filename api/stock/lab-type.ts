// The lab itself, and the outbox by which scripts follow what changes.
import { builder } from '../builder.ts';
import type { Context } from '../context.ts';
import type { Change } from '../database/generated/sqlite/client.ts';
import { limits } from '../builder.ts';
import { invalid } from '../errors.ts';
import { LabRef } from './refs.ts';

const CountsRef = builder
  .objectRef<{ containers: number; open: number; lots: number; sorbents: number }>('Counts')
  .implement({
    description: 'How much the lab keeps.',
    fields: (t) => ({
      containers: t.exposeInt('containers', { description: 'Containers that hold something still.' }),
      open: t.exposeInt('open', { description: 'Containers that stand open.' }),
      lots: t.exposeInt('lots', { description: 'Lots.' }),
      sorbents: t.exposeInt('sorbents', { description: 'Sorbents.' }),
    }),
  });

async function countsOf({ database: { read }, lab }: Context) {
  const labId = lab.id;
  const [containers, open, lots, sorbents] = await Promise.all([
    read.container.count({ where: { labId, finishedAt: null } }),
    read.container.count({ where: { labId, isOpen: true } }),
    read.lot.count({ where: { labId } }),
    read.sorbent.count({ where: { labId } }),
  ]);
  return { containers, open, lots, sorbents };
}

LabRef.implement({
  description: 'The lab whose book this is.',
  fields: (t) => ({
    name: t.exposeString('name', { description: 'Its name.' }),
    timeZone: t.exposeString('timeZone', {
      description: 'Its time zone, such as `Europe/Helsinki`; times are kept in UTC and shown in it.',
    }),
    isDemo: t.exposeBoolean('isDemo', { description: 'The invented demo lab.' }),
    now: t.field({
      type: 'DateTime',
      description: 'The time by the server’s clock.',
      resolve: (_, __, { now }) => now(),
    }),
    lastChange: t.int({
      description: 'The number of the last of its `changes`: while it stays the same, nothing was written. 0 of none.',
      resolve: async ({ id }, _, { database }) => {
        const last = await database.read.change.findFirst({
          where: { labId: id },
          orderBy: { id: 'desc' },
          select: { id: true },
        });
        return last?.id ?? 0;
      },
    }),
    counts: t.field({
      type: CountsRef,
      description: 'How much it keeps.',
      resolve: (_, __, context) => countsOf(context),
    }),
  }),
});

const ChangeKindEnum = builder.enumType('ChangeKind', {
  description: 'What became of a thing.',
  values: {
    MADE: { description: 'It is new.' },
    CHANGED: { description: 'Something about it changed.' },
    GONE: { description: 'It is gone.' },
  },
});

const ChangeRef = builder.objectRef<Change>('Change').implement({
  description: 'That something changed: read what it is now by its id.',
  fields: (t) => ({
    number: t.int({
      description: 'Running number; ask for what comes after the last one you know.',
      resolve: ({ id }) => id,
    }),
    at: t.expose('at', { type: 'DateTime', description: 'When it was written.' }),
    entity: t.exposeString('entity', { description: 'What kind of thing, such as `Container` or `Event`.' }),
    entityId: t.exposeString('entityId', { description: 'Its key.' }),
    kind: t.field({ type: ChangeKindEnum, description: 'What became of it.', resolve: ({ kind }) => kind }),
  }),
});

builder.queryFields((t) => ({
  lab: t.field({ type: LabRef, description: 'The lab whose book this is.', resolve: (_, __, { lab }) => lab }),
  changes: t.field({
    type: [ChangeRef],
    description: 'What changed since, oldest first. Poll it with the last number you know.',
    args: {
      after: t.arg.int({ description: 'The last number you know; from the beginning when not given.' }),
      first: t.arg.int({ description: `How many at most; ${limits.pageSize} when not given, which is the most.` }),
    },
    resolve: (_, { after, first }, { database, lab }) => {
      const take = first ?? limits.pageSize;
      if (take < 0 || take > limits.pageSize) throw invalid('first', take, `from 0 to ${limits.pageSize} a page`);
      return database.read.change.findMany({
        where: { labId: lab.id, id: { gt: after ?? 0 } },
        orderBy: { id: 'asc' },
        take,
      });
    },
  }),
}));
