// The list that is on the screen all day, past Prisma: containers by urgency with their exposures and what they belong to, one
// statement. Measured on two cores with 20,000 containers: 43 ms of CPU a page of 50 through Prisma's models (a sort of
// everything), 1 ms so.
import type { Container, Exposure, Lot, Room, Sorbent } from './generated/sqlite/client.ts';
import { conditionsOf, parameters, type OpenFilter } from './open-filter.ts';
import { jsonOf, type Reader } from './reader.ts';

/** A container with its exposure, both in one row: no column of the one has the name of a column of the other but `labId`. */
export type OpenRow = Container & Exposure & Beside;

export interface OpenList extends OpenFilter {
  /** The urgency and the id after which the page begins. */
  after: readonly [urgency: number, id: string] | null;
  take: number;
  /** The columns to read; null: all of them of a container and its exposure, none of what it belongs to. */
  columns: Record<'container' | 'exposure' | 'lot' | 'sorbent' | 'room', readonly string[] | null>;
}

/** What a container belongs to, as far as it was read with it. */
export interface Beside {
  lot?: Lot;
  sorbent?: Sorbent;
  room?: Room;
}

const aliases = { lot: 'l', sorbent: 's', room: 'r' } as const;
type Joined = keyof typeof aliases;

/** For each joined thing, the names its columns have in the row. */
function joinedOf(columns: OpenList['columns']): { of: Joined; alias: string; name: string }[] {
  return (Object.keys(aliases) as Joined[]).flatMap((of) =>
    (columns[of] ?? []).map((name) => ({ of, alias: `${of}.${name}`, name })),
  );
}

/** Moves the columns of what was joined into objects of their own. */
function unfolded(row: Record<string, unknown>, joined: ReturnType<typeof joinedOf>): void {
  for (const { of, alias, name } of joined) {
    const beside = (row[of] ??= {}) as Record<string, unknown>;
    beside[name] = row[alias];
  }
}

const columnsOf = (alias: string, names: readonly string[] | null): string =>
  names ? names.map((name) => `${alias}."${name}"`).join(', ') : `${alias}.*`;

/** Values as Prisma gives them: times as dates, flags as booleans, JSON read. */
function asModel<Row>(
  row: object,
  { times = [], flags = [], json = [] }: Partial<Record<'times' | 'flags' | 'json', readonly (keyof Row & string)[]>>,
): Row {
  const fields = row as Record<string, unknown>;
  for (const name of times) {
    const value = fields[name];
    if (typeof value === 'number') fields[name] = new Date(value);
  }
  for (const name of flags) if (name in fields) fields[name] = Boolean(fields[name]);
  for (const name of json) if (typeof fields[name] === 'string') fields[name] = jsonOf(fields[name]);
  return row as Row;
}

const openKinds = {
  times: [
    'cameInAt',
    'openedAt',
    'wettedAt',
    'touchedSolventAt',
    'hoodAt',
    'preparedAt',
    'finishedAt',
    'asOf',
    'staleFrom',
  ],
  flags: ['isOpen', 'dryGramsAssumed', 'isVoid'],
  json: ['habit', 'prepared'],
} as const;

/** A page of containers, most urgent first; rows hold the columns asked for. */
export async function openList(reader: Reader, list: OpenList): Promise<OpenRow[]> {
  const { values, given } = parameters();
  const conditions = conditionsOf(reader.engine, list, given);
  if (list.after) {
    const [urgency, id] = list.after;
    conditions.push(`(e."urgency", e."containerId") > (${given(urgency)}, ${given(id)})`);
  }
  const joined = joinedOf(list.columns);
  const beside = joined.map(({ of, alias, name }) => `, ${aliases[of]}."${name}" as "${alias}"`).join('');
  const needs = (...of: Joined[]) => of.some((one) => (list.columns[one]?.length ?? 0) > 0);
  const joins = [
    needs('lot', 'sorbent') ? 'join "Lot" l on l."id" = c."lotId"' : '',
    needs('sorbent') ? 'join "Sorbent" s on s."id" = l."sorbentId"' : '',
    needs('room') ? 'join "Room" r on r."id" = c."roomId"' : '',
  ].join(' ');
  const rows = await reader.select<Record<string, unknown>>(
    `select ${columnsOf('c', list.columns.container)}, ${columnsOf('e', list.columns.exposure)}${beside}
     from "Exposure" e join "Container" c on c."id" = e."containerId" ${joins}
     where ${conditions.join(' and ')} order by e."urgency", e."containerId" limit ${given(list.take)}`,
    values,
  );
  for (const row of rows) unfolded(row, joined);
  return rows.map((row) => asModel<OpenRow>(row, openKinds));
}
