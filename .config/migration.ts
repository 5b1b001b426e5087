// Writes the migration that leads from the models as last migrated to prisma/models.prisma, for both engines.
// `npm run models -- NAME` names it. Needs no database: it compares models with models, and a test applies the result.
import { copyFileSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import type { SqlDriverAdapter, SqlMigrationAwareDriverAdapterFactory } from '@prisma/driver-adapter-utils';
import type { Engine } from '../api/database/client.ts';
import { knownMigrations } from '../api/database/migrations.ts';
import { everything, withSchemaEngine } from '../api/database/schema-engine.ts';

const prisma = fileURLToPath(new URL('../prisma/', import.meta.url));
const current = `${prisma}models.prisma`;
/** The models that the newest migration leads to. */
const migrated = `${prisma}migrations/models.prisma`;

const nothing = { columnNames: [], columnTypes: [], rows: [] };

/** Stands for a PostgreSQL server: a comparison of models only asks which kind of database it is for. */
function absentServer(): SqlMigrationAwareDriverAdapterFactory {
  const server = { provider: 'postgres', adapterName: 'none' } as const;
  const connection: SqlDriverAdapter = {
    ...server,
    queryRaw: () => Promise.resolve(nothing),
    executeRaw: () => Promise.resolve(0),
    executeScript: () => Promise.resolve(),
    startTransaction: () => Promise.reject(new Error('no server')),
    dispose: () => Promise.resolve(),
  };
  return {
    ...server,
    connect: () => Promise.resolve(connection),
    connectToShadowDb: () => Promise.resolve(connection),
  };
}

const adapters = { sqlite: () => new PrismaBetterSqlite3({ url: ':memory:' }), postgres: absentServer };

async function difference(engine: Engine, afresh: boolean): Promise<string> {
  const files = (models: string) => [
    { path: 'engine.prisma', content: readFileSync(`${prisma}${engine}/engine.prisma`, 'utf8') },
    { path: 'models.prisma', content: readFileSync(models, 'utf8') },
  ];
  const to = files(current);
  const { stdout } = await withSchemaEngine(
    adapters[engine](),
    to.map(({ path, content }) => [path, content]),
    (schema) =>
      schema.diff({
        from: afresh ? { tag: 'empty' } : { tag: 'schemaDatamodel', files: files(migrated) },
        to: { tag: 'schemaDatamodel', files: to },
        script: true,
        exitCode: null,
        filters: everything,
      }),
  );
  return stdout ?? '';
}

function stampOf(date: Date): string {
  return date.toISOString().replace(/\D/g, '').slice(0, 14);
}

const afresh = !existsSync(migrated) || knownMigrations('sqlite').length === 0;
if (!afresh && readFileSync(migrated, 'utf8') === readFileSync(current, 'utf8')) {
  console.error('The migrations lead to these models already.');
} else {
  const name = `${stampOf(new Date())}_${process.argv[2] ?? (afresh ? 'first' : 'models')}`;
  for (const engine of ['sqlite', 'postgres'] as const) {
    const sql = await difference(engine, afresh);
    if (/^-- This is an empty migration/.test(sql)) continue;
    const folder = `${prisma}migrations/${engine}/${name}`;
    mkdirSync(folder, { recursive: true });
    writeFileSync(`${folder}/migration.sql`, sql);
    writeFileSync(
      `${prisma}migrations/${engine}/migration_lock.toml`,
      `provider = "${engine === 'sqlite' ? 'sqlite' : 'postgresql'}"\n`,
    );
    console.error(`Wrote prisma/migrations/${engine}/${name}/migration.sql: read it before it is committed.`);
  }
  copyFileSync(current, migrated);
}
