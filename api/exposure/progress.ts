// How far the background estimate is, for whoever asks.
import type { Database } from '../database/database.ts';

export interface EstimateProgress {
  readonly running: boolean;
  readonly done: number;
  readonly total: number;
  readonly startedAt: Date | null;
  readonly finishedAt: Date | null;
}

const idle: EstimateProgress = { running: false, done: 0, total: 0, startedAt: null, finishedAt: null };
const kept = new WeakMap<Database, EstimateProgress>();

export const progressOf = (database: Database): EstimateProgress => kept.get(database) ?? idle;

export function noteProgress(database: Database, change: Partial<EstimateProgress>): void {
  kept.set(database, { ...progressOf(database), ...change });
}
