// SQLite: one file, one machine. Readers go on while one writer writes (write-ahead log).
import { existsSync } from 'node:fs';
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import type { SqlMigrationAwareDriverAdapterFactory, Transaction } from '@prisma/driver-adapter-utils';
import Sqlite from 'better-sqlite3';
import type { Database } from './database.ts';
import { PrismaClient } from './generated/sqlite/client.ts';
import { migrate } from './migrate.ts';
import { writeQueue } from './queue.ts';
import { busyTimeoutMs, pragmas, sqliteSelector } from './select.ts';
import { countedAdapter, type Statements, statementCounter } from './statements.ts';

/** Times are stored as milliseconds since 1970: eight bytes, ordered, and plain numbers to hand-written statements. */
const times = { timestampFormat: 'unixepoch-ms' } as const;

/**
 * Takes the write lock as a transaction's first act. Prisma begins it deferred, and one that reads before it writes
 * would fail at once, without waiting, when another process (an import) had written in between.
 */
function takeWriteLock(transaction: Transaction) {
  return transaction.executeRaw({
    sql: 'update "_prisma_migrations" set "id" = "id" where false',
    args: [],
    argTypes: [],
  });
}

function adapterFactory(
  file: string,
  readonly: boolean,
  statements: Statements,
): SqlMigrationAwareDriverAdapterFactory {
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

/**
 * For migrations. Each statement of one is a transaction of its own; with the log, as ever after, they do not wait for
 * the disk one by one, and what a power cut leaves is still the first so many of them.
 */
function migratingFactory(file: string): SqlMigrationAwareDriverAdapterFactory {
  const inner = new PrismaBetterSqlite3({ url: file, timeout: busyTimeoutMs }, times);
  return {
    provider: inner.provider,
    adapterName: inner.adapterName,
    async connect() {
      const adapter = await inner.connect();
      await adapter.executeScript('pragma journal_mode = wal; pragma synchronous = normal;');
      return adapter;
    },
    connectToShadowDb: () => inner.connectToShadowDb(),
  };
}

/** A migration of SQLite that is cut short cannot be undone; whoever that happens to goes back to this copy. */
function keepCopy(file: string, copy: string): void {
  if (existsSync(copy)) return;
  const source = new Sqlite(file, { readonly: true, timeout: busyTimeoutMs });
  try {
    source.prepare('vacuum into ?').run(copy);
  } finally {
    source.close();
  }
}

/** Opens the file, made when missing, with every migration applied. */
export async function openSqlite(file: string): Promise<Database> {
  const statements = statementCounter();
  await migrate('sqlite', migratingFactory(file), {
    ...(existsSync(file) && {
      looking: new PrismaBetterSqlite3({ url: file, readonly: true, timeout: busyTimeoutMs }, times),
    }),
    beforeChange: ([first]) => keepCopy(file, `${file}.before-${first}`),
  });
  const writer = new PrismaClient({ adapter: adapterFactory(file, false, statements) });
  await writer.$connect();
  const read = new PrismaClient({ adapter: adapterFactory(file, true, statements) });
  await read.$connect();
  const selecting = sqliteSelector(file, statements.note);
  return {
    engine: 'sqlite',
    place: file,
    read,
    write: writeQueue(writer, 'sqlite'),
    select: selecting.select,
    statements,
    async close() {
      await selecting.close();
      await read.$disconnect();
      await writer.$disconnect();
    },
  };
}
