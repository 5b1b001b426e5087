// When somebody is there to load an oven, on the lab's own clock, as instants; and when nothing may be in it.
import { instantOf, labClock } from '../say/time.ts';
import type { Oven } from './questions.ts';

/** In milliseconds since 1970. */
export interface Span {
  fromMs: number;
  toMs: number;
}

const dayMs = 86_400_000;

/** The day so many days on, as `2026-11-26`. */
export const dayAfter = (day: string, days: number): string =>
  new Date(Date.parse(`${day}T12:00Z`) + days * dayMs).toISOString().slice(0, 10);

/** Monday 1 to Sunday 7. */
export const weekdayOf = (day: string): number => ((new Date(`${day}T12:00Z`).getUTCDay() + 6) % 7) + 1;

export const dayOf = (at: Date, zone: string): string => labClock(at, zone).slice(0, 10);

/** The instant of a clock time on a day; `24:00` is the next day's beginning. */
export function instantMs(day: string, clock: string, zone: string): number {
  const at = clock === '24:00' ? instantOf(`${dayAfter(day, 1)}T00:00`, zone) : instantOf(`${day}T${clock}`, zone);
  return at?.getTime() ?? Number.NaN;
}

/** Hours of a day in which somebody is there, those that reach over from the day before among them. */
export function openingsOn(hours: Oven['hours'], day: string, zone: string): Span[] {
  const spans = [dayAfter(day, -1), day].flatMap((begins) =>
    hours
      .filter(({ days }) => days.includes(weekdayOf(begins)))
      .map(({ from, to }) => ({
        fromMs: instantMs(begins, from, zone),
        toMs: instantMs(to <= from ? dayAfter(begins, 1) : begins, to, zone),
      })),
  );
  return within(spans, { fromMs: instantMs(day, '00:00', zone), toMs: instantMs(day, '24:00', zone) });
}

/** The parts of some spans that lie within one, in order. */
export const within = (spans: readonly Span[], { fromMs, toMs }: Span): Span[] =>
  spans
    .map((span) => ({ fromMs: Math.max(span.fromMs, fromMs), toMs: Math.min(span.toMs, toMs) }))
    .filter((span) => span.toMs > span.fromMs)
    .sort((a, b) => a.fromMs - b.fromMs);

/** What lies between some spans, in order. */
export function between(spans: readonly Span[], whole: Span): Span[] {
  const gaps: Span[] = [];
  let at = whole.fromMs;
  for (const { fromMs, toMs } of within(spans, whole)) {
    if (fromMs > at) gaps.push({ fromMs: at, toMs: fromMs });
    at = Math.max(at, toMs);
  }
  if (at < whole.toMs) gaps.push({ fromMs: at, toMs: whole.toMs });
  return gaps;
}

/** Out of order, or baked out; without an end it goes on. */
export const outages = ({ care }: Pick<Oven, 'care'>, whole: Span): Span[] =>
  within(
    care
      .filter(({ kind, until }) => kind === 'OUT_OF_ORDER' || (kind === 'BAKE_OUT' && until !== null))
      .map(({ at, until }) => ({ fromMs: Date.parse(at), toMs: until === null ? Infinity : Date.parse(until) })),
    whole,
  );
