/** What may be wrong with the answers themselves, before any file is read; and the start of a file without times. */
import { dividedStamp } from './cell.ts';
import type { Answers } from './file.ts';
import { midnightOf } from './order.ts';
import { dateOf } from './stamp.ts';
import { wallClock, zoneNamed } from './zone.ts';
import type { Zone } from './zone.ts';

export type AnswerRefused = { path: string; message: string; expected: string };

const ZONE = 'an IANA name such as Europe/Berlin, or an offset such as UTC+02:00';

/** Null when all answers can be used. */
export function answerRefused(answers: Answers): AnswerRefused | null {
  for (const path of ['labZone', 'zone'] as const) {
    const zone = answers[path];
    if (zone !== undefined && zoneNamed(zone) === null)
      return { path, message: `unknown zone: ${zone}, expected ${ZONE}`, expected: ZONE };
  }
  const { start, everySeconds } = answers;
  const time = 'a time such as 2026-03-02T08:00';
  if (start !== undefined && Number.isNaN(startMs(start, { name: 'UTC', fixed: 0 })))
    return { path: 'start', message: `invalid start: ${start}, expected ${time}`, expected: time };
  const seconds = 'a number of seconds from 1 to 86400';
  if (everySeconds !== undefined && !(everySeconds >= 1 && everySeconds <= 86_400))
    return { path: 'every', message: `invalid every: ${everySeconds}, expected ${seconds}`, expected: seconds };
  if (start !== undefined && everySeconds === undefined)
    return { path: 'every', message: `missing every, expected ${seconds} beside start`, expected: seconds };
  if (start === undefined && everySeconds !== undefined)
    return { path: 'start', message: `missing start, expected ${time} beside every`, expected: time };
  return null;
}

/** UTC milliseconds of a written start; NaN when it is none. Its own offset counts before the zone. */
export function startMs(text: string, zone: Zone): number {
  const { date, clock } = dividedStamp(text.trim());
  const written = dateOf(date);
  if (written === null) return NaN;
  const wall = midnightOf(written, 'day-first') + (clock?.dayMs ?? 0);
  if (clock?.offsetMinutes != null) return wall - clock.offsetMinutes * 60_000;
  if (Number.isNaN(wall)) return NaN;
  const instant = wallClock(zone)(wall);
  return 'once' in instant ? instant.once : 'twice' in instant ? instant.twice[0] : NaN;
}
