// What the day asks for, most urgent first; what is good to use goes without saying.
import { untilWords, type Clock, type State } from '../say/state.ts';
import { count } from '../say/words.ts';
import type { Pulse } from './questions.ts';

type Day = Pulse['day'];

export function dayParts(
  day: Pick<Day, 'redry' | 'useSoon' | 'weighFirst' | 'tooDry'>,
): { state: State; words: string }[] {
  const parts: { state: State; n: number; words: string }[] = [
    { state: 'REDRY', n: day.redry, words: 'to redry first' },
    { state: 'USE_SOON', n: day.useSoon, words: 'to use soon' },
    { state: 'UNKNOWN', n: day.weighFirst, words: 'to weigh first' },
    { state: 'TOO_DRY', n: day.tooDry, words: 'too dry' },
  ];
  return parts.filter(({ n }) => n > 0).map(({ state, n, words }) => ({ state, words: `${n} ${words}` }));
}

/** The plates in two phrases: "18 plates ready", "until Thursday 14:00"; null of a lab that has none. */
export function plateParts(
  { platesReady, platesReadyUntil, platesToRedry }: Pick<Day, 'platesReady' | 'platesReadyUntil' | 'platesToRedry'>,
  clock: Clock,
): { ready: string; until: string; redry: string } | null {
  if (platesReady + platesToRedry === 0) return null;
  const hours = platesReadyUntil === null ? null : (Date.parse(platesReadyUntil) - clock.now.getTime()) / 3_600_000;
  return {
    ready: platesReady === 0 ? 'No plate ready' : `${count(platesReady, 'plate')} ready`,
    until: platesReady === 0 || hours === null ? '' : hours <= 0 ? ' until now' : ` ${untilWords(hours, clock)}`,
    redry: platesToRedry === 0 ? '' : `${platesToRedry} to redry`,
  };
}
