// Runs one suite on both database engines, each test database new and brought up to date.
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, describe, inject } from 'vitest';
import type { Engine } from '../../api/database/client.ts';
import { type Database, type DatabaseSettings, openDatabase } from '../../api/database/database.ts';

/** What a suite is given: ways to a database of its own, and which engine it is on. */
export interface OnEngine {
  engine: Engine;
  /** A new database, opened; closed and removed after the suite. */
  fresh(): Promise<Database>;
  /** Settings of a new and empty database, for what opens it itself; removed after the suite. */
  place(): Promise<DatabaseSettings>;
}

async function postgresUrl(): Promise<string> {
  const answer = await fetch(inject('postgresDoor'));
  const text = await answer.text();
  if (!answer.ok) throw new Error(text);
  return text;
}

async function onServer(url: string, statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: `${url}/postgres` });
  await client.connect();
  await client.query(statement).finally(() => client.end());
}

async function newPostgres(undo: (() => Promise<void> | void)[]): Promise<DatabaseSettings> {
  const url = await postgresUrl();
  const name = `test_${randomUUID().replaceAll('-', '')}`;
  await onServer(url, `create database ${name}`);
  undo.push(() => onServer(url, `drop database ${name} with (force)`));
  return { dataFolder: '', databaseUrl: `${url}/${name}` };
}

function newFolder(undo: (() => Promise<void> | void)[]): DatabaseSettings {
  const dataFolder = mkdtempSync(join(tmpdir(), 'drumkeep-test-'));
  undo.push(() => rmSync(dataFolder, { recursive: true, force: true }));
  return { dataFolder };
}

/** Databases of one engine, for the suite that this is called in. */
export function engineOfSuite(engine: Engine): OnEngine {
  const undo: (() => Promise<void> | void)[] = [];
  const place = async () => (engine === 'sqlite' ? newFolder(undo) : newPostgres(undo));
  afterAll(async () => {
    for (const step of undo.reverse()) await step();
  });
  return {
    engine,
    place,
    async fresh() {
      const database = await openDatabase(await place());
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
