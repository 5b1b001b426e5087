// What the day asks for, most urgent first; what is good to use goes without saying.
import { sentence } from '../say/words.ts';
import type { State } from '../say/state.ts';

interface Count {
  totalCount: number;
}
export interface DayCounts {
  redry: Count;
  useSoon: Count;
  weighFirst: Count;
  tooDry: Count;
}

export function dayParts(day: DayCounts): { state: State; words: string }[] {
  const parts: { state: State; n: number; words: string }[] = [
    { state: 'REDRY', n: day.redry.totalCount, words: 'to redry first' },
    { state: 'USE_SOON', n: day.useSoon.totalCount, words: 'to use soon' },
    { state: 'UNKNOWN', n: day.weighFirst.totalCount, words: 'to weigh first' },
    { state: 'TOO_DRY', n: day.tooDry.totalCount, words: 'too dry' },
  ];
  return parts
    .filter(({ n }) => n > 0)
    .map(({ state, n, words }, i) => ({ state, words: i === 0 ? sentence(`${n} ${words}`) : `${n} ${words}` }));
}
