// What can be asked of the stock.
import { builder } from '../builder.ts';
import type { Context } from '../context.ts';
import type { Lot } from '../database/generated/sqlite/client.ts';
import { connectionOf, inOrderOfMaking, pageOf, pageQuery, type Column, type PageArgs } from '../page.ts';
import { ClosureEnum, ContainerKindEnum, ExposureStateEnum } from './enums.ts';
import { labelMeant } from './label.ts';
import { listColumns } from './list-columns.ts';
import { containerOrders, listContainers } from './list.ts';
import { ContainerRef, LotRef, PersonRef, SorbentRef, SupplierRef, VesselRef } from './refs.ts';
import { totalCount } from './total.ts';

export const FilterInput = builder.inputType('ContainerFilter', {
  description: 'Which containers; what is left out does not narrow. Names, in any case.',
  fields: (t) => ({
    state: t.field({ type: [ExposureStateEnum], description: 'In one of these states.' }),
    isOpen: t.boolean({ description: 'Standing open, or not.' }),
    sorbent: t.string({ description: 'Part of a sorbent’s name, or a class such as `silica`.' }),
    lot: t.string({ description: 'A lot number.' }),
    room: t.string({ description: 'The name of the room they stand in.' }),
    search: t.string({
      description: 'Part of a label, of a lot number, of a sorbent’s name, or of the code it had before.',
    }),
    closure: t.field({ type: [ClosureEnum], description: 'With one of these closures now.' }),
    kind: t.field({ type: [ContainerKindEnum], description: 'Of one of these kinds.' }),
    inUse: t.boolean({ description: 'Holding something still (true), or finished (false).' }),
    labels: t.stringList({ description: 'With one of these labels, written as they are.' }),
  }),
});

const OrderEnum = builder.enumType('ContainerOrder', {
  description: 'The order of a list of containers.',
  values: {
    MOST_URGENT: { description: 'By what to do first: redry, use soon, unknown, too dry, good; then by hours left.' },
    LABEL: { description: 'By label.' },
    OPENED_AT: { description: 'Longest open first, closed ones last.' },
    RECEIVED_AT: { description: 'Last come in or filled first.' },
    WETTEST: { description: 'By the water of the next scoop, wettest first, unknown last.' },
  } satisfies Record<(typeof containerOrders)[number], { description: string }>,
});

builder.queryFields((t) => ({
  containers: t.connection(
    {
      type: ContainerRef,
      description: 'Containers, 50 a page unless asked otherwise, at most 200. Most urgent first.',
      args: {
        filter: t.arg({ type: FilterInput, description: 'Which ones; all when not given.' }),
        orderBy: t.arg({ type: OrderEnum, description: 'In which order; most urgent first when not given.' }),
      },
      resolve: (_, args, context, info) => listContainers(context, args, listColumns(info)),
    },
    {
      name: 'ContainersConnection',
      description: 'A page of containers.',
      fields: (f) => ({ totalCount: f.int(totalCount) }),
    },
    { name: 'ContainersEdge', description: 'A container with its place in the list.' },
  ),
  container: t.field({
    type: ContainerRef,
    nullable: true,
    description: 'The container with this label; null when there is none. A label with a wrong sign is refused.',
    args: {
      label: t.arg.string({
        required: true,
        description:
          'Its label; case and dash do not matter, look-alikes are understood, `?` stands for one sign that cannot be read.',
      }),
    },
    resolve: (_, { label }, { database, lab }) =>
      database.read.container.findFirst({ where: { labId: lab.id, label: labelMeant(label, 'label'), isVoid: false } }),
  }),
  lots: t.connection(
    {
      type: LotRef,
      description: 'Lots, last received first.',
      args: { sorbent: t.arg.string({ description: 'Only lots of the sorbent of this name.' }) },
      resolve: (_, args, context) => listLots(context, args),
    },
    { name: 'LotsConnection', description: 'A page of lots.', fields: (f) => ({ totalCount: f.int(totalCount) }) },
    { name: 'LotsEdge', description: 'A lot with its place in the list.' },
  ),
  sorbents: t.connection(
    {
      type: SorbentRef,
      description: 'Sorbents, in the order they were added.',
      resolve: (_, args, { database: { read }, lab }) =>
        listed(
          args,
          lab.id,
          (query) => read.sorbent.findMany(query),
          (where) => read.sorbent.count({ where }),
        ),
    },
    {
      name: 'SorbentsConnection',
      description: 'A page of sorbents.',
      fields: (f) => ({ totalCount: f.int(totalCount) }),
    },
    { name: 'SorbentsEdge', description: 'A sorbent with its place in the list.' },
  ),
  suppliers: t.connection(
    {
      type: SupplierRef,
      description: 'Suppliers, in the order they were added.',
      resolve: (_, args, { database: { read }, lab }) =>
        listed(
          args,
          lab.id,
          (query) => read.supplier.findMany(query),
          (where) => read.supplier.count({ where }),
        ),
    },
    {
      name: 'SuppliersConnection',
      description: 'A page of suppliers.',
      fields: (f) => ({ totalCount: f.int(totalCount) }),
    },
    { name: 'SuppliersEdge', description: 'A supplier with its place in the list.' },
  ),
  people: t.connection(
    {
      type: PersonRef,
      description: 'People of the lab, in the order they were added.',
      resolve: (_, args, { database: { read }, lab }) =>
        listed(
          args,
          lab.id,
          (query) => read.person.findMany(query),
          (where) => read.person.count({ where }),
        ),
    },
    { name: 'PeopleConnection', description: 'A page of people.', fields: (f) => ({ totalCount: f.int(totalCount) }) },
    { name: 'PeopleEdge', description: 'A person with their place in the list.' },
  ),
  vessels: t.connection(
    {
      type: VesselRef,
      description: 'Kinds of vessel, in the order they were added.',
      resolve: (_, args, { database: { read }, lab }) =>
        listed(
          args,
          lab.id,
          (query) => read.vessel.findMany(query),
          (where) => read.vessel.count({ where }),
        ),
    },
    {
      name: 'VesselsConnection',
      description: 'A page of vessels.',
      fields: (f) => ({ totalCount: f.int(totalCount) }),
    },
    { name: 'VesselsEdge', description: 'A vessel with its place in the list.' },
  ),
}));

interface Query {
  where: Record<string, unknown>;
  orderBy: Record<string, unknown>[];
  take: number;
}

/** A page of the lab's rows of one table, in the order of making. */
async function listed<Row extends { id: string }>(
  args: PageArgs,
  labId: string,
  rows: (query: Query) => Promise<Row[]>,
  count: (where: { labId: string }) => Promise<number>,
) {
  const columns = inOrderOfMaking<Row>();
  const page = pageOf(args, columns);
  const { where, ...rest } = pageQuery(columns, page);
  return connectionOf(columns, page, await rows({ where: { AND: [{ labId }, where] }, ...rest }), () =>
    count({ labId }),
  );
}

const lastReceived: Column<Lot>[] = [
  { path: ['receivedAt'], direction: 'desc', isTime: true, value: ({ receivedAt }) => receivedAt.getTime() },
  { path: ['id'], direction: 'desc', value: ({ id }) => id },
];

async function listLots({ database: { read }, lab }: Context, args: PageArgs & { sorbent?: string | null }) {
  const page = pageOf(args, lastReceived);
  const { where, ...rest } = pageQuery(lastReceived, page);
  const sorbents = args.sorbent ? await read.sorbent.findMany({ where: { labId: lab.id } }) : [];
  const named = sorbents.filter(({ name }) => name.toLowerCase() === args.sorbent?.trim().toLowerCase());
  const of = { labId: lab.id, ...(args.sorbent && { sorbentId: { in: named.map(({ id }) => id) } }) };
  const rows = await read.lot.findMany({ where: { AND: [of, where] }, ...rest });
  return connectionOf(lastReceived, page, rows, () => read.lot.count({ where: of }));
}
