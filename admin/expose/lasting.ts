// How long it lasts as it stands, open, and shut, in one line.
import { spokenSpan } from '../say/time.ts';
import { sentence } from '../say/words.ts';
import { untilWords, type Clock } from '../say/state.ts';

export interface Hours {
  hoursToLimit: number | null;
  hoursToLimitOpen: number | null;
  hoursToLimitClosed: number | null;
}

function ending(hours: number | null, clock: Clock): string {
  if (hours === null) return '90 days and more';
  if (hours <= 0) return 'past it now';
  return hours < 1 ? `about ${spokenSpan(hours)}` : `${spokenSpan(hours)}, ${untilWords(hours, clock)}`;
}

export function lastingWords(of: Hours, clock: Clock): string {
  const ways: [string, number | null][] = [
    ['as it stands', of.hoursToLimit],
    ['open', of.hoursToLimitOpen],
    ['shut', of.hoursToLimitClosed],
  ];
  if (ways.every(([, hours]) => hours !== null && hours <= 0)) return 'Past the end of its band.';
  return `${sentence(ways.map(([how, hours]) => `${how}: ${ending(hours, clock)}`).join(' · '))}.`;
}
