// The list that is on the screen all day, past Prisma: containers by urgency with their exposures, one statement, and one each
// for the lots, sorbents and rooms they name. Measured on two cores with 20,000 containers: 43 ms of CPU a page of 50 through
// Prisma's models (a sort of everything), under 1 ms so.
import type { Container, Exposure, ExposureState, Lot, Room, Sorbent } from './generated/sqlite/client.ts';
import { idsIn, jsonOf, type Reader } from './reader.ts';

/** A container with its exposure, both in one row: no column of the one has the name of a column of the other but `labId`. */
export type OpenRow = Container & Exposure;

export interface OpenList {
  labId: string;
  isOpen?: boolean | null;
  inUse?: boolean | null;
  states?: readonly ExposureState[] | null;
  /** The urgency and the id after which the page begins. */
  after: readonly [urgency: number, id: string] | null;
  take: number;
  /** The columns to read; null: all of them. */
  columns: { container: readonly string[] | null; exposure: readonly string[] | null };
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
  times: ['cameInAt', 'openedAt', 'wettedAt', 'touchedSolventAt', 'finishedAt', 'asOf', 'staleFrom'],
  flags: ['isOpen', 'dryGramsAssumed', 'isVoid'],
  json: ['habit'],
} as const;

/** A page of containers, most urgent first; rows hold the columns asked for. */
export async function openList(reader: Reader, list: OpenList): Promise<OpenRow[]> {
  const values: (string | number | null)[] = [list.labId];
  const given = (value: string | number) => `$${values.push(value)}`;
  const conditions = ['e."labId" = $1', 'c."isVoid" = false'];
  if (typeof list.isOpen === 'boolean') conditions.push(`c."isOpen" = ${list.isOpen}`);
  if (typeof list.inUse === 'boolean') conditions.push(`c."finishedAt" is ${list.inUse ? '' : 'not '}null`);
  if (list.states) {
    const type = reader.engine === 'sqlite' ? '' : '::"ExposureState"';
    conditions.push(`e."state" in (${list.states.map((state) => given(state) + type).join(', ') || 'null'})`);
  }
  if (list.after) {
    const [urgency, id] = list.after;
    conditions.push(`(e."urgency", e."containerId") > (${given(urgency)}, ${given(id)})`);
  }
  const rows = await reader.select<object>(
    `select ${columnsOf('c', list.columns.container)}, ${columnsOf('e', list.columns.exposure)} from "Exposure" e join "Container" c on c."id" = e."containerId"
     where ${conditions.join(' and ')} order by e."urgency", e."containerId" limit ${given(list.take)}`,
    values,
  );
  return rows.map((row) => asModel<OpenRow>(row, openKinds));
}

async function rowsById<Row>(reader: Reader, table: string, ids: Iterable<string>): Promise<object[]> {
  const distinct = [...new Set(ids)];
  if (distinct.length === 0) return [];
  return reader.select<Row & object>(
    `select t.* from ${idsIn(reader.engine, '$1')} wanted join "${table}" t on t."id" = wanted."id"`,
    [JSON.stringify(distinct)],
  );
}

export const lotRows = async (reader: Reader, ids: Iterable<string>): Promise<Lot[]> =>
  (await rowsById<Lot>(reader, 'Lot', ids)).map((row) =>
    asModel<Lot>(row, { times: ['receivedAt', 'retestOn'], json: ['certificate'] }),
  );

export const sorbentRows = async (reader: Reader, ids: Iterable<string>): Promise<Sorbent[]> =>
  (await rowsById<Sorbent>(reader, 'Sorbent', ids)).map((row) => asModel<Sorbent>(row, {}));

export const roomRows = async (reader: Reader, ids: Iterable<string>): Promise<Room[]> =>
  (await rowsById<Room>(reader, 'Room', ids)).map((row) => asModel<Room>(row, { times: ['desiccantRenewedAt'] }));
