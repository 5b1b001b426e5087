// Learning once: what is new since the last fit, fitted and stored.
import { Worker } from 'node:worker_threads';
import { learnedRows, newestLearned } from '../database/learned.ts';
import type { Database } from '../database/database.ts';
import type { DatabaseSettings } from '../database/place.ts';
import type { LabFacts } from '../exposure/service.ts';
import { fitOf, type Fit } from './fit.ts';
import { fitName, stored } from './store.ts';
import type { ToLearn } from './worker.ts';

/** Fits in a thread of its own, so that nobody waits for it. */
function fitApart(
  { dataFolder, databaseUrl }: DatabaseSettings,
  lab: LabFacts,
  basis: string | null,
): Promise<Fit | null> {
  const toLearn: ToLearn = { settings: { dataFolder, databaseUrl }, lab, basis };
  const worker = new Worker(new URL('./worker.mjs', import.meta.url), { workerData: toLearn, execArgv: [] });
  return new Promise((resolve, reject) => {
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', () => reject(new Error('the learning thread ended without an answer')));
  });
}

async function basisBefore(database: Database, labId: string): Promise<string | null> {
  const newest = await newestLearned(database, labId);
  if (!newest) return null;
  const rows = await learnedRows(database, labId, newest.version);
  const because = rows.find(({ factor }) => factor === fitName)?.because as { basis?: string } | undefined;
  return because?.basis ?? '';
}

export interface Learning {
  readonly database: Database;
  readonly lab: LabFacts;
  readonly now: () => Date;
  /** Where the fit is to be made in a thread of its own. */
  readonly apart?: DatabaseSettings | null;
}

/** Learns from all that was weighed; false where nothing has changed since the last time. */
export async function learnAgain({ database, lab, now, apart }: Learning): Promise<boolean> {
  const { id, timeZone, settings } = lab;
  const facts: LabFacts = { id, timeZone, settings };
  const basis = await basisBefore(database, id);
  const fit = apart ? await fitApart(apart, facts, basis) : await fitOf(database, facts, basis);
  if (!fit) return false;
  await database.write((tx) => stored(tx, database.engine, id, fit, now()));
  return true;
}
