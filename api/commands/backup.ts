// `npm run backup [-- FILE]`: a copy of the lab's database at one instant, while the server goes on reading and writing.
import { existsSync, mkdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { SingleBar } from 'cli-progress';
import { sqliteFile } from '../database/place.ts';
import { readSettings, type Settings } from '../settings.ts';
import { BadInput } from '../bad-input.ts';
import { endWith } from './ending.ts';
import { openSqliteFile } from './sqlite-file.ts';

/** `2026-03-02T081500Z`: sorts by time and stands on every file system. */
const stampOf = (date: Date) => date.toISOString().replace(/\.\d+/, '').replaceAll(':', '');

function targetOf(settings: Settings, argument: string | undefined): string {
  const file =
    argument === undefined
      ? join(settings.dataFolder, 'backups', `drumkeep-${stampOf(new Date())}.sqlite`)
      : resolve(argument);
  if (existsSync(file)) throw new BadInput(`invalid FILE: ${file}, a name that is not taken`);
  return file;
}

function sqliteOf(settings: Settings): string {
  if (settings.databaseUrl === undefined) return sqliteFile(settings.dataFolder);
  throw new BadInput('invalid DRUMKEEP_DATABASE: a server, which has its own backup (pg_dump); this one copies SQLite');
}

/** Copies to a name beside the target first, so that what bears the target's name is whole. */
async function backup(argument: string | undefined): Promise<number> {
  const settings = readSettings(process.env);
  const target = targetOf(settings, argument);
  const source = await openSqliteFile(sqliteOf(settings));
  const unfinished = `${target}.unfinished`;
  const bar = new SingleBar({
    format: 'Copying [{bar}] {percentage} % of {total} pages',
    stream: process.stderr,
    clearOnComplete: true,
  });
  try {
    mkdirSync(dirname(target), { recursive: true });
    rmSync(unfinished, { force: true });
    // One open read transaction holds one instant: without it each write of the server would start the copy anew.
    await source.run('begin');
    await source.rows('select count(*) from sqlite_master');
    let begun = false;
    await source.copyTo(unfinished, (done, all) => {
      if (!begun) bar.start(all, 0);
      begun = true;
      bar.update(done);
    });
    bar.stop();
    renameSync(unfinished, target);
  } finally {
    bar.stop();
    rmSync(unfinished, { force: true });
    await source.close();
  }
  console.log(`${target}: ${statSync(target).size} bytes`);
  return 0;
}

await endWith(backup(process.argv[2]));
