// Planning that takes a while: one at a time for a lab, how far it is for whoever asks, cancelled at will.
import type { Database } from './database/database.ts';

interface Running {
  readonly cancel: (keepBest: boolean) => void;
}

/** Of one kind: what is kept of the one under way. */
export function planningsOf<Now extends Running>() {
  const running = new WeakMap<Database, Now>();
  const lines = new WeakMap<Database, Promise<unknown>>();
  return {
    /** Null while nothing is planned. */
    now: (database: Database): Now | null => running.get(database) ?? null,

    /** Ends the planning under way; false when there is none. */
    cancelled: (database: Database, keepBest: boolean): boolean => {
      const now = running.get(database);
      now?.cancel(keepBest);
      return now !== undefined;
    },

    /** One after the other for a lab: each plan begins from what the one before left. */
    inLine: <A>(database: Database, work: () => Promise<A>): Promise<A> => {
      const before = lines.get(database) ?? Promise.resolve();
      const mine = before.then(work, work);
      lines.set(
        database,
        mine.catch(() => undefined),
      );
      return mine;
    },

    /** When nothing is in line any more. */
    idle: async (database: Database): Promise<void> => {
      await lines.get(database);
    },

    /** Under way for as long as this takes. */
    during: async <A>(database: Database, now: Now, work: () => Promise<A>): Promise<A> => {
      running.set(database, now);
      try {
        return await work();
      } finally {
        running.delete(database);
      }
    },
  };
}
