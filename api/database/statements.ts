// Counts the statements that reach a database, so that a test can say "a list costs three, whatever its length".
import type { SqlDriverAdapter, SqlQuery, SqlQueryable, Transaction } from '@prisma/driver-adapter-utils';

export interface Statements {
  /** Statements since the database was opened; begin and commit are not counted. */
  total: () => number;
  /** Runs the work and gives its result with the text of each statement that ran meanwhile, in order. */
  during: <T>(work: () => Promise<T>) => Promise<{ result: T; texts: string[] }>;
  /** Called by whatever sends a statement. */
  note: (text: string) => void;
}

export function statementCounter(): Statements {
  let total = 0;
  const listeners = new Set<string[]>();
  return {
    total: () => total,
    async during(work) {
      const texts: string[] = [];
      listeners.add(texts);
      try {
        return { result: await work(), texts };
      } finally {
        listeners.delete(texts);
      }
    },
    note(text) {
      if (/^(begin|commit|rollback|savepoint|release|set transaction)/i.test(text)) return;
      total += 1;
      for (const texts of listeners) texts.push(text);
    },
  };
}

function countedQueryable(inner: SqlQueryable, statements: Statements): SqlQueryable {
  return {
    provider: inner.provider,
    adapterName: inner.adapterName,
    queryRaw(query: SqlQuery) {
      statements.note(query.sql);
      return inner.queryRaw(query);
    },
    executeRaw(query: SqlQuery) {
      statements.note(query.sql);
      return inner.executeRaw(query);
    },
  };
}

function countedTransaction(inner: Transaction, statements: Statements): Transaction {
  return {
    ...countedQueryable(inner, statements),
    options: inner.options,
    commit: () => inner.commit(),
    rollback: () => inner.rollback(),
  };
}

/**
 * The adapter with every statement noted. `begun` runs first in each transaction: writers take their lock there.
 */
export function countedAdapter(
  inner: SqlDriverAdapter,
  statements: Statements,
  begun: (transaction: Transaction) => Promise<unknown> = () => Promise.resolve(),
): SqlDriverAdapter {
  return {
    ...countedQueryable(inner, statements),
    executeScript: (script) => inner.executeScript(script),
    async startTransaction(isolationLevel) {
      const transaction = await inner.startTransaction(isolationLevel);
      try {
        await begun(transaction);
      } catch (error) {
        await transaction.executeRaw({ sql: 'ROLLBACK', args: [], argTypes: [] }).finally(() => transaction.rollback());
        throw error;
      }
      return countedTransaction(transaction, statements);
    },
    getConnectionInfo: () => inner.getConnectionInfo?.() ?? { supportsRelationJoins: false },
    dispose: () => inner.dispose(),
  };
}
