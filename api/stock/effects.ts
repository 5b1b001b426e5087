// What each type of event does to how a container stands. Pure; refusals and notes are answers.
import type { Closure } from '../database/generated/sqlite/client.ts';
import type { DetailOf, EventType, Said } from './details.ts';
import { activated, aired, equilibrated, goneFromMs, spoiled, washed } from './prepared.ts';
import { grams, words } from './words.ts';
import { nothingGrams, type Base, type Entry, type Impossible, type Stand } from './stand.ts';

export interface Change {
  stand: Partial<Stand>;
  note?: string;
}

export type Outcome = Change | Impossible;

type EntryOf<T extends EventType> = Entry & Extract<Said, { type: T }>;
type Effect<T extends EventType> = (stand: Stand, entry: EntryOf<T>, base: Base) => Outcome;

const unchanged: Change = { stand: {} };

const shut = { openedAt: null } as const;

/** Sorbent or plates leave; what leaves must be there. */
function less(stand: Stand, entry: Entry, base: Base): Outcome {
  if (base.kind === 'PLATE_BOX') {
    const there = stand.plates ?? 0;
    const wanted = entry.plates ?? 0;
    if (wanted > there) {
      const expected = `at most ${words.plates(there)}; if more is there, count it first`;
      return { entry, about: 'plates', why: `only ${words.plates(there)} were there`, expected };
    }
    return remaining(stand, entry, (there - wanted) * (base.dryGramsPerPlate ?? 0), there - wanted);
  }
  const wanted = entry.dryGrams ?? 0;
  if (wanted > stand.dryGrams + nothingGrams) {
    const expected = `at most ${grams(stand.dryGrams)} (dry); if more is there, count it first`;
    return { entry, about: 'grams', why: `only ${grams(stand.dryGrams)} (dry) were there`, expected };
  }
  return remaining(stand, entry, stand.dryGrams - wanted, null);
}

function remaining(stand: Stand, entry: Entry, left: number, plates: number | null): Change {
  const dryGrams = left > nothingGrams ? left : 0;
  const emptied = dryGrams === 0 && stand.finishedAt === null;
  return { stand: { dryGrams, plates, ...(emptied && { finishedAt: entry.at, finish: 'emptied' as const }) } };
}

/** As `less`; what was shut is left open, or shut again, but a seal is broken for good. */
function taken(stand: Stand, entry: Entry, base: Base): Outcome {
  const outcome = less(stand, entry, base);
  if ('why' in outcome || stand.closure === 'OPEN') return outcome;
  const leftOpen = 'leftOpen' in entry.detail && entry.detail.leftOpen;
  const lid = leftOpen
    ? ({ closure: 'OPEN', openedAt: entry.at } as const)
    : { closure: closureAfterScoop(stand.closure, base.usualClosure) };
  return { ...outcome, stand: { ...outcome.stand, ...lid } };
}

/** The closure after a short opening: the one it had, or its usual one where a seal was broken. */
export function closureAfterScoop(before: Closure, usual: Closure): Closure {
  if (before !== 'SEALED') return before;
  return usual === 'SEALED' || usual === 'OPEN' ? 'WELL_CLOSED' : usual;
}

const finished = (entry: Entry, finish: Stand['finish'], plates: number | null): Change => ({
  stand: { dryGrams: 0, plates: plates === null ? null : 0, finishedAt: entry.at, finish },
});

function counted(stand: Stand, entry: EntryOf<'COUNTED'>, base: Base): Outcome {
  const { plates, waterAssumed } = entry.detail;
  const dryGrams = base.kind === 'PLATE_BOX' ? (plates ?? 0) * (base.dryGramsPerPlate ?? 0) : entry.detail.dryGrams;
  const empty = dryGrams <= nothingGrams;
  const dryGramsAssumed = base.kind === 'PLATE_BOX' ? false : waterAssumed;
  const finish = empty ? { finishedAt: entry.at, finish: 'emptied' as const } : { finishedAt: null, finish: null };
  const note =
    base.kind === 'PLATE_BOX'
      ? words.plateDifference(stand.plates ?? 0, plates ?? 0)
      : words.gramDifference(stand.dryGrams, dryGrams);
  return { stand: { dryGrams, plates, dryGramsAssumed, ...finish }, ...(note && { note }) };
}

const metSolvent = (stand: Stand, entry: Entry): Partial<Stand> => ({
  touchedSolventAt: stand.touchedSolventAt ?? entry.at,
});

function closedWith(stand: Stand, closure: DetailOf<'CLOSED'>['closure']): Outcome {
  if (stand.closure === 'OPEN') return { stand: { closure, ...shut } };
  const same = stand.closure === closure;
  const note = same ? 'it was closed already' : `it was closed already (${words.closure(stand.closure)})`;
  return { stand: { closure, ...shut }, note };
}

/** Why an oven should not have seen it, or null. */
export function ovenCaution(
  stand: Pick<Stand, 'wettedAt' | 'touchedSolventAt'>,
  base: Pick<Base, 'kind'>,
): string | null {
  if (base.kind === 'PLATE_BOX') {
    return stand.wettedAt
      ? 'the plates were wet with solvent: solvent-wet plates never go into a hot or vacuum oven'
      : null;
  }
  if (!stand.touchedSolventAt) return null;
  return 'it had touched solvent or sample: such sorbent never goes to the oven';
}

/** Solvent-wet plates go into no oven and no jar: refused where that was said to be so. */
function wetPlates(stand: Stand, entry: EntryOf<'DRIED' | 'EQUILIBRATED'>, base: Base): Impossible | null {
  if (base.kind !== 'PLATE_BOX' || !stand.wettedAt || !entry.detail.noSolvent) return null;
  const why = `the plates are wet with solvent since ${words.time(stand.wettedAt)}: solvent-wet plates never go into a hot or vacuum oven`;
  return { entry, about: 'label', why, expected: 'record the solvent as gone first' };
}

/** Taken out of the tank, the oven or the jar, they stand somewhere. */
function standingAfter(entry: EntryOf<'DRIED' | 'EQUILIBRATED' | 'PRE_WASHED'>): Partial<Stand> {
  const { after } = entry.detail;
  if (!after) return {};
  return { ...after, openedAt: after.closure === 'OPEN' ? entry.at : null };
}

function solventGone(stand: Stand, entry: EntryOf<'SOLVENT_GONE'>): Outcome {
  const gone = { wettedAt: null, hoodAt: null, prepared: aired(stand.prepared, entry, entry.detail) };
  if (!stand.wettedAt) return { stand: {}, note: 'no solvent was noted on it' };
  const { leastHours } = entry.detail;
  if (leastHours === undefined) return { stand: gone };
  const fromMs = goneFromMs(stand, leastHours);
  if (entry.at.getTime() >= fromMs) return { stand: gone };
  const hours = (entry.at.getTime() - fromMs) / 3_600_000 + leastHours;
  const why = `${Math.max(0, Math.floor(hours * 10) / 10)} h in the hood, and ${leastHours} h are the lab’s least`;
  return { entry, about: 'at', why, expected: `not before ${words.time(new Date(fromMs))}` };
}

const noted = (stand: Partial<Stand>, note: string | null): Change => (note ? { stand, note } : { stand });

/** What happens to the container an event is about. */
export const effects: { [T in EventType]: Effect<T> } = {
  CAME_IN: () => unchanged,
  OPENED: (stand, entry) =>
    stand.closure === 'OPEN'
      ? { stand: {}, note: `it was open already, since ${words.time(stand.openedAt ?? stand.cameInAt)}` }
      : { stand: { closure: 'OPEN', openedAt: entry.at } },
  CLOSED: (stand, entry) => (entry.detail.closure === 'OPEN' ? unchanged : closedWith(stand, entry.detail.closure)),
  MOVED: (stand, entry) =>
    noted({ roomId: entry.detail.roomId }, stand.roomId === entry.detail.roomId ? 'it was there already' : null),
  PORTION_TAKEN: (stand, entry, base) => {
    const outcome = taken(stand, entry, base);
    if ('why' in outcome || entry.detail.scooping === null) return outcome;
    return { ...outcome, stand: { ...outcome.stand, scooping: entry.detail.scooping } };
  },
  PLATES_TAKEN: taken,
  COLUMN_PACKED: taken,
  MIXED: () => unchanged,
  DRIED: (stand, entry, base) =>
    wetPlates(stand, entry, base) ??
    noted(
      {
        wettedAt: null,
        ...(base.kind === 'PLATE_BOX' && { hoodAt: null, prepared: activated(stand.prepared, entry, entry.detail) }),
        ...standingAfter(entry),
      },
      ovenCaution(stand, base),
    ),
  EQUILIBRATED: (stand, entry, base) =>
    wetPlates(stand, entry, base) ?? {
      stand: {
        ...(base.kind === 'PLATE_BOX' && { prepared: equilibrated(stand.prepared, entry, entry.detail) }),
        ...standingAfter(entry),
      },
    },
  WEIGHED: (stand) =>
    noted(
      {},
      stand.dryGramsAssumed
        ? 'its dry grams rest on an assumed starting water still: count it to put them right'
        : null,
    ),
  COUNTED: counted,
  TOUCHED_SOLVENT: (stand, entry, base) => {
    const wetted = base.kind === 'COLUMN' || base.kind === 'PLATE_BOX' ? { wettedAt: stand.wettedAt ?? entry.at } : {};
    const plates = base.kind === 'PLATE_BOX' ? { prepared: spoiled() } : {};
    return { stand: { ...metSolvent(stand, entry), ...wetted, ...plates } };
  },
  HABIT_SET: (_stand, { detail }) => ({
    stand: {
      ...(detail.habit !== undefined && { habit: detail.habit }),
      ...(detail.scooping !== undefined && { scooping: detail.scooping }),
    },
  }),
  COMBINED: (stand, entry, base) => {
    const outcome = less(stand, entry, base);
    return 'why' in outcome ? outcome : finished(entry, 'combined', stand.plates);
  },
  LOST: less,
  PRE_WASHED: (stand, entry) => ({
    stand: {
      ...metSolvent(stand, entry),
      wettedAt: entry.at,
      hoodAt: new Date(entry.at.getTime() + (entry.detail.tankMinutes ?? 0) * 60_000),
      prepared: washed(entry, entry.detail),
      ...standingAfter(entry),
    },
  }),
  SOLVENT_GONE: solventGone,
  CONDITIONED: (stand, entry) => ({ stand: { ...metSolvent(stand, entry), wettedAt: stand.wettedAt ?? entry.at } }),
  INTERRUPTED: () => unchanged,
  SPENT_ON_CHECK: taken,
  USED_UP: (stand, entry) => finished(entry, 'used up', stand.plates),
  DISCARDED: (stand, entry, base) =>
    entry.detail.all ? finished(entry, 'discarded', stand.plates) : less(stand, entry, base),
  // Where it is nobody knows, so the book keeps it as it was; only what is found or told changes it.
  NOT_FOUND: () => unchanged,
  CORRECTED: () => unchanged,
};

/** What happens to a container that is there already and is filled further. */
export function filledFurther(stand: Stand, entry: Entry): Change {
  const assumed = entry.type === 'COMBINED' && entry.detail.waterAssumed;
  const back = stand.finish === 'emptied' ? { finishedAt: null, finish: null } : {};
  const dryGrams = stand.dryGrams + (entry.dryGrams ?? 0);
  const met = entry.carried?.touchedSolventAt;
  const touchedSolventAt = stand.touchedSolventAt ?? (met ? entry.at : null);
  return { stand: { dryGrams, dryGramsAssumed: stand.dryGramsAssumed || assumed, touchedSolventAt, ...back } };
}
