// A SQLite file opened by the package `sqlite3`. Only in a process of its own: two copies of SQLite with one file open
// in the same process can damage it ("How To Corrupt An SQLite Database File", section 2.2.1, SQLite documentation).
import { existsSync } from 'node:fs';
import sqlite3 from 'sqlite3';
import { BadInput } from '../bad-input.ts';

/** The online backup of the package, which its own types leave out. */
interface OnlineBackup {
  readonly remaining: number;
  readonly pageCount: number;
  readonly completed: boolean;
  step(pages: number, done: (error: Error | null) => void): void;
  finish(done: (error: Error | null) => void): void;
}

declare module 'sqlite3' {
  interface Database {
    backup(file: string, begun: (error: Error | null) => void): OnlineBackup;
  }
}

export interface SqliteFile {
  run: (sql: string) => Promise<void>;
  rows: <Row>(sql: string) => Promise<Row[]>;
  /** Copies the database into a file; `progress` is told of pages done, of pages in all. */
  copyTo: (file: string, progress: (done: number, all: number) => void) => Promise<void>;
  close: () => Promise<void>;
}

/** Pages copied between two looks at the clock and the progress bar: 4 MB of the usual 4 kB pages. */
const pagesAtOnce = 1_000;

type Callback<Value> = (error: Error | null, value: Value) => void;
const promised = <Value>(call: (done: Callback<Value>) => void): Promise<Value> =>
  new Promise((good, bad) => call((error, value) => (error ? bad(error) : good(value))));
const finished = (call: (done: (error: Error | null) => void) => void): Promise<void> =>
  new Promise((good, bad) => call((error) => (error ? bad(error) : good())));

/** Opens an existing file for reading only. Throws `BadInput` when it is missing or no database. */
export async function openSqliteFile(file: string): Promise<SqliteFile> {
  if (!existsSync(file)) throw new BadInput(`missing ${file}, start Drumkeep once to make it, or name another`);
  const database = await new Promise<sqlite3.Database>((good, bad) => {
    const opened = new sqlite3.Database(file, sqlite3.OPEN_READONLY, (error) => (error ? bad(error) : good(opened)));
  });
  database.configure('busyTimeout', 5_000);
  const rows = <Row>(sql: string) => promised<Row[]>((done) => database.all<Row>(sql, done));
  const close = () => finished((done) => database.close(done));
  try {
    await rows('select 1 from sqlite_master limit 1');
  } catch (error) {
    await close();
    throw new BadInput(`invalid ${file}: ${error instanceof Error ? error.message : String(error)}, a SQLite file`);
  }
  return {
    rows,
    close,
    run: (sql) => finished((done) => database.exec(sql, done)),
    async copyTo(target, progress) {
      let copy: OnlineBackup | undefined;
      await finished((done) => {
        copy = database.backup(target, done);
      });
      if (copy === undefined) throw new Error('the backup did not begin');
      const going = copy;
      while (!going.completed) {
        await finished((done) => going.step(pagesAtOnce, done));
        progress(going.pageCount - going.remaining, going.pageCount);
      }
      await finished((done) => going.finish(done));
    },
  };
}
