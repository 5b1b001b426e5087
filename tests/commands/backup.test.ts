// A copy made while the server writes is of one instant, and whole; what is not whole is said to be so.
import { copyFileSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { insertRows } from '../../api/database/bulk.ts';
import { type Database, openDatabase } from '../../api/database/database.ts';
import { type DatabaseSettings, sqliteFile } from '../../api/database/place.ts';
import { command } from '../support/command.ts';
import { engineOfSuite } from '../support/engines.ts';

const labOf = (id: string) => ({ id, name: id, timeZone: 'UTC', settings: {}, createdAt: new Date(0) });

/** Two rows that must always be equal, and ballast that makes the copy take several steps. */
async function filled(place: DatabaseSettings): Promise<Database> {
  const database = await openDatabase(place);
  const ballast = Array.from({ length: 60_000 }, (_, index) => ({
    labId: 'ballast',
    name: `row ${index} ${'x'.repeat(200)}`,
    value: index,
  }));
  const columns = { labId: 'text', name: 'text', value: 'integer' } as const;
  await database.write(async (tx) => {
    await insertRows(tx, 'sqlite', { table: 'Counter', columns, rows: ballast });
    await tx.counter.createMany({ data: ['here', 'there'].map((name) => ({ labId: 'pair', name, value: 0 })) });
  });
  return database;
}

/** Moves both rows on, and changes some of the ballast, until told to stop; gives how often. */
function keepWriting(database: Database): { stop: () => Promise<number> } {
  let going = true;
  const writing = (async () => {
    let turns = 0;
    for (; going && turns < 20_000; turns += 1) {
      await database.write(async (tx) => {
        for (const name of ['here', 'there'])
          await tx.counter.update({
            where: { labId_name: { labId: 'pair', name } },
            data: { value: { increment: 1 } },
          });
        await tx.$executeRawUnsafe(
          `update "Counter" set "value" = "value" + 1 where "labId" = 'ballast' and "value" % 1000 = ${turns % 1000}`,
        );
      });
    }
    return turns;
  })();
  return { stop: () => ((going = false), writing) };
}

describe('backup', () => {
  const on = engineOfSuite('sqlite');

  it('copies one instant of a database that is being written to, and the copy passes verify', async () => {
    const place = await on.place();
    const database = await filled(place);
    const writer = keepWriting(database);
    const copied = await command('backup', [], { DRUMKEEP_DATA: place.dataFolder });
    const verified = await command('verify', [], { DRUMKEEP_DATA: place.dataFolder });
    expect(await writer.stop()).toBeGreaterThan(3);
    await database.close();
    const [file = ''] = readdirSync(join(place.dataFolder, 'backups')).map((name) =>
      join(place.dataFolder, 'backups', name),
    );
    expect(copied).toMatchObject({ code: 0, stdout: `${file}: ${readFileSync(file).length} bytes\n` });
    expect(verified).toMatchObject({ code: 0 });

    expect(await command('verify', [file])).toMatchObject({
      code: 0,
      stdout: expect.stringMatching(/links between rows: good\nrows: Counter 60002\n$/),
    });
    const copy = new Sqlite(file, { readonly: true });
    const pair = copy.prepare(`select "value" from "Counter" where "labId" = 'pair'`).all() as { value: number }[];
    copy.close();
    expect(pair).toHaveLength(2);
    expect(pair[0]).toEqual(pair[1]);
  });

  it('a restored copy opens and goes on', async () => {
    const [place, restored] = [await on.place(), await on.place()];
    const database = await openDatabase(place);
    await database.write((tx) => tx.lab.create({ data: labOf('kept') }));
    const file = join(restored.dataFolder, 'copy.sqlite');
    expect(await command('backup', [file], { DRUMKEEP_DATA: place.dataFolder })).toMatchObject({ code: 0 });
    await database.close();
    copyFileSync(file, sqliteFile(restored.dataFolder));
    const again = await openDatabase(restored);
    await again.write((tx) => tx.lab.create({ data: labOf('new') }));
    expect(await again.read.lab.count()).toBe(2);
    await again.close();
  });

  it('never writes over a file, and says which setting is wrong, in one line', async () => {
    const place = await on.place();
    const missing = await command('backup', [], { DRUMKEEP_DATA: place.dataFolder });
    expect(missing).toEqual({
      code: 1,
      stdout: '',
      stderr: expect.stringMatching(/^missing .*drumkeep\.sqlite, [^\n]*\n$/),
    });
    await (await openDatabase(place)).close();
    const taken = join(place.dataFolder, 'taken');
    writeFileSync(taken, 'precious');
    const refused = await command('backup', [taken], { DRUMKEEP_DATA: place.dataFolder });
    expect(refused).toEqual({ code: 1, stdout: '', stderr: `invalid FILE: ${taken}, a name that is not taken\n` });
    expect(readFileSync(taken, 'utf8')).toBe('precious');
    const port = await command('backup', [], { PORT: 'forty' });
    expect(port).toEqual({
      code: 1,
      stdout: '',
      stderr: 'invalid PORT: forty, should be a whole number from 0 to 65535\n',
    });
    expect(existsSync(join(place.dataFolder, 'backups'))).toBe(false);
  });
});

describe('verify', () => {
  const on = engineOfSuite('sqlite');

  it('names rows that point nowhere and pages that are torn, and ends with 2', async () => {
    const place = await on.place();
    await (await filled(place)).close();
    const file = sqliteFile(place.dataFolder);
    const raw = new Sqlite(file);
    raw.pragma('foreign_keys = off');
    raw.exec(`insert into "Person" ("id", "labId", "role", "shortName") values ('p', 'nowhere', 'Analyst', 'AN')`);
    raw.pragma('wal_checkpoint(truncate)');
    raw.close();
    const orphan = await command('verify', [file]);
    expect(orphan.stdout).toMatch(/links between rows: NOT good\n {2}a row of Person \(1\) points to none of Lab\n/);
    expect(orphan.code).toBe(2);

    const torn = readFileSync(file);
    torn.fill(0xff, Math.floor(torn.length / 2), Math.floor(torn.length / 2) + 8192);
    writeFileSync(file, torn);
    const damaged = await command('verify', [file]);
    expect(damaged.stdout).toMatch(/pages and indexes: NOT good\n/);
    expect(damaged.code).toBe(2);
  });

  it('names a migration of a newer version, and one that was changed', async () => {
    const place = await on.place();
    await (await openDatabase(place)).close();
    const raw = new Sqlite(sqliteFile(place.dataFolder));
    raw.exec(`update "_prisma_migrations" set "checksum" = 'other'`);
    raw.exec(
      `insert into "_prisma_migrations" select 'x', 'x', "finished_at", 'zz_future', null, null, "started_at", 1 from "_prisma_migrations" limit 1`,
    );
    raw.close();
    const ended = await command('verify', [], { DRUMKEEP_DATA: place.dataFolder });
    expect(ended.code).toBe(2);
    expect(ended.stdout).toMatch(/migrations: NOT good\n(.*\n)* {2}zz_future is of a newer version\n/);
    expect(ended.stdout).toMatch(/_first is not the one of this version\n/);
  });

  it('a picture and a stranger’s database are no database of Drumkeep', async () => {
    const place = await on.place();
    const picture = join(place.dataFolder, 'picture.png');
    writeFileSync(picture, Buffer.concat([Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'), Buffer.alloc(5000, 7)]));
    expect(await command('verify', [picture])).toMatchObject({
      code: 1,
      stdout: '',
      stderr: expect.stringMatching(/^invalid .*picture\.png: .*, a SQLite file\n$/),
    });
    const stranger = join(place.dataFolder, 'stranger.sqlite');
    const other = new Sqlite(stranger);
    other.exec('create table other (a)');
    other.close();
    expect(await command('verify', [stranger])).toMatchObject({ code: 1, stdout: '' });
  });
});
