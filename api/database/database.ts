// Opens the database of a lab: brought up to date, one queue for writes, a read-only client beside it.
import { mkdirSync } from 'node:fs';
import type { Client, Engine } from './client.ts';
import { type DatabaseSettings, sqliteFile } from './place.ts';
import { openPostgres } from './postgres.ts';
import type { Write } from './queue.ts';
import { openSqlite } from './sqlite.ts';
import type { Statements } from './statements.ts';

export interface Database {
  engine: Engine;
  /** Where the data lies: a file, or a server's address without its password. */
  place: string;
  /** Cannot write; sees only what is committed. */
  read: Client;
  /** The one way to write: work in a transaction, one after the other. */
  write: Write;
  /**
   * Rows of one hand-written statement, past Prisma, for lists too hot for it. Placeholders are `$1`, `$2`, … on
   * both engines; times come back as milliseconds since 1970, counts as numbers.
   */
  select: <Row>(statement: string, values?: readonly (string | number | null)[]) => Promise<Row[]>;
  statements: Statements;
  close: () => Promise<void>;
}

export type { DatabaseSettings };

/** Throws `NewerDatabase` when a later version of Drumkeep wrote this database. */
export async function openDatabase(settings: DatabaseSettings): Promise<Database> {
  if (settings.databaseUrl !== undefined) return openPostgres(settings.databaseUrl);
  mkdirSync(settings.dataFolder, { recursive: true });
  return openSqlite(sqliteFile(settings.dataFolder));
}
