// The list of containers: what is asked for becomes one statement for the page, and one more when its total is wanted.
import type { Context } from '../context.ts';
import type {
  Closure,
  Container,
  ContainerKind,
  Exposure,
  ExposureState,
  Prisma,
} from '../database/generated/sqlite/client.ts';
import { placesOf, type Placed } from '../database/by-state.ts';
import type { OpenFilter } from '../database/open-filter.ts';
import { openList, type Beside, type OpenList } from '../database/open-list.ts';
import type { ListColumns } from './list-columns.ts';
import { connectionOf, pageOf, pageQuery, type Column, type Connection, type Page, type PageArgs } from '../page.ts';

export interface ContainerFilter {
  state?: ExposureState[] | null;
  isOpen?: boolean | null;
  sorbent?: string | null;
  lot?: string | null;
  room?: string | null;
  search?: string | null;
  closure?: Closure[] | null;
  kind?: ContainerKind[] | null;
  inUse?: boolean | null;
  labels?: string[] | null;
}

export const containerOrders = ['MOST_URGENT', 'LABEL', 'OPENED_AT', 'RECEIVED_AT', 'WETTEST'] as const;
export type ContainerOrder = (typeof containerOrders)[number];

/** A row with what its order is keyed by, and what was read beside it. */
export type Listed = Container & Beside & { exposure?: Exposure | null };

const byId: Column<Listed> = { path: ['id'], direction: 'asc', value: ({ id }) => id };

export const orders: Record<ContainerOrder, Column<Listed>[]> = {
  MOST_URGENT: [
    { path: ['exposure', 'urgency'], direction: 'asc', value: ({ exposure }) => exposure?.urgency ?? 0 },
    byId,
  ],
  LABEL: [{ path: ['label'], direction: 'asc', value: ({ label }) => label }, byId],
  OPENED_AT: [
    {
      path: ['openedAt'],
      direction: 'asc',
      nullable: true,
      isTime: true,
      value: ({ openedAt }) => openedAt?.getTime() ?? null,
    },
    byId,
  ],
  RECEIVED_AT: [
    { path: ['cameInAt'], direction: 'desc', isTime: true, value: ({ cameInAt }) => cameInAt.getTime() },
    byId,
  ],
  WETTEST: [
    {
      path: ['exposure', 'scoopWaterFraction'],
      direction: 'desc',
      nullable: true,
      value: ({ exposure }) => exposure?.scoopWaterFraction ?? null,
    },
    byId,
  ],
};

const includes = (text: string, part: string): boolean => text.toLowerCase().includes(part.trim().toLowerCase());
const is = (text: string, other: string): boolean => text.toLowerCase() === other.trim().toLowerCase();

/**
 * Ids of the few things that a filter names: sorbents by a part of their name or by class, rooms and lots by name.
 * Compared here, since only one of the two engines compares text without case.
 */
async function idsNamed({ database, lab }: Context, filter: ContainerFilter) {
  const { sorbent, room, lot, search } = filter;
  const where = { labId: lab.id };
  const sorbents = sorbent || search ? await database.read.sorbent.findMany({ where }) : [];
  const rooms = room ? await database.read.room.findMany({ where }) : [];
  const lots = lot || search ? await database.read.lot.findMany({ where, select: { id: true, lotNumber: true } }) : [];
  return {
    lots: lots.filter(({ lotNumber }) => lot && is(lotNumber, lot)).map(({ id }) => id),
    lotsFound: lots.filter(({ lotNumber }) => search && includes(lotNumber, search)).map(({ id }) => id),
    sorbents: sorbents
      .filter(({ name, sorbentClass }) => sorbent && (includes(name, sorbent) || is(sorbentClass, sorbent)))
      .map(({ id }) => id),
    found: sorbents.filter(({ name }) => search && includes(name, search)).map(({ id }) => id),
    rooms: rooms.filter(({ name }) => room && is(name, room)).map(({ id }) => id),
  };
}

/** What of a label somebody typed: its signs without dash and spaces, as they are stored. */
function labelPart(search: string): string {
  const signs = search.toUpperCase().replace(/[^0-9A-Z]/g, '');
  return signs.length > 3 ? `${signs.slice(0, 3)}-${signs.slice(3)}` : signs;
}

async function condition(context: Context, filter: ContainerFilter): Promise<Prisma.ContainerWhereInput> {
  const { state, isOpen, lot, closure, kind, inUse, sorbent, room, search } = filter;
  const ids = await idsNamed(context, filter);
  const all: Prisma.ContainerWhereInput[] = [{ labId: context.lab.id, isVoid: false }];
  if (state) all.push({ exposure: { state: { in: state } } });
  if (typeof isOpen === 'boolean') all.push({ isOpen });
  if (typeof inUse === 'boolean') all.push({ finishedAt: inUse ? null : { not: null } });
  if (closure) all.push({ closure: { in: closure } });
  if (kind) all.push({ kind: { in: kind } });
  if (filter.labels) all.push({ label: { in: filter.labels } });
  if (lot) all.push({ lotId: { in: ids.lots } });
  if (sorbent) all.push({ lot: { sorbentId: { in: ids.sorbents } } });
  if (room) all.push({ roomId: { in: ids.rooms } });
  if (search?.trim()) {
    const text = search.trim();
    const either: Prisma.ContainerWhereInput[] = [
      { lotId: { in: ids.lotsFound } },
      { lot: { sorbentId: { in: ids.found } } },
    ];
    const part = labelPart(text);
    if (part) either.push({ label: { contains: part } });
    // SQLite compares a code without case, PostgreSQL does not: codes are written in one case or as typed.
    for (const code of new Set([text, text.toUpperCase(), text.toLowerCase()]))
      either.push({ oldCode: { contains: code } });
    all.push({ OR: either });
  }
  return { AND: all };
}

export interface ListArgs extends PageArgs {
  filter?: ContainerFilter | null;
  orderBy?: ContainerOrder | null;
}

const everyColumn: ListColumns = { container: null, exposure: null, lot: null, sorbent: null, room: null };

/** The filter as a hand-written statement takes it; null where something is searched for. */
async function openFilter(context: Context, filter: ContainerFilter): Promise<OpenFilter | null> {
  const { state, isOpen, inUse, closure, kind, labels, sorbent, lot, room, search } = filter;
  if (search?.trim()) return null;
  const ids = sorbent || lot || room ? await idsNamed(context, filter) : null;
  return {
    labId: context.lab.id,
    isOpen,
    inUse,
    states: state,
    closures: closure,
    kinds: kind,
    labels,
    sorbentIds: sorbent ? ids?.sorbents : null,
    lotIds: lot ? ids?.lots : null,
    roomIds: room ? ids?.rooms : null,
  };
}

/** A filter and a page that the hand-written list knows: by urgency, forwards, and nothing searched for. */
async function openListOf(
  context: Context,
  { filter, orderBy }: ListArgs,
  page: Page,
  columns: ListColumns,
): Promise<OpenList | null> {
  if ((orderBy ?? 'MOST_URGENT') !== 'MOST_URGENT' || page.backwards || page.before) return null;
  const [urgency, id] = page.after ?? [];
  const after = typeof urgency === 'number' && typeof id === 'string' ? ([urgency, id] as const) : null;
  if (page.after && !after) return null;
  const of = await openFilter(context, filter ?? {});
  return of && { ...of, after, take: page.take + 1, columns };
}

/** The page by one hand-written statement; each row is its own exposure as well. */
async function openPage({ database }: Context, list: OpenList): Promise<Listed[]> {
  const rows = await openList(database, list);
  return rows.map((row) => Object.assign(row, { exposure: row }));
}

/** A page of containers; those whose making was taken back are left out. */
export async function listContainers(
  context: Context,
  args: ListArgs,
  asked: ListColumns = everyColumn,
): Promise<Connection<Listed>> {
  const { read } = context.database;
  const columns = orders[args.orderBy ?? 'MOST_URGENT'];
  const page = pageOf(args, columns);
  const filter = args.filter ?? {};
  const total = async () => read.container.count({ where: await condition(context, filter) });
  const list = await openListOf(context, args, page, asked);
  if (list) return connectionOf(columns, page, await openPage(context, list), total);
  const of = await condition(context, filter);
  const { where, ...rest } = pageQuery(columns, page);
  const rows = await read.container.findMany({
    where: { AND: [of, where] },
    include: { exposure: true },
    ...rest,
  });
  for (const { exposure } of rows) if (exposure) context.load.exposure.prime(exposure.containerId, exposure);
  return connectionOf(columns, page, rows, total);
}

/** Every container of a filter in the order of urgency, as labels; those whose making was taken back are left out. */
export async function placedContainers(context: Context, filter: ContainerFilter): Promise<Placed[]> {
  const { database } = context;
  const of = await openFilter(context, filter);
  if (of) return placesOf(database, of);
  const rows = await database.read.container.findMany({
    where: await condition(context, filter),
    select: { label: true, exposure: { select: { state: true } } },
    orderBy: [{ exposure: { urgency: 'asc' } }, { id: 'asc' }],
  });
  return rows.map(({ label, exposure }) => ({ label, state: exposure?.state ?? 'UNKNOWN' }));
}
