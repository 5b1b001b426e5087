// What may follow what: folds a timeline into how the container stands, or names the first entry
// that cannot be true. Pure; tested without a database.
import type { ContainerKind } from '../database/generated/sqlite/client.ts';
import { begunWith } from './carried.ts';
import type { EventType } from './details.ts';
import { effects, filledFurther, type Change, type Outcome } from './effects.ts';
import {
  byTime,
  isOrigin,
  type Base,
  type Entry,
  type Folded,
  type Impossible,
  type Note,
  type Stand,
} from './stand.ts';
import { words } from './words.ts';

/** Kinds of container that a type can happen to; every kind where it is not listed. */
const kindsOf: Partial<Record<EventType, readonly ContainerKind[]>> = {
  PORTION_TAKEN: ['DRUM', 'PORTION'],
  COLUMN_PACKED: ['DRUM', 'PORTION'],
  COMBINED: ['DRUM', 'PORTION'],
  MIXED: ['DRUM', 'PORTION'],
  PLATES_TAKEN: ['PLATE_BOX'],
  PRE_WASHED: ['PLATE_BOX'],
  SOLVENT_GONE: ['PLATE_BOX'],
  CONDITIONED: ['COLUMN'],
};

const kindWords: Record<ContainerKind, string> = {
  DRUM: 'a drum',
  PORTION: 'a portion',
  PLATE_BOX: 'a plate box',
  COLUMN: 'a column',
};

/** What can still happen to a container whose last gram was taken. */
const afterEmptied: ReadonlySet<EventType> = new Set([
  'CLOSED',
  'MOVED',
  'COUNTED',
  'HABIT_SET',
  'USED_UP',
  'DISCARDED',
]);

/** Whether a type can happen to a kind of container, or why not. */
export function fits(type: EventType, kind: ContainerKind): { why: string; expected: string } | null {
  const kinds = kindsOf[type];
  if (!kinds || kinds.includes(kind)) return null;
  return { why: `it is ${kindWords[kind]}`, expected: kinds.map((each) => kindWords[each]).join(' or ') };
}

function standAtOrigin(entry: Entry, base: Base): Stand {
  const first = {
    cameInAt: entry.at,
    dryGrams: entry.dryGrams ?? 0,
    plates: base.kind === 'PLATE_BOX' ? (entry.plates ?? 0) : null,
    scooping: 'TOP' as const,
    habit: null,
    ...begunWith(entry.role === 'filled' ? entry.carried : null),
    ...(base.kind === 'COLUMN' && { wettedAt: null }),
    finishedAt: null,
    finish: null,
  };
  const from = (roomId: string, closure: Stand['closure'], dryGramsAssumed: boolean): Stand => ({
    ...first,
    roomId,
    closure,
    openedAt: closure === 'OPEN' ? entry.at : null,
    dryGramsAssumed,
  });
  switch (entry.type) {
    case 'CAME_IN':
      return from(entry.detail.roomId, entry.detail.closure, entry.detail.waterAssumed);
    case 'PORTION_TAKEN':
    case 'COLUMN_PACKED':
      return from(entry.detail.into.roomId, entry.detail.into.closure, entry.detail.waterAssumed);
    case 'PLATES_TAKEN':
      return from(entry.detail.into.roomId, entry.detail.into.closure, false);
    default:
      throw new Error(`${entry.type} makes no container`);
  }
}

function barred(stand: Stand, entry: Entry, base: Base): Impossible | null {
  const finishedAt = stand.finishedAt;
  if (finishedAt && stand.finish !== 'emptied') {
    const why = `it was ${stand.finish === 'combined' ? 'emptied into another' : stand.finish} at ${words.time(finishedAt)}`;
    return { entry, about: 'at', why, expected: 'a time before that, or a correction of that event' };
  }
  if (entry.role === 'filled') return null;
  if (finishedAt && !afterEmptied.has(entry.type)) {
    const why = `nothing was left in it from ${words.time(finishedAt)} on`;
    return { entry, about: 'label', why, expected: 'a container that holds some; if some is there, count it first' };
  }
  const unfit = fits(entry.type, base.kind);
  return unfit && { entry, about: 'label', ...unfit };
}

function beforeOrigin(entry: Entry, origin: Entry | undefined): Impossible {
  const expected = origin ? `a time from ${words.time(origin.at)} on` : 'a container that came in or was filled';
  const made = origin?.role === 'filled' ? 'it was filled only' : 'it came in only';
  const why = origin ? `${made} at ${words.time(origin.at)} and did not exist yet` : 'it never came in';
  return { entry, about: 'at', why, expected };
}

function outcomeOf(stand: Stand, entry: Entry, base: Base): Outcome {
  if (isOrigin(entry)) {
    const why = 'it was there already';
    return { entry, about: 'at', why, expected: 'one beginning only; correct the first' };
  }
  const bar = barred(stand, entry, base);
  if (bar) return bar;
  if (entry.role === 'filled') return filledFurther(stand, entry);
  const effect = effects[entry.type] as (stand: Stand, entry: Entry, base: Base) => Outcome;
  return effect(stand, entry, base);
}

/** Told of each entry in order: how the container stood before it (null: not yet there) and after. */
export type Seen = (entry: Entry, before: Stand | null, after: Stand) => void;

/** How a container stands after everything in its timeline (what stands of it, in any order). */
export function fold(base: Base, entries: readonly Entry[], seen?: Seen): Folded {
  const ordered = [...entries].sort(byTime);
  const notes: Note[] = [];
  const [first, ...rest] = ordered;
  if (!first) throw new Error('a container without a timeline');
  if (!isOrigin(first)) return { stand: null, notes, impossible: beforeOrigin(first, ordered.find(isOrigin)) };
  let stand = standAtOrigin(first, base);
  seen?.(first, null, stand);
  for (const entry of rest) {
    const outcome = outcomeOf(stand, entry, base);
    if ('why' in outcome) return { stand: null, notes, impossible: outcome };
    const before = stand;
    stand = { ...before, ...(outcome satisfies Change).stand };
    seen?.(entry, before, stand);
    if (outcome.note) notes.push({ entryId: entry.id, text: outcome.note });
  }
  return { stand, notes, impossible: null };
}

/** How it stood at an instant, after what had happened until then; null before it was there. */
export function standAt(base: Base, entries: readonly Entry[], at: Date): Stand | null {
  const until = entries.filter((entry) => entry.at.getTime() <= at.getTime());
  return until.some(isOrigin) ? fold(base, until).stand : null;
}
