// People, vessels and what is kept for somebody, as GraphQL shows them.
import { builder } from '../builder.ts';
import { ContainerRef, HoldRef, PersonRef, there, VesselRef } from './refs.ts';

builder.node(PersonRef, {
  name: 'Person',
  description: 'Somebody of the lab, by role.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.person.load(id),
  fields: (t) => ({
    role: t.exposeString('role', { description: 'What they do, such as `bench lead`.' }),
    shortName: t.exposeString('shortName', {
      description: 'Short name, once in the lab; the header `Drumkeep-Person` takes it.',
    }),
  }),
});

builder.node(VesselRef, {
  name: 'Vessel',
  description: 'A kind of vessel with its inner sizes.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.vessel.load(id),
  fields: (t) => ({
    name: t.exposeString('name', { description: 'Its name, once in the lab.' }),
    innerDiameterMm: t.exposeFloat('innerDiameterMm', { description: 'Inner diameter, mm.' }),
    heightMm: t.exposeFloat('heightMm', { description: 'Inner height, mm.' }),
    mouthDiameterMm: t.exposeFloat('mouthDiameterMm', { description: 'Diameter of the mouth, mm.' }),
    volumeMl: t.exposeFloat('volumeMl', { description: 'Volume, mL.' }),
    source: t.exposeString('source', { description: 'Where the sizes come from.' }),
  }),
});

builder.node(HoldRef, {
  name: 'Hold',
  description: 'Grams or plates of a container that are kept for somebody.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.hold.load(id),
  fields: (t) => ({
    container: t.field({
      type: ContainerRef,
      description: 'The container it is kept in.',
      resolve: async ({ containerId }, _, { load }) => there(await load.container.load(containerId), 'container'),
    }),
    dryGrams: t.exposeFloat('dryGrams', { nullable: true, description: 'Dry sorbent kept, g; null for plates.' }),
    plates: t.exposeInt('plates', { nullable: true, description: 'Plates kept; null for sorbent.' }),
    forWhat: t.exposeString('forWhat', { description: 'For what, or for whom.' }),
    until: t.expose('until', {
      type: 'DateTime',
      nullable: true,
      description: 'Until when; null: until it is let go.',
    }),
    madeAt: t.expose('madeAt', { type: 'DateTime', description: 'Since when it is kept.' }),
    releasedAt: t.expose('releasedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was let go; null while kept.',
    }),
  }),
});
