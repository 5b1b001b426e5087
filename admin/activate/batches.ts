// Batches in groups by what to do with them, and each in words.
import { spokenSpan } from '../say/time.ts';
import type { Clock } from '../say/state.ts';
import type { Batch, Prepared } from './questions.ts';
import { time } from './time.ts';

export interface Group {
  name: string;
  batches: readonly Batch[];
}

const groupNames = ['Ready', 'To activate', 'Drying in the hood', 'In the tank', 'Past their band'] as const;

export function groupOf({ state, ready }: Pick<Batch, 'state' | 'ready'>): (typeof groupNames)[number] {
  if (ready) return 'Ready';
  if (state === 'WET') return 'In the tank';
  if (state === 'DRYING') return 'Drying in the hood';
  return state === 'DRY' ? 'To activate' : 'Past their band';
}

/** What is ready first, then what waits for somebody; groups without any are left out. */
export const groupsOf = (batches: readonly Batch[]): Group[] =>
  groupNames
    .map((name) => ({ name, batches: batches.filter((batch) => groupOf(batch) === name) }))
    .filter((group) => group.batches.length > 0);

/** What one wants to know of it, without a full stop. */
export function answerOf(batch: Prepared, clock: Clock): string {
  const { state, regimeWords, ready, whyNot, goodUntil, inHoodAt, solventGoneFrom, preWash } = batch;
  switch (state) {
    case 'WET':
      return inHoodAt ? `in the tank until ${time(inHoodAt, clock)}` : 'wet with solvent';
    case 'DRYING': {
      const from = solventGoneFrom && Date.parse(solventGoneFrom) > clock.now.getTime() ? solventGoneFrom : null;
      return from
        ? `drying; solvent gone from ${time(from, clock)} at the earliest`
        : 'dried in the hood for its least hours';
    }
    case 'DRY':
      return preWash ? 'pre-washed and dry of solvent' : 'dry of solvent';
    case 'ACTIVATED':
    case 'EQUILIBRATED': {
      if (!ready) return whyNot ?? 'not ready';
      const until = goodUntil ? `, good until ${time(goodUntil, clock)}` : ', good as they stand';
      return `${regimeWords ?? ''}${until}`;
    }
  }
}

/** "5 min in instrument bay, 4 min in wet bench"; empty where nothing ends. */
export function withinWords(within: Prepared['useWithin']): string {
  const ends = within.flatMap(({ room, minutes }) => (minutes === null || minutes === 0 ? [] : [{ room, minutes }]));
  const long = (minutes: number) => (minutes < 1 ? 'less than a minute' : spokenSpan(Math.floor(minutes) / 60));
  return ends.map(({ room, minutes }) => `${long(minutes)} in ${room.name}`).join(', ');
}

/** The next step is due: nobody has to wait for it. */
export const isDue = ({ state, solventGoneFrom }: Prepared, now: Date): boolean =>
  state === 'DRY' || (solventGoneFrom !== null && Date.parse(solventGoneFrom) <= now.getTime());
