// A container, or some of it, that waits to be dried, as GraphQL shows it.
import { builder } from '../builder.ts';
import { ContainerRef, there } from '../stock/schema.ts';
import { RequestRef } from './refs.ts';
import { StateEnum } from './request-state-type.ts';

builder.node(RequestRef, {
  name: 'DryingRequest',
  description: 'A container, or some of it, that waits to be dried.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.dryingRequest.load(id),
  fields: (t) => ({
    container: t.field({
      type: ContainerRef,
      description: 'What is to be dried.',
      resolve: async ({ containerId }, _, { load }) => there(await load.container.load(containerId), 'container'),
    }),
    dryGrams: t.exposeFloat('dryGrams', {
      nullable: true,
      description: 'How much of it, dry g; null for all, and for plates.',
    }),
    plates: t.exposeInt('plates', { nullable: true, description: 'How many plates; null for all, and for sorbent.' }),
    why: t.exposeString('why', { description: 'Why.' }),
    wantedBy: t.expose('wantedBy', {
      type: 'DateTime',
      nullable: true,
      description: 'By when it is wanted; null when nobody said.',
    }),
    temperatureC: t.exposeFloat('temperatureC', {
      nullable: true,
      description: 'Temperature of the recipe it is meant for, °C; null when nobody said.',
    }),
    minutes: t.exposeFloat('minutes', {
      nullable: true,
      description: 'Minutes of the recipe it is meant for; null when nobody said.',
    }),
    priority: t.exposeInt('weight', {
      description: 'The planner’s weight: 1, 2, 4 or 8. A minute late counts so many times.',
    }),
    depthMm: t.exposeFloat('depthMm', {
      nullable: true,
      description: 'Depth of its trays, mm; null: the recipe’s, and for plates.',
    }),
    readyAt: t.expose('readyAt', {
      type: 'DateTime',
      nullable: true,
      description: 'Not before this; null when it is ready now.',
    }),
    needId: t.exposeID('needId', {
      nullable: true,
      description: 'The need that it was asked for; null when there is none.',
    }),
    position: t.exposeFloat('position', { description: 'Its place in the order set by hand: smaller comes first.' }),
    state: t.field({ type: StateEnum, description: 'Whether it waits still.', resolve: ({ state }) => state }),
    madeAt: t.expose('madeAt', { type: 'DateTime', description: 'When it was asked for.' }),
    endedAt: t.expose('endedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was dried or withdrawn; null while it waits.',
    }),
  }),
});
