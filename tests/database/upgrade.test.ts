// The next version of Drumkeep starts on a database in use.
import { readdirSync } from 'node:fs';
import Sqlite from 'better-sqlite3';
import { expect, it, vi } from 'vitest';
import { openDatabase } from '../../api/database/database.ts';
import { sqliteFile } from '../../api/database/place.ts';
import { describeEngines } from '../support/engines.ts';

/** The migration that the next version brings; no version has it yet. */
const next = vi.hoisted(() => ({
  name: '99990101000000_next',
  sql: 'create table "Next" ("id" text primary key);',
  brought: false,
}));

vi.mock('../../api/database/migrations.ts', async (original) => {
  const real = await original<typeof import('../../api/database/migrations.ts')>();
  const migrationFile = { path: 'migration.sql', content: { tag: 'ok' as const, value: next.sql } };
  return {
    ...real,
    knownMigrations: (engine: 'sqlite' | 'postgres') => [
      ...real.knownMigrations(engine),
      ...(next.brought ? [next.name] : []),
    ],
    migrationList: (engine: 'sqlite' | 'postgres') => {
      const list = real.migrationList(engine);
      const more = next.brought ? [{ path: next.name, migrationFile }] : [];
      return { ...list, migrationDirectories: [...list.migrationDirectories, ...more] };
    },
  };
});

const lab = { id: 'lab', name: 'Old lab', timeZone: 'UTC', settings: {}, createdAt: new Date(0) };

describeEngines('the next version', (on) => {
  it('brings the database up to date and keeps what is in it; SQLite, which cannot undo half of it, is copied before', async () => {
    next.brought = false;
    const place = await on.place();
    const old = await openDatabase(place);
    await old.write((tx) => tx.lab.create({ data: lab }));
    await old.close();
    next.brought = true;
    const after = await openDatabase(place);
    expect(await after.read.lab.findMany({ select: { name: true } })).toEqual([{ name: 'Old lab' }]);
    expect(await after.select('select * from "Next"')).toEqual([]);
    await after.close();
    if (on.engine !== 'sqlite') return;
    const copy = `${sqliteFile(place.dataFolder)}.before-${next.name}`;
    expect(readdirSync(place.dataFolder).map((name) => `${place.dataFolder}/${name}`)).toContain(copy);
    const kept = new Sqlite(copy, { readonly: true });
    expect(kept.prepare('select "name" from "Lab"').all()).toEqual([{ name: 'Old lab' }]);
    expect(kept.prepare(`select 1 from sqlite_master where name = 'Next'`).all()).toEqual([]);
    kept.close();
  });
});
