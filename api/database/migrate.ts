// Brings a database up to date, by Prisma's own engine and in Prisma's own table, so that its command line can go on with it.
import type { SqlMigrationAwareDriverAdapterFactory } from '@prisma/driver-adapter-utils';
import type { Engine } from './client.ts';
import { knownMigrations, migrationList, schemaFiles } from './migrations.ts';
import { everything, withSchemaEngine } from './schema-engine.ts';

/** A later version of Drumkeep has been here; nothing was touched. */
export class NewerDatabase extends Error {
  readonly migrations: string[];
  constructor(migrations: string[]) {
    super(
      `This database was written by a newer version of Drumkeep (${migrations.join(', ')}). It is left as it is: install that version, or restore a backup made before it.`,
    );
    this.name = 'NewerDatabase';
    this.migrations = migrations;
  }
}

const tableExists: Record<Engine, string> = {
  sqlite: `select 1 from sqlite_master where name = '_prisma_migrations'`,
  postgres: `select 1 from pg_tables where schemaname = current_schema() and tablename = '_prisma_migrations'`,
};

/** Names of the migrations that a database says were applied to it; an empty list for a new one. */
export async function appliedMigrations(
  engine: Engine,
  adapter: SqlMigrationAwareDriverAdapterFactory,
): Promise<string[]> {
  const connection = await adapter.connect();
  try {
    const rowsOf = async (sql: string) => (await connection.queryRaw({ sql, args: [], argTypes: [] })).rows;
    if ((await rowsOf(tableExists[engine])).length === 0) return [];
    const rows = await rowsOf(
      'select "migration_name" from "_prisma_migrations" where "finished_at" is not null and "rolled_back_at" is null',
    );
    return rows.map(([name]) => String(name));
  } finally {
    await connection.dispose();
  }
}

export interface Migrating {
  /** Opens for reading what is there, so that a refusal leaves no trace; `adapter` does when nothing is there yet. */
  looking?: SqlMigrationAwareDriverAdapterFactory;
  /** Runs before a database that has been in use is changed. */
  beforeChange?: (pending: string[]) => void;
}

/** Applies what is missing; gives the names of what it applied. Throws `NewerDatabase` before touching anything. */
export async function migrate(
  engine: Engine,
  adapter: SqlMigrationAwareDriverAdapterFactory,
  { looking = adapter, beforeChange }: Migrating = {},
): Promise<string[]> {
  const known = knownMigrations(engine);
  const applied = await appliedMigrations(engine, looking);
  const newer = applied.filter((name) => !known.includes(name));
  if (newer.length > 0) throw new NewerDatabase(newer);
  const pending = known.filter((name) => !applied.includes(name));
  if (pending.length === 0) return [];
  if (applied.length > 0) beforeChange?.(pending);
  return withSchemaEngine(adapter, schemaFiles(engine), async (schema) => {
    const answer = await schema.applyMigrations({ migrationsList: migrationList(engine), filters: everything });
    return answer.appliedMigrationNames;
  });
}
