// Stores what the estimator made of many containers: few statements, whatever their number. Derived rows only.
import { insertRows } from './bulk.ts';
import type { Engine, Transaction } from './client.ts';
import type { Instants } from './fleet.ts';
import type { ExposureState } from './generated/sqlite/client.ts';
import { idsIn, instantsIn } from './reader.ts';

/** An exposure as stored; `version` is that of the inputs it was made from, times are milliseconds since 1970. */
export interface ExposureRow {
  containerId: string;
  labId: string;
  asOf: number;
  state: ExposureState;
  urgency: number;
  staleFrom: number | null;
  version: number;
  meanWaterFraction: number | null;
  low: number | null;
  high: number | null;
  scoopWaterFraction: number | null;
  scoopLow: number | null;
  scoopHigh: number | null;
  topWaterFraction: number | null;
  chancePastLimit: number | null;
  hoursToLimit: number | null;
  hoursToLimitOpen: number | null;
  hoursToLimitClosed: number | null;
  upperWaterFraction: number | null;
  lowerWaterFraction: number | null;
  grade: string | null;
  minutesToRoomEquilibrium: number | null;
  uncertainAirFraction: number | null;
  reason: string;
}

const exposureColumns = {
  containerId: 'text',
  labId: 'text',
  asOf: 'time',
  state: { enum: 'ExposureState' },
  urgency: 'real',
  staleFrom: 'time',
  version: 'integer',
  meanWaterFraction: 'real',
  low: 'real',
  high: 'real',
  scoopWaterFraction: 'real',
  scoopLow: 'real',
  scoopHigh: 'real',
  topWaterFraction: 'real',
  chancePastLimit: 'real',
  hoursToLimit: 'real',
  hoursToLimitOpen: 'real',
  hoursToLimitClosed: 'real',
  upperWaterFraction: 'real',
  lowerWaterFraction: 'real',
  grade: 'text',
  minutesToRoomEquilibrium: 'real',
  uncertainAirFraction: 'real',
  reason: 'text',
} as const;

type ExposureColumn = keyof typeof exposureColumns;
const replaced = (Object.keys(exposureColumns) as ExposureColumn[]).filter((column) => column !== 'containerId');

/** Inserts or replaces exposures. */
export function storeExposures(tx: Transaction, engine: Engine, rows: readonly ExposureRow[]): Promise<number> {
  return insertRows<ExposureColumn>(tx, engine, {
    table: 'Exposure',
    columns: exposureColumns,
    rows,
    key: ['containerId'],
    replace: replaced,
  });
}

export interface CheckpointRow {
  labId: string;
  containerId: string;
  at: number;
  data: Uint8Array;
}

const checkpointColumns = { labId: 'text', containerId: 'text', at: 'time', data: 'bytes' } as const;

/** Inserts or replaces checkpoints. */
export function storeCheckpoints(tx: Transaction, engine: Engine, rows: readonly CheckpointRow[]): Promise<number> {
  return insertRows<keyof typeof checkpointColumns>(tx, engine, {
    table: 'Checkpoint',
    columns: checkpointColumns,
    rows,
    key: ['containerId', 'at'],
    replace: ['data'],
  });
}

export interface ParcelRow {
  eventId: string;
  labId: string;
  fromContainerId: string;
  toContainerId: string;
  at: number;
  data: Uint8Array;
}

const parcelColumns = {
  eventId: 'text',
  labId: 'text',
  fromContainerId: 'text',
  toContainerId: 'text',
  at: 'time',
  data: 'bytes',
} as const;

/** Inserts or replaces parcels. */
export function storeParcels(tx: Transaction, engine: Engine, rows: readonly ParcelRow[]): Promise<number> {
  return insertRows<keyof typeof parcelColumns>(tx, engine, {
    table: 'Parcel',
    columns: parcelColumns,
    rows,
    key: ['eventId'],
    replace: ['fromContainerId', 'toContainerId', 'at', 'data'],
  });
}

/** Runs a statement whose one parameter is a JSON list; nothing to do for an empty one. */
async function runOver(tx: Transaction, statement: string, list: readonly unknown[]): Promise<void> {
  if (list.length > 0) await tx.$executeRawUnsafe(statement, JSON.stringify(list));
}

const parameter = (engine: Engine): string => (engine === 'sqlite' ? '?' : '$1');

/** Deletes each container's checkpoints from its instant on. */
export function dropCheckpointsFrom(tx: Transaction, engine: Engine, instants: Instants): Promise<void> {
  const statement = `delete from "Checkpoint" where ("containerId", "at") in (
    select k."containerId", k."at" from ${instantsIn(engine, parameter(engine))} w
    join "Checkpoint" k on k."containerId" = w."id" and k."at" >= w."ms")`;
  return runOver(tx, statement, instants);
}

/** Deletes the checkpoints of exactly these instants. */
export function dropCheckpoints(tx: Transaction, engine: Engine, instants: Instants): Promise<void> {
  const listed = `select w."id", w."ms" from ${instantsIn(engine, parameter(engine))} w`;
  return runOver(tx, `delete from "Checkpoint" where ("containerId", "at") in (${listed})`, instants);
}

export function dropParcels(tx: Transaction, engine: Engine, eventIds: readonly string[]): Promise<void> {
  const listed = `select w."id" from ${idsIn(engine, parameter(engine))} w`;
  return runOver(tx, `delete from "Parcel" where "eventId" in (${listed})`, eventIds);
}

/** Marks exposures as made from inputs that changed from an instant on; the bulk form of `markStale` in api/work.ts. */
export function markStaleFrom(tx: Transaction, engine: Engine, instants: Instants): Promise<void> {
  const statement = `update "Exposure" as e set "version" = e."version" + 1, "staleFrom" =
      case when e."staleFrom" is null or w."ms" < e."staleFrom" then w."ms" else e."staleFrom" end
    from (select x."id", min(x."ms") as "ms" from ${instantsIn(engine, parameter(engine))} x group by x."id") w
    where e."containerId" = w."id"`;
  return runOver(tx, statement, instants);
}

/** Says from which instant on exposures are still stale, when what came before it is up to date. */
export function setStaleFrom(tx: Transaction, engine: Engine, instants: Instants): Promise<void> {
  const statement = `update "Exposure" as e set "staleFrom" = w."ms"
    from ${instantsIn(engine, parameter(engine))} w where e."containerId" = w."id"`;
  return runOver(tx, statement, instants);
}

/** The count of input changes of each exposure, by container. */
export async function versionsOf(
  tx: Transaction,
  engine: Engine,
  ids: readonly string[],
): Promise<Map<string, number>> {
  const rows = await tx.$queryRawUnsafe<{ containerId: string; version: number | bigint }[]>(
    `select e."containerId", e."version" from ${idsIn(engine, parameter(engine))} w
     join "Exposure" e on e."containerId" = w."id"`,
    JSON.stringify(ids),
  );
  return new Map(rows.map(({ containerId, version }) => [containerId, Number(version)]));
}

/** Gives every container of a lab that has none an unknown exposure, stale from its beginning. */
export async function addMissingExposures(tx: Transaction, engine: Engine, labId: string): Promise<number> {
  const unknown = engine === 'sqlite' ? `'UNKNOWN'` : `'UNKNOWN'::"ExposureState"`;
  return tx.$executeRawUnsafe(
    `insert into "Exposure" ("containerId", "labId", "asOf", "state", "urgency", "staleFrom", "version", "reason")
     select c."id", c."labId", c."cameInAt", ${unknown}, 0, c."cameInAt", 1, 'not estimated yet' from "Container" c
     where c."labId" = ${parameter(engine)} and not exists (select 1 from "Exposure" e where e."containerId" = c."id")`,
    labId,
  );
}
