// PostgreSQL: the same models for labs that outgrow one machine.
import { PrismaPg } from '@prisma/adapter-pg';
import type { SqlDriverAdapterFactory } from '@prisma/driver-adapter-utils';
import type pg from 'pg';
import type { Client } from './client.ts';
import type { Database } from './database.ts';
import { PrismaClient } from './generated/postgres/client.ts';
import { migrate } from './migrate.ts';
import { writeQueue } from './queue.ts';
import { postgresConnection, postgresSelector } from './select.ts';
import { countedAdapter, type Statements, statementCounter } from './statements.ts';

function adapterFactory(config: pg.PoolConfig, statements: Statements): SqlDriverAdapterFactory {
  const inner = new PrismaPg(config);
  return {
    provider: inner.provider,
    adapterName: inner.adapterName,
    connect: async () => countedAdapter(await inner.connect(), statements),
  };
}

/** Opens the database behind a `postgres://` address, with every migration applied. */
export async function openPostgres(url: string): Promise<Database> {
  const statements = statementCounter();
  await migrate('postgres', new PrismaPg(postgresConnection(url, false)));
  const writer = new PrismaClient({
    adapter: adapterFactory(postgresConnection(url, false), statements),
  }) as unknown as Client;
  const read = new PrismaClient({
    adapter: adapterFactory(postgresConnection(url, true), statements),
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
