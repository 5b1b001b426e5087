// PostgreSQL: the same models for labs that outgrow one machine.
import { PrismaPg } from '@prisma/adapter-pg';
import type { SqlDriverAdapterFactory, Transaction } from '@prisma/driver-adapter-utils';
import type { Client } from './client.ts';
import type { Database } from './database.ts';
import { PrismaClient } from './generated/postgres/client.ts';
import { migrate } from './migrate.ts';
import { writeQueue } from './queue.ts';
import { postgresConnection, postgresSelector } from './select.ts';
import { countedAdapter, type Statements, statementCounter } from './statements.ts';

/** Any number that nobody else locks by; the same for every process of Drumkeep. */
const writeLock = 4600;

/** One writer at a time, also among processes, as SQLite has it: what a transaction reads stays true until it ends. */
function takeWriteLock(transaction: Transaction) {
  return transaction.executeRaw({ sql: `select pg_advisory_xact_lock(${writeLock})`, args: [], argTypes: [] });
}

function adapterFactory(url: string, readonly: boolean, statements: Statements): SqlDriverAdapterFactory {
  const inner = new PrismaPg(postgresConnection(url, readonly));
  return {
    provider: inner.provider,
    adapterName: inner.adapterName,
    connect: async () => countedAdapter(await inner.connect(), statements, readonly ? undefined : takeWriteLock),
  };
}

/** Opens the database behind a `postgres://` address, with every migration applied. */
export async function openPostgres(url: string): Promise<Database> {
  const statements = statementCounter();
  await migrate('postgres', new PrismaPg(postgresConnection(url, false)));
  const writer = new PrismaClient({
    adapter: adapterFactory(url, false, statements),
  }) as unknown as Client;
  const read = new PrismaClient({
    adapter: adapterFactory(url, true, statements),
  }) as unknown as Client;
  const selecting = postgresSelector(url, statements.note);
  const place = new URL(url);
  place.password = '';
  return {
    engine: 'postgres',
    place: place.href,
    read,
    write: writeQueue(writer, 'postgres'),
    select: selecting.select,
    statements,
    async close() {
      await selecting.close();
      await read.$disconnect();
      await writer.$disconnect();
    },
  };
}
