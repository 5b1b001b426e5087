// Brings a database up to date, by Prisma's own engine and in Prisma's own table, so that its command line can go on with it.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { SqlMigrationAwareDriverAdapterFactory } from '@prisma/driver-adapter-utils';
import type { Engine } from './client.ts';
import { everything, type MigrationList, withSchemaEngine } from './schema-engine.ts';

const prismaFolder = fileURLToPath(new URL('../../prisma/', import.meta.url));

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

/** Names of this version's migrations, oldest first. */
export function knownMigrations(engine: Engine): string[] {
  const folder = `${prismaFolder}migrations/${engine}`;
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
}

/** The migrations folder as the engine wants it. */
export function migrationList(engine: Engine): MigrationList {
  const baseDir = `${prismaFolder}migrations/${engine}`;
  return {
    baseDir,
    lockfile: { path: 'migration_lock.toml', content: readFileSync(`${baseDir}/migration_lock.toml`, 'utf8') },
    shadowDbInitScript: '',
    migrationDirectories: knownMigrations(engine).map((name) => ({
      path: name,
      migrationFile: {
        path: 'migration.sql',
        content: { tag: 'ok', value: readFileSync(`${baseDir}/${name}/migration.sql`, 'utf8') },
      },
    })),
  };
}

/** The datasource and the models of an engine, as its files. */
export function schemaFiles(engine: Engine): [path: string, content: string][] {
  return [`${engine}/engine.prisma`, 'models.prisma'].map((path) => [path, readFileSync(prismaFolder + path, 'utf8')]);
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

/** Applies what is missing; gives the names of what it applied. Throws `NewerDatabase` before touching anything. */
export async function migrate(engine: Engine, adapter: SqlMigrationAwareDriverAdapterFactory): Promise<string[]> {
  const known = knownMigrations(engine);
  const applied = new Set(await appliedMigrations(engine, adapter));
  const unknown = [...applied].filter((name) => !known.includes(name));
  if (unknown.length > 0) throw new NewerDatabase(unknown);
  if (known.every((name) => applied.has(name))) return [];
  return withSchemaEngine(adapter, schemaFiles(engine), async (schema) => {
    const { appliedMigrationNames } = await schema.applyMigrations({
      migrationsList: migrationList(engine),
      filters: everything,
    });
    return appliedMigrationNames;
  });
}
