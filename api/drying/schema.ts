// What GraphQL knows of drying: the list of what to dry, and beside it recipes and weighings.
import { builder } from '../builder.ts';
import type { DryingRequest } from '../database/generated/sqlite/client.ts';
import { addMutation } from '../mutation.ts';
import { connectionOf, pageOf, pageQuery, type Column } from '../page.ts';
import {
  BasisEnum,
  ClosureEnum,
  ContainerRef,
  fresh,
  inOvenFields,
  RecordedRef,
  there,
  totalCount,
} from '../stock/schema.ts';
import { driedSaid, requestDried } from './dried.ts';
import './loss-type.ts';
import './recipe-type.ts';
import './forecast-type.ts';
import { RequestRef } from './refs.ts';
import {
  changeSaid,
  dryingChanged,
  dryingMoved,
  dryingRequested,
  dryingRestored,
  dryingWithdrawn,
  moveSaid,
  requestSaid,
  withdrawSaid,
  type Requested,
} from './service.ts';
import type { Context } from '../context.ts';

const StateEnum = builder.enumType('DryingRequestState', {
  description: 'What became of a drying request.',
  values: {
    WAITING: { description: 'It waits.' },
    DRIED: { description: 'A drying was recorded.' },
    WITHDRAWN: { description: 'It was withdrawn, or nothing was left to dry.' },
  },
});

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

builder.interfaceField(ContainerRef, 'dryingRequests', (t) =>
  t.field({
    type: [RequestRef],
    description: 'What was asked to be dried of it, oldest first, ended ones too.',
    resolve: ({ id }, _, { load }) => load.dryingRequests.load(id),
  }),
);

const inOrder: Column<DryingRequest>[] = [
  { path: ['position'], direction: 'asc', value: ({ position }) => position },
  { path: ['id'], direction: 'asc', value: ({ id }) => id },
];

builder.queryField('dryingRequests', (t) =>
  t.connection(
    {
      type: RequestRef,
      description: 'The list of what to dry, in the order set by hand.',
      args: {
        state: t.arg({ type: [StateEnum], description: 'Only in these states; those that wait when not given.' }),
      },
      resolve: async (_, args, { database: { read }, lab }) => {
        const page = pageOf(args, inOrder);
        const of = { labId: lab.id, state: { in: args.state ?? ['WAITING' as const] } };
        const { where, ...rest } = pageQuery(inOrder, page);
        const rows = await read.dryingRequest.findMany({ where: { AND: [of, where] }, ...rest });
        return connectionOf(inOrder, page, rows, () => read.dryingRequest.count({ where: of }));
      },
    },
    {
      name: 'DryingRequestsConnection',
      description: 'A page of drying requests.',
      fields: (f) => ({ totalCount: f.int(totalCount) }),
    },
    { name: 'DryingRequestsEdge', description: 'A drying request with its place in the list.' },
  ),
);

async function requestOf(context: Context, requested: Promise<Requested>): Promise<DryingRequest> {
  const { requestId } = await fresh(context, requested);
  return there(await context.load.dryingRequest.load(requestId), 'drying request');
}

const planFields = (t: Parameters<Parameters<typeof builder.inputType>[1]['fields']>[0]) => ({
  priority: t.int({ description: 'The planner’s weight: 1, 2, 4 or 8; 1 when not given.' }),
  depthMm: t.float({ description: 'Depth of its trays, mm; the recipe’s when not given. None for plates.' }),
  readyAt: t.field({ type: 'DateTime', description: 'Not before this; at once when not given.' }),
});

addMutation('requestDrying', {
  description:
    'Puts a container, or some of it, on the list of what to dry. Sorbent that touched solvent or sample, solvent-wet plates, and recipes above what the material stands are refused.',
  check: requestSaid,
  success: RequestRef,
  run: (input, context) => requestOf(context, dryingRequested(context, input)),
  fields: (t) => ({
    label: t.string({ required: true, description: 'Label of the container.' }),
    dryGrams: t.float({ description: 'How much of it, dry g; all when not given.' }),
    plates: t.int({ description: 'How many plates of a box; all when not given.' }),
    why: t.string({ required: true, description: 'Why.' }),
    wantedBy: t.field({ type: 'DateTime', description: 'By when it is wanted.' }),
    temperatureC: t.float({ description: 'Temperature of the recipe it is meant for, °C.' }),
    minutes: t.float({ description: 'Minutes of the recipe it is meant for.' }),
    ...planFields(t),
  }),
});

addMutation('setDryingRequest', {
  description:
    'Changes when a request that waits is wanted, how much it counts, how deep its trays are. What is not given stays; null takes it away.',
  check: changeSaid,
  success: RequestRef,
  run: (input, context) => requestOf(context, dryingChanged(context, input)),
  fields: (t) => ({
    id: t.id({ required: true, description: 'Which request.' }),
    wantedBy: t.field({ type: 'DateTime', description: 'By when it is wanted.' }),
    temperatureC: t.float({ description: 'Temperature it is meant for, °C; null: the recipe’s.' }),
    minutes: t.float({ description: 'Minutes it is meant for; null: the recipe’s.' }),
    ...planFields(t),
  }),
});

addMutation('withdrawDrying', {
  description: 'Takes a request off the list.',
  check: withdrawSaid,
  success: RequestRef,
  run: (input, context) => requestOf(context, dryingWithdrawn(context, input)),
  fields: (t) => ({ id: t.id({ required: true, description: 'Which request.' }) }),
});

addMutation('restoreDrying', {
  description: 'Puts a withdrawn request back on the list, where it was.',
  check: withdrawSaid,
  success: RequestRef,
  run: (input, context) => requestOf(context, dryingRestored(context, input)),
  fields: (t) => ({ id: t.id({ required: true, description: 'Which request.' }) }),
});

addMutation('recordRequestedDrying', {
  description:
    'What a request waited for was dried: all of the container, or some of it, which goes into a container of its own and is dried there.',
  check: driedSaid,
  success: RecordedRef,
  run: (input, context) => fresh(context, requestDried(context, input)),
  fields: (t) => ({
    id: t.id({ required: true, description: 'Which request.' }),
    grams: t.float({ description: 'How much of it was dried, g; all of it when not given.' }),
    basis: t.field({ type: BasisEnum, description: 'What the grams are counted on; as received when not given.' }),
    plates: t.int({ description: 'How many plates of a box were dried; all when not given.' }),
    vessel: t.string({ description: 'With grams: name of the listed vessel that holds what was dried.' }),
    closure: t.field({
      type: ClosureEnum,
      description: 'With some of it: how what was dried stands from then on; well closed when not given.',
    }),
    temperatureC: t.float({ description: 'Temperature of the oven, °C.' }),
    minutes: t.float({ description: 'Minutes at that temperature.' }),
    vacuum: t.boolean({ description: 'Under vacuum; not when not given.' }),
    waterFraction: t.float({
      description: 'Water measured afterwards, kg per kg dry sorbent; left to the recipe when not given.',
    }),
    ...inOvenFields(t),
    at: t.field({ type: 'DateTime', description: 'When it was dry; now when not given.' }),
    note: t.string({ description: 'A note beside it.' }),
  }),
});

addMutation('moveDryingRequest', {
  description: 'Puts a request before another one, or last.',
  check: moveSaid,
  success: RequestRef,
  run: (input, context) => requestOf(context, dryingMoved(context, input)),
  fields: (t) => ({
    id: t.id({ required: true, description: 'Which request.' }),
    before: t.id({ description: 'The request it comes before; last when not given.' }),
  }),
});
