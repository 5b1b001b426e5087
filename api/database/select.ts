// Hand-written statements past Prisma: prepared once on SQLite, over a pool on PostgreSQL. A worker thread opens its own.
import Sqlite from 'better-sqlite3';
import pg from 'pg';
import { type DatabaseSettings, sqliteFile } from './place.ts';
import type { Reader } from './reader.ts';

export interface Selector extends Reader {
  close(): Promise<void>;
}

/** How long a statement waits for another process's lock, ms. */
export const busyTimeoutMs = 5_000;

/** What each connection to SQLite needs; the log mode stays with the file, the rest with the connection. */
export const pragmas =
  'pragma foreign_keys = on; pragma synchronous = normal; pragma temp_store = memory; pragma cache_size = -65536;';

/** Reads a SQLite file; `note` is told of each statement. */
export function sqliteSelector(
  file: string,
  note: (statement: string) => void = () => {},
  cacheKib?: number,
): Selector {
  const reader = new Sqlite(file, { readonly: true, timeout: busyTimeoutMs });
  reader.exec(pragmas);
  if (cacheKib !== undefined) reader.exec(`pragma cache_size = -${cacheKib}`);
  const prepared = new Map<string, Sqlite.Statement>();
  return {
    engine: 'sqlite',
    async select<Row>(statement: string, values: readonly (string | number | null)[] = []): Promise<Row[]> {
      let ready = prepared.get(statement);
      if (!ready) prepared.set(statement, (ready = reader.prepare(statement)));
      note(statement);
      const named = Object.fromEntries(values.map((value, index) => [String(index + 1), value]));
      return (values.length > 0 ? ready.all(named) : ready.all()) as Row[];
    },
    close: async () => {
      reader.close();
    },
  };
}

/** Every connection speaks UTC; a reader's transactions cannot write. */
export function postgresConnection(url: string, readonly: boolean): pg.PoolConfig {
  const options = `-c timezone=UTC${readonly ? ' -c default_transaction_read_only=on' : ''}`;
  return { connectionString: url, options, max: readonly ? 8 : 2 };
}

/** Timestamps (object id 1114) as milliseconds and counts (20) as numbers, as `Database.select` promises. */
function parserOf(type: number): (text: string) => unknown {
  if (type === 1114) return (text) => Date.parse(`${text.replace(' ', 'T')}Z`);
  if (type === 20) return Number;
  return pg.types.getTypeParser(type, 'text') as (text: string) => unknown;
}

/** Reads the database behind a `postgres://` address. */
export function postgresSelector(url: string, note: (statement: string) => void = () => {}): Selector {
  const pool = new pg.Pool({ ...postgresConnection(url, true), types: { getTypeParser: parserOf } });
  // A connection that breaks while idle is replaced; without a listener it would end the process.
  pool.on('error', () => {});
  return {
    engine: 'postgres',
    async select<Row>(statement: string, values: readonly (string | number | null)[] = []): Promise<Row[]> {
      note(statement);
      return (await pool.query(statement, [...values])).rows as Row[];
    },
    close: () => pool.end(),
  };
}

/** Pages that a thread's reader keeps, KiB: it goes through everything once and comes back to little. */
const threadCacheKib = 8_192;

/** A reader of its own for a lab's database, which must be up to date already. */
export function openSelector(settings: DatabaseSettings): Selector {
  return settings.databaseUrl === undefined
    ? sqliteSelector(sqliteFile(settings.dataFolder), undefined, threadCacheKib)
    : postgresSelector(settings.databaseUrl);
}
