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

/**
 * The plates in phrases: "18 plates ready", "until Thursday 14:00", or by how they are kept, ": 12 dry until Thursday 14:00,
 * 6 equilibrated until 16:00"; null of a lab that has none.
 */
export function plateParts(day: PlateFigures, clock: Clock): PlateParts | null {
  const { platesReady, platesReadyUntil, platesToRedry, platesWet = 0, platesByRegime = [] } = day;
  if (platesReady + platesToRedry + platesWet === 0) return null;
  const until = (at: string | null): string => {
    const hours = at === null ? null : (Date.parse(at) - clock.now.getTime()) / 3_600_000;
    if (hours === null) return '';
    return hours <= 0 ? ' until now' : ` ${untilWords(hours, clock)}`;
  };
  const prepared = platesByRegime.some(({ regime }) => regime !== null);
  const kept = platesByRegime.map((one) => `${one.plates} ${regimeWord[one.regime ?? 'NONE']}${until(one.until)}`);
  return {
    ready: platesReady === 0 ? 'No plate ready' : `${count(platesReady, 'plate')} ready`,
    until: platesReady === 0 ? '' : prepared ? `: ${kept.join(', ')}` : until(platesReadyUntil),
    redry: platesToRedry === 0 ? '' : `${platesToRedry} to redry`,
    wet: platesWet === 0 ? '' : `${platesWet} wet with solvent`,
  };
}

type PlateFigures = Pick<Day, 'platesReady' | 'platesReadyUntil' | 'platesToRedry'> &
  Partial<Pick<Day, 'platesWet' | 'platesByRegime'>>;

interface PlateParts {
  ready: string;
  until: string;
  redry: string;
  wet: string;
}

/** How ready plates are kept. */
const regimeWord = { DRY_UNTIL_SPOTTED: 'dry', EQUILIBRATED: 'equilibrated', NONE: 'as they came' } as const;
