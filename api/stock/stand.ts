// How a container stands at an instant, and the entries of a timeline that lead there. Plain data.
import type { Closure, ContainerKind, Scooping } from '../database/generated/sqlite/client.ts';
import type { Carried } from './carried.ts';
import type { EventType, Habit, Said } from './details.ts';
import type { Prepared } from './prepared.ts';

/** What a container is, whatever happens to it. */
export interface Base {
  kind: ContainerKind;
  /** Dry sorbent on one plate, g; null for what holds no plates. */
  dryGramsPerPlate: number | null;
  /** How it is shut again after a scoop that broke its seal. */
  usualClosure: Closure;
}

/** One thing that happened, as one container sees it: it happened to it, or it was filled by it. */
export type Entry = Said & {
  id: string;
  at: Date;
  /** Order among what happened at one instant. */
  place: number;
  role: 'own' | 'filled';
  /** As booked: what left, or what came in. */
  dryGrams: number | null;
  plates: number | null;
  /** How what it carried into another container stood. */
  carried?: Carried | null;
};

export interface Stand {
  cameInAt: Date;
  roomId: string;
  /** OPEN while it stands open. */
  closure: Closure;
  openedAt: Date | null;
  dryGrams: number;
  dryGramsAssumed: boolean;
  plates: number | null;
  scooping: Scooping;
  habit: Habit | null;
  /** Holds mobile phase or wash solvent since. */
  wettedAt: Date | null;
  /** Met solvent or sample for the first time. */
  touchedSolventAt: Date | null;
  /** Solvent-wet plates: in the hood to dry since then; null where nobody said. */
  hoodAt: Date | null;
  /** What was done to plates; null where nothing was. */
  prepared: Prepared | null;
  finishedAt: Date | null;
  /** `emptied`: the last gram was taken, nobody said more; a count can still find some. */
  finish: 'emptied' | 'used up' | 'discarded' | 'combined' | null;
}

/** Grams below this are nothing: rounding of sums, far under what any balance shows. */
export const nothingGrams = 1e-6;

/** What cannot be true: which entry, which part of it, why, and what would be right. */
export interface Impossible {
  entry: Entry;
  /** The field of the input that is wrong. */
  about: 'at' | 'grams' | 'plates' | 'label';
  why: string;
  expected: string;
}

export interface Note {
  entryId: string;
  text: string;
}

export type Folded =
  { stand: Stand; notes: Note[]; impossible: null } | { stand: null; notes: Note[]; impossible: Impossible };

/** Types that make the container they fill. */
const makers: ReadonlySet<EventType> = new Set(['PORTION_TAKEN', 'PLATES_TAKEN', 'COLUMN_PACKED']);

export const isOrigin = (entry: Entry): boolean =>
  entry.role === 'own' ? entry.type === 'CAME_IN' : makers.has(entry.type);

/** By time, and at one instant as first recorded. */
export const byTime = (a: Entry, b: Entry): number => a.at.getTime() - b.at.getTime() || a.place - b.place;

export const isOpen = (stand: Stand): boolean => stand.closure === 'OPEN' && stand.finishedAt === null;
