// Pages of a list: cursors that name a place by its order's values (never by a row number, so that rows which come or
// go meanwhile neither repeat nor hide others), and the limit of a page.
import { z } from 'zod';
import { limits } from './builder.ts';
import { invalid } from './errors.ts';

export interface PageArgs {
  first?: number | null | undefined;
  last?: number | null | undefined;
  after?: string | null | undefined;
  before?: string | null | undefined;
}

type Value = string | number | boolean | null;
export type Key = Value[];

/** One column of an order: where it is, and whether it may be empty (empty ones come last). */
export interface Column<Row> {
  /** Relations, then the column. */
  path: readonly string[];
  direction: 'asc' | 'desc';
  nullable?: boolean;
  /** Instants are keyed by their milliseconds. */
  isTime?: boolean;
  value: (row: Row) => Value;
}

export interface Page {
  take: number;
  backwards: boolean;
  after: Key | null;
  before: Key | null;
}

const usualSize = 50;

/** Names an order, so that a cursor of another one is told from ours. */
const orderOf = <Row>(columns: readonly Column<Row>[]): string => columns.map(({ path }) => path.join('.')).join(' ');

const cursorOf = (order: string, key: Key): string =>
  Buffer.from(JSON.stringify([order, ...key])).toString('base64url');

const written = z.tuple([z.string()], z.union([z.string(), z.number(), z.boolean(), z.null()]));

function parsed(cursor: string): unknown {
  try {
    return JSON.parse(Buffer.from(cursor, 'base64url').toString('utf8'));
  } catch {
    return null;
  }
}

function keyIn<Row>(cursor: string | null | undefined, columns: readonly Column<Row>[], path: string): Key | null {
  if (cursor === null || cursor === undefined) return null;
  const read = written.safeParse(parsed(cursor));
  const [order, ...key] = read.data ?? [''];
  if (order === orderOf(columns) && key.length === columns.length) return key;
  throw invalid(path, cursor, 'a cursor of this list in this order');
}

function sizeOf(value: number, path: string): number {
  if (value >= 0 && value <= limits.pageSize) return value;
  throw invalid(path, value, `from 0 to ${limits.pageSize} a page`);
}

/** What is asked for; refuses more than a page holds and cursors of another list. */
export function pageOf<Row>(args: PageArgs, columns: readonly Column<Row>[]): Page {
  const { first, last } = args;
  const backwards = typeof last === 'number';
  if (backwards && typeof first === 'number') throw invalid('last', last, 'first or last, not both');
  const take = backwards ? sizeOf(last, 'last') : sizeOf(first ?? usualSize, 'first');
  return { take, backwards, after: keyIn(args.after, columns, 'after'), before: keyIn(args.before, columns, 'before') };
}

type Where = Record<string, unknown>;

const nested = (path: readonly string[], value: unknown): Where =>
  path.reduceRight<unknown>((inner, name) => ({ [name]: inner }), value) as Where;

/** Rows strictly beyond a place, in the order's direction or against it. */
function beyond<Row>(columns: readonly Column<Row>[], key: Key, forward: boolean): Where {
  const [column, ...rest] = columns;
  if (!column) return { OR: [] };
  const [value, ...others] = key;
  const same = {
    AND: [
      nested(column.path, column.isTime && value !== null ? new Date(Number(value)) : value),
      beyond(rest, others, forward),
    ],
  };
  const alternatives: Where[] = rest.length > 0 ? [same] : [];
  if (value === null) {
    if (!forward) alternatives.push(nested(column.path, { not: null }));
    return { OR: alternatives };
  }
  const ascending = (column.direction === 'asc') === forward;
  const bound = column.isTime ? new Date(Number(value)) : value;
  alternatives.push(nested(column.path, ascending ? { gt: bound } : { lt: bound }));
  if (forward && column.nullable) alternatives.push(nested(column.path, null));
  return { OR: alternatives };
}

/** The condition and order of a page, for Prisma; one row more than asked for tells whether there is another page. */
export function pageQuery<Row>(
  columns: readonly Column<Row>[],
  page: Page,
): { where: Where; orderBy: Where[]; take: number } {
  const bounds: Where[] = [];
  if (page.after) bounds.push(beyond(columns, page.after, true));
  if (page.before) bounds.push(beyond(columns, page.before, false));
  const orderBy = columns.map(({ path, direction, nullable }) => {
    const sort = (direction === 'asc') === page.backwards ? 'desc' : 'asc';
    return nested(path, nullable ? { sort, nulls: page.backwards ? 'first' : 'last' } : sort);
  });
  return { where: { AND: bounds }, orderBy, take: page.take + 1 };
}

/** By the columns of an order, as the database would. */
function compared<Row>(columns: readonly Column<Row>[], one: Key, other: Key): number {
  for (const [i, { direction }] of columns.entries()) {
    const [a, b] = [one[i] ?? null, other[i] ?? null];
    if (a === b) continue;
    // Empty ones come last.
    if (a === null || b === null) return a === null ? 1 : -1;
    return a < b === (direction === 'asc') ? -1 : 1;
  }
  return 0;
}

/** The rows of a page among all of a list that is at hand, as `pageQuery` would find them. */
export function pageAmong<Row>(columns: readonly Column<Row>[], page: Page, all: readonly Row[]): Row[] {
  const keyed = all.map((row) => ({ row, key: columns.map(({ value }) => value(row)) }));
  const within = keyed.filter(
    ({ key }) =>
      (!page.after || compared(columns, key, page.after) > 0) &&
      (!page.before || compared(columns, key, page.before) < 0),
  );
  within.sort((one, other) => (page.backwards ? -1 : 1) * compared(columns, one.key, other.key));
  return within.slice(0, page.take + 1).map(({ row }) => row);
}

export interface Connection<Row> {
  edges: { cursor: string; node: Row }[];
  pageInfo: { hasNextPage: boolean; hasPreviousPage: boolean; startCursor: string | null; endCursor: string | null };
  /** Asked only when the field is. */
  total: () => Promise<number>;
}

/** The rows of `pageQuery` as a connection. */
export function connectionOf<Row>(
  columns: readonly Column<Row>[],
  page: Page,
  rows: readonly Row[],
  total: () => Promise<number>,
): Connection<Row> {
  const order = orderOf(columns);
  const more = rows.length > page.take;
  const shown = rows.slice(0, page.take);
  if (page.backwards) shown.reverse();
  // Cursors are made when they are asked for: a page shows two of them, and most lists none.
  const edges = shown.map((node) => ({
    node,
    get cursor() {
      return cursorOf(
        order,
        columns.map(({ value }) => value(node)),
      );
    },
  }));
  return {
    edges,
    pageInfo: {
      hasNextPage: page.backwards ? page.before !== null : more,
      hasPreviousPage: page.backwards ? more : page.after !== null,
      get startCursor() {
        return edges[0]?.cursor ?? null;
      },
      get endCursor() {
        return edges.at(-1)?.cursor ?? null;
      },
    },
    total,
  };
}

/** By key: keys are UUIDv7, so this is the order of making. */
export const inOrderOfMaking = <Row extends { id: string }>(): Column<Row>[] => [
  { path: ['id'], direction: 'asc', value: ({ id }) => id },
];
