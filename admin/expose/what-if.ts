// What would be, if: what is asked of the API for each position of the sliders, and the answer in a sentence.
import { spokenDay, spokenTime } from '../say/time.ts';
import { aboutPercent } from '../say/water.ts';
import type { Clock, State } from '../say/state.ts';
import type { Closure } from '../say/words.ts';

export type Way = 'closed' | 'open' | 'dried' | 'moved';

/** Positions of the sliders; times are quarter hours from now, 0 is now. */
export interface Supposed {
  way: Way;
  quarters: number;
  isMixed: boolean;
  temperatureC: number;
  minutes: number;
  /** In a tray; null for plates. */
  depthMm: number | null;
  isVacuum: boolean;
  room: string;
}

export interface SupposedEvent {
  type: 'OPENED' | 'CLOSED' | 'MOVED' | 'MIXED' | 'DRIED';
  at?: string;
  closure?: Closure;
  room?: string;
  temperatureC?: number;
  minutes?: number;
  depthMm?: number;
  vacuum?: boolean;
}

export interface Asked {
  events: SupposedEvent[];
  /** When the answer is for. */
  report: [string];
  /** Where the drawn curve ends. */
  until: string;
}

const QUARTER_MS = 900_000;
const HOUR_MS = 3_600_000;
/** So far ahead a lid is thought of. */
export const mostQuarters: Record<Way, number> = { closed: 96, open: 192, dried: 0, moved: 96 };

/** The instant of a position: now, then each full quarter of an hour on the clock. */
export function instantAt(quarters: number, now: Date): Date {
  if (quarters === 0) return now;
  return new Date(Math.floor(now.getTime() / QUARTER_MS) * QUARTER_MS + quarters * QUARTER_MS);
}

interface Of {
  isOpen: boolean;
  usualClosure: Closure;
}

const lidOf = ({ usualClosure }: Of): Closure => (usualClosure === 'OPEN' ? 'WELL_CLOSED' : usualClosure);

export function askedOf(supposed: Supposed, of: Of, now: Date): Asked {
  const { way, quarters, isMixed, temperatureC, minutes, depthMm, isVacuum, room } = supposed;
  const at = way === 'dried' ? new Date(now.getTime() + minutes * 60_000) : instantAt(quarters, now);
  const when = at.toISOString();
  const shut: SupposedEvent = { type: 'CLOSED', at: when, closure: lidOf(of) };
  const events: Record<Way, SupposedEvent[]> = {
    closed: [...(isMixed ? [{ type: 'MIXED', at: when } as const] : []), shut],
    open: [...(of.isOpen ? [] : [{ type: 'OPENED', at: now.toISOString() } as const])],
    dried: [
      { type: 'DRIED', at: when, temperatureC, minutes, vacuum: isVacuum, ...(depthMm === null ? {} : { depthMm }) },
      shut,
    ],
    moved: [{ type: 'MOVED', at: when, room }],
  };
  const end = new Date(Math.max(at.getTime() + 12 * HOUR_MS, now.getTime() + 24 * HOUR_MS));
  return { events: events[way], report: [when], until: end.toISOString() };
}

/** "it is closed at 12:00 and mixed". */
export function supposedWords(supposed: Supposed, now: Date, zone: string): string {
  const { way, quarters, isMixed, temperatureC, minutes, depthMm, isVacuum, room } = supposed;
  const time = spokenTime(instantAt(quarters, now), now, zone);
  const then = quarters === 0 ? 'now' : /^\d/.test(time) ? `at ${time}` : time;
  switch (way) {
    case 'closed':
      return `it is closed ${then}${isMixed ? ' and mixed' : ''}`;
    case 'open':
      return quarters === 0 ? 'it is open now' : `it stands open until ${time}`;
    case 'dried': {
      const tray = depthMm === null ? '' : `, ${depthMm}\u00a0mm deep`;
      return `it is dried now at ${temperatureC}\u00a0°C${isVacuum ? ' under vacuum' : ''} for ${minutes}\u00a0min${tray}, and closed`;
    }
    case 'moved':
      return `it is moved to ${room} ${then}`;
  }
}

export interface Would {
  at: string;
  state: State;
  scoopWaterFraction: number;
  scoopLow: number;
  scoopHigh: number;
  hoursToLimit: number | null;
}

/** What would be to do, and until when. */
export function verdictWords({ at, state, hoursToLimit }: Would, { now, zone }: Clock): string {
  if (state === 'REDRY') return 'to be redried first';
  if (state === 'TOO_DRY') return 'too dry';
  if (state === 'UNKNOWN') return 'to be weighed first';
  if (hoursToLimit === null) return 'good to use for 90 days and more';
  const end = new Date(Date.parse(at) + hoursToLimit * HOUR_MS);
  const far = end.getTime() - now.getTime() > 48 * HOUR_MS;
  const until = far ? spokenDay(end, now, zone) : spokenTime(end, now, zone);
  return state === 'USE_SOON' ? `to be used by ${until}` : `good to use until ${until}`;
}

/** "If it is closed at 12:00 and mixed: about 2.0 % (1.6 to 2.5), good to use until Friday." */
export function wouldWords(supposed: Supposed, would: Would, clock: Clock, judged: string): string {
  const { scoopWaterFraction: value, scoopLow: low, scoopHigh: high } = would;
  const water = `${judged} ${aboutPercent({ value, low, high })}`;
  return `If ${supposedWords(supposed, clock.now, clock.zone)}: ${water}, ${verdictWords(would, clock)}.`;
}
