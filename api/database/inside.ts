// Hand-written reading inside an open transaction, so that it sees what that transaction has written already.
import type { Engine, Transaction } from './client.ts';
import type { Reader } from './reader.ts';

const engines = new WeakMap<Transaction, Engine>();

/** Told by the write queue which engine a transaction runs on. */
export function entered(transaction: Transaction, engine: Engine): void {
  engines.set(transaction, engine);
}

/** SQLite through Prisma knows placeholders by their place only: `$2 … $1` becomes `? … ?` with the values in that order. */
function inPlace(statement: string, values: readonly unknown[]): { statement: string; values: unknown[] } {
  const ordered: unknown[] = [];
  const text = statement.replace(/\$(\d+)/g, (_, number: string) => {
    ordered.push(values[Number(number) - 1]);
    return '?';
  });
  return { statement: text, values: ordered };
}

/** As `Database.select` gives it: times as milliseconds, counts as numbers. */
function plain(value: unknown): unknown {
  if (value instanceof Date) return value.getTime();
  return typeof value === 'bigint' ? Number(value) : value;
}

/** A reader of what an open transaction of the write queue sees. */
export function readerInside(transaction: Transaction): Reader {
  const engine = engines.get(transaction);
  if (!engine) throw new Error('not a transaction of the write queue');
  return {
    engine,
    async select<Row>(statement: string, values: readonly (string | number | null)[] = []): Promise<Row[]> {
      const asked = engine === 'sqlite' ? inPlace(statement, values) : { statement, values: [...values] };
      const rows = await transaction.$queryRawUnsafe<Record<string, unknown>[]>(asked.statement, ...asked.values);
      for (const row of rows) for (const key of Object.keys(row)) row[key] = plain(row[key]);
      return rows as Row[];
    },
  };
}
