// What every resolver is given: the lab, who acts, the database, the clock and the loaders of this request.
import type { Lab, Person } from './database/generated/sqlite/client.ts';
import type { Database } from './database/database.ts';
import type { Loaders } from './loaders.ts';
import type { Settings } from './settings.ts';

export interface Context {
  lab: Lab;
  /** Who acts; null until somebody says so (header `Drumkeep-Person`). */
  actor: Person | null;
  /** The name that the header said, known or not. */
  actorName?: string | null;
  database: Database;
  settings: Settings;
  now: () => Date;
  load: Loaders;
  /** Leaves exposures stale for the next pass, for whoever writes much at once. */
  estimateLater?: boolean;
}
