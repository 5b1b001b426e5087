// The lineage of a container as GraphQL shows it: from its lot to here, and on.
import { builder } from '../builder.ts';
import { kinOf, relations, type Kin } from '../database/lineage.ts';
import { ContainerRef, there } from './refs.ts';

const RelationEnum = builder.enumType('LineageRelation', {
  description: 'How one container belongs to another.',
  values: {
    ANCESTOR: { description: 'It was poured, taken or packed from this one, at once or over others.' },
    SIBLING: { description: 'This one came from the same container.' },
    COMBINED_FROM: { description: 'This one was emptied into it.' },
    DESCENDANT: { description: 'This one was poured, taken or packed from it, at once or over others.' },
    EMPTIED_INTO: { description: 'It was emptied into this one.' },
  } satisfies Record<(typeof relations)[number], { description: string }>,
});

const KinRef = builder.objectRef<Kin>('Kin').implement({
  description: 'A container of the same lineage.',
  fields: (t) => ({
    relation: t.field({ type: RelationEnum, description: 'How it belongs.', resolve: ({ relation }) => relation }),
    level: t.exposeInt('level', { description: 'Steps from here: below 0 towards the lot, above 0 away from it.' }),
    container: t.field({
      type: ContainerRef,
      description: 'The container.',
      resolve: async ({ id }, _, { load }) => there(await load.container.load(id), 'container'),
    }),
  }),
});

const LineageRef = builder.objectRef<{ kin: Kin[]; more: boolean }>('Lineage').implement({
  description: 'Where a container came from and what became of it.',
  fields: (t) => ({
    kin: t.field({
      type: [KinRef],
      description: 'Sources first, the farthest first; then what was emptied into it, what came from the same, and on.',
      resolve: ({ kin }) => kin,
    }),
    more: t.exposeBoolean('more', { description: 'There are more than the 200 told.' }),
  }),
});

builder.interfaceFields(ContainerRef, (t) => ({
  lineage: t.field({
    type: LineageRef,
    complexity: 20,
    description: 'Where it came from and what became of it, at most 200 containers.',
    resolve: ({ id }, _, { database }) => kinOf(database, id),
  }),
  habitSaid: t.boolean({
    description: 'Somebody said whether it is opened by habit.',
    resolve: async ({ id }, _, { load }) =>
      (await load.habitsSaid.load(id)).some(({ detail }) => isSaid(detail, 'habit')),
  }),
  scoopingSaid: t.boolean({
    description: 'Somebody said how one scoops from it.',
    resolve: async ({ id, scooping }, _, { load }) =>
      scooping !== 'TOP' || (await load.habitsSaid.load(id)).some(({ detail }) => isSaid(detail, 'scooping')),
  }),
}));

const isSaid = (detail: unknown, what: 'habit' | 'scooping'): boolean =>
  typeof detail === 'object' && detail !== null && (detail as Record<string, unknown>)[what] !== undefined;
