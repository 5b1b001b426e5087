// The lab this server keeps: made on the first start, with the demo's stock unless told otherwise.
import type { Database } from './database/database.ts';
import type { Lab } from './database/generated/sqlite/client.ts';
import type { Settings } from './settings.ts';
import { newId } from './work.ts';

/** The one lab of this database; made when there is none. */
export async function labOf(database: Database, settings: Settings, now: Date): Promise<Lab> {
  const there = await database.read.lab.findFirst({ orderBy: { createdAt: 'asc' } });
  if (there) return there;
  const made = {
    id: newId(),
    name: settings.demo ? 'Fenwick Hollow Botanical Station' : 'Our lab',
    timeZone: settings.timeZone,
    isDemo: settings.demo,
    settings: {},
    createdAt: now,
  };
  return database.write((tx) => tx.lab.create({ data: made }));
}
