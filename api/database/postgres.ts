// PostgreSQL: the same models for labs that outgrow one machine.
import { PrismaPg } from '@prisma/adapter-pg';
import type { SqlDriverAdapterFactory } from '@prisma/driver-adapter-utils';
import pg from 'pg';
import type { Client } from './client.ts';
import type { Database } from './database.ts';
import { PrismaClient } from './generated/postgres/client.ts';
import { migrate } from './migrate.ts';
import { writeQueue } from './queue.ts';
import { countedAdapter, type Statements, statementCounter } from './statements.ts';

/** Every connection speaks UTC; a reader's transactions cannot write. */
function connectionOptions(url: string, readonly: boolean): pg.PoolConfig {
  const options = `-c timezone=UTC${readonly ? ' -c default_transaction_read_only=on' : ''}`;
  return { connectionString: url, options, max: readonly ? 8 : 2 };
}

function adapterFactory(config: pg.PoolConfig, statements: Statements): SqlDriverAdapterFactory {
  const inner = new PrismaPg(config);
  return {
    provider: inner.provider,
    adapterName: inner.adapterName,
    connect: async () => countedAdapter(await inner.connect(), statements),
  };
}

/** Timestamps (object id 1114) as milliseconds and counts (20) as numbers, as `Database.select` promises. */
function parserOf(type: number): (text: string) => unknown {
  if (type === 1114) return (text) => Date.parse(`${text.replace(' ', 'T')}Z`);
  if (type === 20) return Number;
  return pg.types.getTypeParser(type, 'text') as (text: string) => unknown;
}

/** Opens the database behind a `postgres://` address, with every migration applied. */
export async function openPostgres(url: string): Promise<Database> {
  const statements = statementCounter();
  await migrate('postgres', new PrismaPg(connectionOptions(url, false)));
  const writer = new PrismaClient({ adapter: adapterFactory(connectionOptions(url, false), statements) }) as unknown as Client;
  const read = new PrismaClient({ adapter: adapterFactory(connectionOptions(url, true), statements) }) as unknown as Client;
  const pool = new pg.Pool({ ...connectionOptions(url, true), types: { getTypeParser: parserOf } });
  const place = new URL(url);
  place.password = '';
  return {
    engine: 'postgres',
    place: place.href,
    read,
    write: writeQueue(writer),
    async select<Row>(statement: string, values: readonly (string | number | null)[] = []) {
      statements.note(statement);
      return (await pool.query(statement, [...values])).rows as Row[];
    },
    statements,
    async close() {
      await pool.end();
      await read.$disconnect();
      await writer.$disconnect();
    },
  };
}
