/** Wall clocks to UTC, with the hour that a spring day skips and the hour that an autumn day repeats. */
import { IANAZone, Info } from 'luxon';
import { offsetOf } from './stamp.ts';

const MINUTE_MS = 60_000;
const HOUR_MS = 3_600_000;
const DAY_MS = 86_400_000;

export type Zone = {
  name: string;
  /** Minutes east of UTC, for a zone without daylight-saving time. */ fixed: number | null;
};

export const UTC: Zone = { name: 'UTC', fixed: 0 };

/** The zone that a text names: `Europe/Berlin`, `UTC+2`, `+02:00`, `CET`; null when it is none. */
export function zoneNamed(text: string): Zone | null {
  const plain = text.trim();
  const fixed = offsetOf(plain);
  if (fixed !== null) return fixedZone(fixed);
  return /^[A-Za-z][\w+-]*(\/[\w+-]+){1,2}$/.test(plain) && Info.isValidIANAZone(plain)
    ? { name: plain, fixed: null }
    : null;
}

export function fixedZone(minutes: number): Zone {
  if (minutes === 0) return UTC;
  const size = Math.abs(minutes);
  const two = (part: number): string => String(part).padStart(2, '0');
  return { name: `UTC${minutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`, fixed: minutes };
}

/** `once`: the instant. `twice`: the wall clock showed this time at both. `never`: it was skipped. */
export type Instant = { once: number } | { twice: readonly [number, number] } | { never: true };

/** What a wall clock of the zone means, given as milliseconds as if the clock were UTC. Remembers a day's offsets. */
export function wallClock(zone: Zone): (wallMs: number) => Instant {
  if (zone.fixed !== null) {
    const shift = zone.fixed * MINUTE_MS;
    return (wallMs) => ({ once: wallMs - shift });
  }
  const iana = IANAZone.create(zone.name);
  const days = new Map<number, Day>();
  return (wallMs) => {
    const index = Math.floor(wallMs / DAY_MS);
    let day = days.get(index);
    if (day === undefined) days.set(index, (day = dayOf(iana, index * DAY_MS)));
    return instantIn(day, wallMs);
  };
}

/** Offsets [ms] before and after the change `at` (UTC); a day without a change has the same twice. */
type Day = { before: number; after: number; at: number };

/** Offsets reach from -12 to +14 h, so the UTC instants of a wall-clock day lie in this window; two changes within it do not happen. */
function dayOf(iana: IANAZone, midnight: number): Day {
  let [low, high] = [midnight - 14 * HOUR_MS, midnight + DAY_MS + 12 * HOUR_MS];
  const offset = (at: number): number => iana.offset(at) * MINUTE_MS;
  const [before, after] = [offset(low), offset(high)];
  if (before === after) return { before, after, at: low };
  while (high - low > 1000) {
    const middle = Math.floor((low + high) / 2000) * 1000;
    if (middle <= low) break;
    if (offset(middle) === before) low = middle;
    else high = middle;
  }
  return { before, after, at: high };
}

function instantIn({ before, after, at }: Day, wallMs: number): Instant {
  const [early, late] = [wallMs - before, wallMs - after];
  if (before === after) return { once: early };
  if (early < at && late >= at) return { twice: [early, late] };
  if (early < at) return { once: early };
  return late >= at ? { once: late } : { never: true };
}

/** The zone's offset without daylight-saving time in the year of an instant: what a clock shows that is never changed. */
export function standardZone(zone: Zone, atMs: number): Zone {
  if (zone.fixed !== null) return zone;
  const year = new Date(atMs).getUTCFullYear();
  const iana = IANAZone.create(zone.name);
  return fixedZone(Math.min(iana.offset(Date.UTC(year, 0, 1)), iana.offset(Date.UTC(year, 6, 1))));
}
