// What weighings taught a lab, as its estimates use it: values, doubts that hang together, and the weighings taken in.
import * as stored from '../database/learned.ts';
import type { FleetEvent } from '../database/fleet.ts';
import type { Reader } from '../database/reader.ts';
import { rememberedNames } from '../science/calibration/taught.ts';
import type { Because, Taught } from '../science/calibration/taught.ts';
import type { Values } from '../science/calibration/factors.ts';
import type { Held } from '../science/history.ts';

export interface Learned {
  /** Tells one fit from another. */
  readonly id: string;
  readonly values: Values;
  readonly held: Held;
  readonly takenIn: ReadonlySet<string>;
  /** By the names under which they are stored. */
  readonly rows: ReadonlyMap<string, Taught>;
}

/** The newest fit of each lab, read once. */
const known = new Map<string, Learned>();

/** Null where nothing was learned yet. */
export async function learnedOf(reader: Reader, labId: string): Promise<Learned | null> {
  const newest = await stored.newestLearned(reader, labId);
  if (!newest) return null;
  const before = known.get(labId);
  if (before?.id === newest.id) return before;
  const rows = (await stored.learnedRows(reader, labId, newest.version)).map(
    ({ factor, lnValue, lnSd, because }): Taught => ({ factor, lnValue, lnSd, because: because as Because }),
  );
  const { values, held } = rememberedNames(rows.filter(({ because }) => because.with !== undefined));
  const learned: Learned = {
    id: newest.id,
    values,
    held,
    takenIn: new Set(await stored.weighingsTakenIn(reader, labId)),
    rows: new Map(rows.map((row) => [row.factor, row])),
  };
  known.set(labId, learned);
  return learned;
}

/** What a gross weighing says of water is known only against another one. */
const isGross = ({ type, detail }: FleetEvent): boolean =>
  type === 'WEIGHED' && (detail as { method?: string }).method === 'GROSS';

/** A timeline without the weighings that were learned from: what they say is in the factors by now. */
export function withoutTaken(events: readonly FleetEvent[], learned: Learned | null): readonly FleetEvent[] {
  const isLeft = (event: FleetEvent): boolean =>
    event.type !== 'WEIGHED' || (!isGross(event) && !learned?.takenIn.has(event.eventId));
  return events.every(isLeft) ? events : events.filter(isLeft);
}
