// `npm run verify [-- FILE]`: is a database whole? The lab's own, while the server runs, or a backup of it.
import { createHash } from 'node:crypto';
import { resolve } from 'node:path';
import { migrationText, knownMigrations } from '../database/migrations.ts';
import { sqliteFile } from '../database/place.ts';
import { readSettings } from '../settings.ts';
import { BadInput } from '../bad-input.ts';
import { endWith } from './ending.ts';
import { openSqliteFile, type SqliteFile } from './sqlite-file.ts';

/** What is wrong, a line each; nothing when all is well. */
type Check = (file: SqliteFile) => Promise<string[]>;

const integrity: Check = async (file) => {
  const rows = await file.rows<{ integrity_check: string }>('pragma integrity_check(20)');
  return rows.map((row) => row.integrity_check).filter((line) => line !== 'ok');
};

const links: Check = async (file) => {
  const rows = await file.rows<{ table: string; rowid: number; parent: string }>('pragma foreign_key_check');
  return rows.slice(0, 20).map((row) => `a row of ${row.table} (${row.rowid}) points to none of ${row.parent}`);
};

interface Migrated {
  migration_name: string;
  checksum: string;
  finished_at: number | null;
  rolled_back_at: number | null;
}

const checksumOf = (name: string) => createHash('sha256').update(migrationText('sqlite', name)).digest('hex');

const migrations: Check = async (file) => {
  const rows = await file.rows<Migrated>('select * from "_prisma_migrations" where "rolled_back_at" is null');
  const known = knownMigrations('sqlite');
  const faults = rows.flatMap((row) => {
    if (!known.includes(row.migration_name)) return [`${row.migration_name} is of a newer version`];
    if (row.finished_at === null) return [`${row.migration_name} was begun and not finished`];
    return row.checksum === checksumOf(row.migration_name)
      ? []
      : [`${row.migration_name} is not the one of this version`];
  });
  const missing = known.filter((name) => !rows.some((row) => row.migration_name === name));
  return [...faults, ...missing.map((name) => `${name} is not applied yet`)];
};

const checks: Record<string, Check> = {
  migrations,
  'pages and indexes': integrity,
  'links between rows': links,
};

async function counts(file: SqliteFile): Promise<string> {
  const tables = await file.rows<{ name: string }>(
    `select "name" from sqlite_master where "type" = 'table' and "name" not like 'sqlite_%' and "name" <> '_prisma_migrations' order by "name"`,
  );
  const counted: string[] = [];
  for (const { name } of tables) {
    const [row] = await file.rows<{ rows: number }>(`select count(*) as "rows" from "${name}"`);
    if (row && row.rows > 0) counted.push(`${name} ${row.rows}`);
  }
  return counted.join(', ') || 'none';
}

/** What a damaged file answers to a question is an error: that too is a finding. */
const orFault = (error: unknown): string[] => [error instanceof Error ? error.message : String(error)];

async function isDrumkeeps(file: SqliteFile): Promise<boolean> {
  return (await file.rows(`select 1 from sqlite_master where name = '_prisma_migrations'`)).length > 0;
}

async function verify(argument: string | undefined): Promise<number> {
  const settings = readSettings(process.env);
  if (argument === undefined && settings.databaseUrl !== undefined)
    throw new BadInput('invalid DRUMKEEP_DATABASE: a server, which checks itself; this one reads SQLite');
  const path = argument === undefined ? sqliteFile(settings.dataFolder) : resolve(argument);
  const file = await openSqliteFile(path);
  try {
    if (!(await isDrumkeeps(file))) throw new BadInput(`invalid FILE: ${path}, a database of Drumkeep`);
    console.log(path);
    let good = true;
    for (const [name, check] of Object.entries(checks)) {
      const faults = await check(file).catch(orFault);
      good &&= faults.length === 0;
      console.log([`${name}: ${faults.length === 0 ? 'good' : 'NOT good'}`, ...faults].join('\n  '));
    }
    console.log(`rows: ${await counts(file).catch(() => 'cannot be counted')}`);
    return good ? 0 : 2;
  } finally {
    await file.close();
  }
}

await endWith(verify(process.argv[2]));
