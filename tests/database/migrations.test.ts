// A database is brought up to date by what the project carries, or left alone. The same on both engines.
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import { PrismaPg } from '@prisma/adapter-pg';
import Sqlite from 'better-sqlite3';
import pg from 'pg';
import { describe, expect, it } from 'vitest';
import type { Engine } from '../../api/database/client.ts';
import { type Database, openDatabase } from '../../api/database/database.ts';
import { NewerDatabase } from '../../api/database/migrate.ts';
import { knownMigrations, migrationText, schemaFiles } from '../../api/database/migrations.ts';
import { type DatabaseSettings, sqliteFile } from '../../api/database/place.ts';
import { everything, withSchemaEngine } from '../../api/database/schema-engine.ts';
import { describeEngines, engineOfSuite, type OnEngine } from '../support/engines.ts';

const prismaFolder = fileURLToPath(new URL('../../prisma/', import.meta.url));
const adapterOf = ({ databaseUrl, dataFolder }: DatabaseSettings) =>
  databaseUrl === undefined ? new PrismaBetterSqlite3({ url: sqliteFile(dataFolder) }) : new PrismaPg(databaseUrl);

const rowsOf = (database: Database) =>
  database.select<{ name: string; checksum: string; done: number }>(
    `select "migration_name" as "name", "checksum", "finished_at" as "done" from "_prisma_migrations" order by "migration_name"`,
  );

const claimNewer = (database: Database) =>
  database.write((tx) =>
    tx.$executeRawUnsafe(
      `insert into "_prisma_migrations" ("id", "checksum", "finished_at", "migration_name", "started_at", "applied_steps_count")
       select '99999999', "checksum", "finished_at", '99990101000000_from_the_future', "started_at", 1 from "_prisma_migrations" limit 1`,
    ),
  );

describeEngines('migrating', (on) => {
  it('a new database carries every migration in the table that Prisma itself keeps, with its checksum', async () => {
    const rows = await rowsOf(await on.fresh());
    expect(rows.map(({ name }) => name)).toEqual(knownMigrations(on.engine));
    for (const { name, checksum, done } of rows) {
      expect(checksum).toBe(createHash('sha256').update(migrationText(on.engine, name)).digest('hex'));
      expect(done).not.toBeNull();
    }
  });

  it('opening twice changes nothing', async () => {
    const place = await on.place();
    const first = await openDatabase(place);
    const before = await rowsOf(first);
    await first.close();
    const second = await openDatabase(place);
    expect(await rowsOf(second)).toEqual(before);
    await second.close();
  });

  it('a database from a newer version is refused by name', async () => {
    const place = await on.place();
    const database = await openDatabase(place);
    await claimNewer(database);
    await database.close();
    const refusal = openDatabase(place);
    await expect(refusal).rejects.toBeInstanceOf(NewerDatabase);
    await expect(refusal).rejects.toThrow('newer version of Drumkeep (99990101000000_from_the_future)');
  });
});

describe('the migrations lead to exactly the models', () => {
  const models = (engine: Engine) => schemaFiles(engine).map(([path, content]) => ({ path, content }));
  const difference = (on: OnEngine, place: DatabaseSettings, from: 'nothing' | 'what is there') =>
    withSchemaEngine(adapterOf(place), schemaFiles(on.engine), (engine) =>
      engine.diff({
        from:
          from === 'nothing'
            ? { tag: 'empty' }
            : { tag: 'schemaDatasource', files: models(on.engine), configDir: prismaFolder },
        to: { tag: 'schemaDatamodel', files: models(on.engine) },
        script: true,
        exitCode: true,
        filters: everything,
      }),
    );

  describe('on SQLite', () => {
    const on = engineOfSuite('sqlite');
    it('Prisma itself finds no difference', async () => {
      const place = await on.place();
      await (await openDatabase(place)).close();
      expect(await difference(on, place, 'what is there')).toMatchObject({ exitCode: 0 });
    });
  });

  describe('on PostgreSQL', () => {
    const on = engineOfSuite('postgres');
    // Prisma's WebAssembly engine cannot read PostgreSQL's own catalogue through its adapter, so we read it.
    const catalogue = [
      `select table_name, column_name, data_type, udt_name, is_nullable, column_default, datetime_precision from information_schema.columns where table_schema = 'public' order by 1, 2`,
      `select tablename, indexname, indexdef from pg_indexes where schemaname = 'public' order by 1, 2`,
      `select conrelid::regclass::text as "of", conname, pg_get_constraintdef(oid) as "rule" from pg_constraint where connamespace = 'public'::regnamespace order by 1, 2`,
      `select t.typname, e.enumlabel from pg_enum e join pg_type t on t.oid = e.enumtypid order by 1, e.enumsortorder`,
    ];
    const described = async (place: DatabaseSettings) => {
      const client = new pg.Client({ connectionString: place.databaseUrl });
      await client.connect();
      const answers: unknown[][] = [];
      for (const query of catalogue) answers.push((await client.query(query)).rows);
      await client.end();
      return answers.map((rows) => rows.filter((row) => !JSON.stringify(row).includes('_prisma_migrations')));
    };
    it('a database migrated step by step equals one made of the models at once', async () => {
      const [migrated, made] = [await on.place(), await on.place()];
      await (await openDatabase(migrated)).close();
      const { stdout } = await difference(on, made, 'nothing');
      const client = new pg.Client({ connectionString: made.databaseUrl });
      await client.connect();
      await client.query(stdout ?? '').finally(() => client.end());
      const expected = await described(made);
      expect(expected[0]?.length).toBeGreaterThan(20);
      expect(await described(migrated)).toEqual(expected);
    });
  });
});

describe('a SQLite file', () => {
  const on = engineOfSuite('sqlite');
  const contentOf = (folder: string) =>
    readdirSync(folder)
      .filter((name) => !name.endsWith('-shm'))
      .map(
        (name) =>
          `${name} ${createHash('sha256')
            .update(readFileSync(`${folder}/${name}`))
            .digest('hex')}`,
      );

  it('of a newer version is byte for byte what it was, also after a crash of that version', async () => {
    const place = await on.place();
    await (await openDatabase(place)).close();
    // A writer that is never closed leaves its log beside the file, as a crash would.
    const crashed = new Sqlite(sqliteFile(place.dataFolder));
    crashed.exec(
      `insert into "_prisma_migrations" select '99999999', "checksum", "finished_at", 'zz_future', null, null, "started_at", 1 from "_prisma_migrations" limit 1`,
    );
    const before = contentOf(place.dataFolder);
    expect(before).toHaveLength(2);
    await expect(openDatabase(place)).rejects.toBeInstanceOf(NewerDatabase);
    expect(contentOf(place.dataFolder)).toEqual(before);
    crashed.close();
  });
});
