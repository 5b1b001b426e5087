// Times as a person says them, in the lab's time zone: "08:20", "yesterday 16:00", "Friday 09:00".

/** The calendar and the clock of an instant in a zone. */
interface Clock {
  year: number;
  month: number;
  day: number;
  hour: number;
  minute: number;
}

const clocks = new Map<string, Intl.DateTimeFormat>();

function clockFormat(zone: string): Intl.DateTimeFormat {
  let format = clocks.get(zone);
  if (!format) {
    const numeric = { year: 'numeric', month: 'numeric', day: 'numeric', hour: 'numeric', minute: 'numeric' } as const;
    format = new Intl.DateTimeFormat('en-GB', { timeZone: zone, hourCycle: 'h23', ...numeric });
    clocks.set(zone, format);
  }
  return format;
}

function clockOf(at: Date, zone: string): Clock {
  const part = (type: string): number =>
    Number(
      clockFormat(zone)
        .formatToParts(at)
        .find((piece) => piece.type === type)?.value ?? 0,
    );
  return { year: part('year'), month: part('month'), day: part('day'), hour: part('hour'), minute: part('minute') };
}

const two = (n: number): string => String(n).padStart(2, '0');
const dayNumber = (clock: Clock): number => Math.round(Date.UTC(clock.year, clock.month - 1, clock.day) / 86_400_000);

function dayName(at: Date, zone: string, options: Intl.DateTimeFormatOptions): string {
  return new Intl.DateTimeFormat('en-GB', { timeZone: zone, ...options }).format(at);
}

/** The day alone: "today", "yesterday", "tomorrow", a weekday within six days, else a date. */
export function spokenDay(at: Date, now: Date, zone: string): string {
  const then = clockOf(at, zone);
  const here = clockOf(now, zone);
  const days = dayNumber(then) - dayNumber(here);
  if (days === 0) return 'today';
  if (days === -1) return 'yesterday';
  if (days === 1) return 'tomorrow';
  if (Math.abs(days) < 7) return dayName(at, zone, { weekday: 'long' });
  return dayName(at, zone, { day: 'numeric', month: 'long', ...(then.year === here.year ? {} : { year: 'numeric' }) });
}

/** Day and clock; today is said by the clock alone. */
export function spokenTime(at: Date, now: Date, zone: string): string {
  const { hour, minute } = clockOf(at, zone);
  const clock = `${two(hour)}:${two(minute)}`;
  const day = spokenDay(at, now, zone);
  return day === 'today' ? clock : `${day} ${clock}`;
}

/** Everything, for hovering and for print: "Wednesday 25 November 2026, 16:00 (Europe/Helsinki)". */
export function fullTime(at: Date, zone: string): string {
  const { hour, minute } = clockOf(at, zone);
  const day = dayName(at, zone, { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' }).replace(',', '');
  return `${day}, ${two(hour)}:${two(minute)} (${zone})`;
}

const counted = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** How long, in the largest unit that still tells something: "4 min", "19 h", "3 days". */
export function spokenSpan(hours: number): string {
  const minutes = Math.round(hours * 60);
  if (minutes < 1) return 'less than a minute';
  if (minutes < 90) return `${minutes} min`;
  if (hours < 47.5) return `${Math.round(hours)} h`;
  return counted(Math.round(hours / 24), 'day', 'days');
}

/** What a field of date and time holds for an instant: "2026-11-25T16:00" on the lab's clock. */
export function labClock(at: Date, zone: string): string {
  const { year, month, day, hour, minute } = clockOf(at, zone);
  return `${year}-${two(month)}-${two(day)}T${two(hour)}:${two(minute)}`;
}

/**
 * The instant at which the lab's clock shows such a field; null when it is not a time.
 * An hour that comes twice in autumn is its first; one that is skipped in spring is read an hour later.
 */
export function instantOf(field: string, zone: string): Date | null {
  const wanted = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}/.test(field) ? Date.parse(`${field.slice(0, 16)}Z`) : Number.NaN;
  if (Number.isNaN(wanted)) return null;
  const shownAt = (guess: number): number => Date.parse(`${labClock(new Date(guess), zone)}Z`);
  // Zones lie within 15 h of UTC and change by less than a day: both sides of a change are tried, the earlier first.
  const offsets = [-1, 1].map((side) => shownAt(wanted + side * 86_400_000) - (wanted + side * 86_400_000));
  const candidates = offsets.map((offset) => wanted - offset).sort((a, b) => a - b);
  const right = candidates.find((candidate) => shownAt(candidate) === wanted) ?? candidates[1];
  return right === undefined ? null : new Date(right);
}
