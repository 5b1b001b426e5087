// Runs one suite on both database engines, each test database new and migrated.
import { randomUUID } from 'node:crypto';
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, inject } from 'vitest';
import type { Engine } from '../../api/database/client.ts';
import { type Database, type DatabaseSettings, openDatabase } from '../../api/database/database.ts';
import { sqliteFile } from '../../api/database/place.ts';
import { onServer } from './statement.ts';

/** What a suite is given: ways to a database of its own, and which engine it is on. */
export interface OnEngine {
  engine: Engine;
  /** A new database, opened; closed and removed after the suite. */
  fresh(): Promise<Database>;
  /** Settings of a new and empty database, for what opens it itself; removed after the suite. */
  place(): Promise<DatabaseSettings>;
}

/** Where something lies that is made once for the whole run. */
export async function behindDoor(path: string): Promise<string> {
  const answer = await fetch(`${inject('databaseDoor')}${path}`);
  const text = await answer.text();
  if (!answer.ok) throw new Error(text);
  return text;
}

/** What undoes what was made. */
type Undo = (() => Promise<void> | void)[];

async function newPostgres(undo: Undo, like = ''): Promise<DatabaseSettings> {
  const url = await behindDoor('/postgres');
  const name = `test_${randomUUID().replaceAll('-', '')}`;
  await onServer(url, `create database ${name}${like && ` template ${new URL(like).pathname.slice(1)}`}`);
  undo.push(() => onServer(url, `drop database ${name} with (force)`));
  return { dataFolder: '', databaseUrl: `${url}/${name}` };
}

function newFolder(undo: Undo): DatabaseSettings & { dataFolder: string } {
  const dataFolder = mkdtempSync(join(tmpdir(), 'drumkeep-test-'));
  undo.push(() => rmSync(dataFolder, { recursive: true, force: true }));
  return { dataFolder };
}

/** A copy of a migrated database: migrating anew for each suite would be most of what suites take. */
async function copied(engine: Engine, undo: Undo): Promise<DatabaseSettings> {
  const like = await behindDoor(`/${engine}/migrated`);
  if (engine === 'postgres') return newPostgres(undo, like);
  const folder = newFolder(undo);
  copyFileSync(like, sqliteFile(folder.dataFolder));
  return folder;
}

/** Databases of one engine, for the suite that this is called in. */
export function engineOfSuite(engine: Engine): OnEngine {
  const undo: Undo = [];
  const place = async () => (engine === 'sqlite' ? newFolder(undo) : newPostgres(undo));
  afterAll(async () => {
    for (const step of undo.reverse()) await step();
  });
  return {
    engine,
    place,
    async fresh() {
      const database = await openDatabase(await copied(engine, undo));
      undo.push(() => database.close());
      return database;
    },
  };
}

/** Describes the same suite twice, on SQLite and on PostgreSQL. */
export function describeEngines(title: string, suite: (on: OnEngine) => void): void {
  for (const engine of ['sqlite', 'postgres'] as const) {
    describe(`${title} (${engine})`, () => suite(engineOfSuite(engine)));
  }
}
