// SQLite: one file, one machine. Readers go on while one writer writes (write-ahead log).
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import type { SqlMigrationAwareDriverAdapterFactory, Transaction } from '@prisma/driver-adapter-utils';
import Sqlite from 'better-sqlite3';
import type { Database } from './database.ts';
import { PrismaClient } from './generated/sqlite/client.ts';
import { migrate } from './migrate.ts';
import { writeQueue } from './queue.ts';
import { countedAdapter, type Statements, statementCounter } from './statements.ts';

/** How long a statement waits for another process's lock, ms. */
const busyTimeoutMs = 5_000;

/** Times are stored as milliseconds since 1970: eight bytes, ordered, and plain numbers to hand-written statements. */
const times = { timestampFormat: 'unixepoch-ms' } as const;

/** What each connection needs; the log mode stays with the file, the rest with the connection. */
const pragmas = 'pragma foreign_keys = on; pragma synchronous = normal; pragma temp_store = memory; pragma cache_size = -65536;';

/**
 * Takes the write lock as a transaction's first act. Prisma begins it deferred, and one that reads before it writes
 * would fail at once, without waiting, when another process (an import) had written in between.
 */
function takeWriteLock(transaction: Transaction) {
  return transaction.executeRaw({ sql: 'update "_prisma_migrations" set "id" = "id" where false', args: [], argTypes: [] });
}

function adapterFactory(file: string, readonly: boolean, statements: Statements): SqlMigrationAwareDriverAdapterFactory {
  const inner = new PrismaBetterSqlite3({ url: file, readonly, timeout: busyTimeoutMs }, times);
  return {
    provider: inner.provider,
    adapterName: inner.adapterName,
    async connect() {
      const adapter = await inner.connect();
      await adapter.executeScript(readonly ? pragmas : `pragma journal_mode = wal; ${pragmas}`);
      return countedAdapter(adapter, statements, readonly ? undefined : takeWriteLock);
    },
    connectToShadowDb: () => inner.connectToShadowDb(),
  };
}

/** A prepared-statement reader of its own, for `Database.select`. */
function selector(file: string, statements: Statements) {
  const reader = new Sqlite(file, { readonly: true, timeout: busyTimeoutMs });
  reader.exec(pragmas);
  const prepared = new Map<string, Sqlite.Statement>();
  return {
    select<Row>(statement: string, values: readonly (string | number | null)[] = []): Promise<Row[]> {
      let ready = prepared.get(statement);
      if (!ready) prepared.set(statement, (ready = reader.prepare(statement)));
      statements.note(statement);
      const named = Object.fromEntries(values.map((value, index) => [String(index + 1), value]));
      return Promise.resolve((values.length > 0 ? ready.all(named) : ready.all()) as Row[]);
    },
    close: () => reader.close(),
  };
}

/** Opens the file, made when missing, with every migration applied. */
export async function openSqlite(file: string): Promise<Database> {
  const statements = statementCounter();
  await migrate('sqlite', new PrismaBetterSqlite3({ url: file, timeout: busyTimeoutMs }, times));
  const writer = new PrismaClient({ adapter: adapterFactory(file, false, statements) });
  await writer.$connect();
  const read = new PrismaClient({ adapter: adapterFactory(file, true, statements) });
  await read.$connect();
  const selecting = selector(file, statements);
  return {
    engine: 'sqlite',
    place: file,
    read,
    write: writeQueue(writer),
    select: selecting.select,
    statements,
    async close() {
      selecting.close();
      await read.$disconnect();
      await writer.$disconnect();
    },
  };
}
