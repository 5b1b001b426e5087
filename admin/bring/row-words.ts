// A line of a list as it will be booked, in words.
import { spokenDay } from '../say/time.ts';
import { grams, plates } from '../say/water.ts';
import { closureWord, count } from '../say/words.ts';
import type { Clock } from '../say/state.ts';
import type { Row } from './questions.ts';

/** "2 × 500 g in jar 1 L", "box of 25 plates". */
export function packWords({ count: alike, grams: mass, plates: number, vessel }: Row): string {
  const what =
    mass === null ? `box of ${plates(number ?? 0)}` : `${grams(mass)}${vessel === null ? '' : ` in ${vessel}`}`;
  return alike === 1 ? what : `${alike} × ${what}`;
}

/** "came in on 12 January, opened on 2 February, well closed since". */
export function pastWords({ receivedAt, openedAt, closure }: Row, { now, zone }: Clock): string {
  const day = (at: string): string => spokenDay(new Date(at), now, zone).replace(/^(\d)/, 'on $1');
  const came = receivedAt === null ? (openedAt === null ? 'came in now' : '') : `came in ${day(receivedAt)}`;
  const opened =
    openedAt === null
      ? ''
      : closure === 'OPEN'
        ? `open since ${day(openedAt).replace(/^on /, '')}`
        : `opened ${day(openedAt)}`;
  const shut =
    openedAt === null
      ? closureWord[closure ?? 'SEALED']
      : closure === 'OPEN'
        ? ''
        : closureWord[closure ?? 'WELL_CLOSED'];
  return [came, opened, shut].filter(Boolean).join(', ');
}

/** "42 containers of 40 lines". */
export const bringsWords = (containers: number, lines: number): string =>
  containers === lines
    ? count(containers, 'container')
    : `${count(containers, 'container')} of ${count(lines, 'line')}`;
