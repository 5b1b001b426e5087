// Where things stand in the picture of ovens over time: a day's window, the parts of a run in it, and times a drag points to.
import type { Oven, Run } from './questions.ts';
import { between, dayAfter, dayOf, instantMs, openingsOn, outages, within, type Span } from './openings.ts';

const minuteMs = 60_000;
export const stepMs = 15 * minuteMs;

/** Hours of the lab's clock that every day of the picture shows. */
export interface Hours {
  from: number;
  to: number;
}

const usual: Hours = { from: 6, to: 20 };
const two = (value: number): string => String(value).padStart(2, '0');

export const windowOf = (day: string, { from, to }: Hours, zone: string): Span => ({
  fromMs: instantMs(day, `${two(from)}:00`, zone),
  toMs: instantMs(day, `${two(to)}:00`, zone),
});

/** An hour around the hours when somebody is there, and all that begins or ends in these days. */
export function hoursShown(ovens: readonly Oven[], runs: readonly Run[], days: readonly string[], zone: string): Hours {
  const hour = (ms: number, day: string) => (ms - instantMs(day, '00:00', zone)) / (60 * minuteMs);
  const edges = days.flatMap((day) => {
    const open = ovens.flatMap(({ hours }) => openingsOn(hours, day, zone));
    const ends = runs.flatMap((run) => partsOf(run).flatMap(({ fromMs, toMs }) => [fromMs, toMs]));
    const whole = { fromMs: instantMs(day, '00:00', zone), toMs: instantMs(day, '24:00', zone) };
    const mine = ends.filter((ms) => ms > whole.fromMs && ms < whole.toMs);
    return [
      ...open.flatMap(({ fromMs, toMs }) => [hour(fromMs, day) - 1, hour(toMs, day) + 1]),
      ...mine.map((ms) => hour(ms, day)),
    ];
  });
  if (edges.length === 0) return usual;
  return {
    from: Math.max(0, Math.floor(Math.min(...edges) + 1e-9)),
    to: Math.min(24, Math.ceil(Math.max(...edges) - 1e-9)),
  };
}

export type PartName = 'set' | 'in' | 'cool';
export interface Part extends Span {
  name: PartName;
}

/** Setting the oven, the batch, and the load cooling beside it. What ended long ago shows no setting. */
export function partsOf(
  run: Pick<Run, 'start' | 'end' | 'setupMinutes' | 'coolMinutes' | 'cooledAt' | 'state'>,
): Part[] {
  const [fromMs, toMs] = [Date.parse(run.start), Date.parse(run.end)];
  const set = { name: 'set' as const, fromMs: fromMs - run.setupMinutes * minuteMs, toMs: fromMs };
  const cooled = run.cooledAt === null ? toMs + run.coolMinutes * minuteMs : Date.parse(run.cooledAt);
  const cool = { name: 'cool' as const, fromMs: toMs, toMs: cooled };
  const parts: Part[] = [set, { name: 'in', fromMs, toMs }, ...(run.state === 'INTERRUPTED' ? [] : [cool])];
  return parts.filter((part) => part.toMs > part.fromMs);
}

/** A place in a window in percent of its width. */
export interface Placed {
  left: number;
  width: number;
}

export function placed({ fromMs, toMs }: Span, window: Span): Placed {
  const whole = window.toMs - window.fromMs;
  return { left: (100 * (fromMs - window.fromMs)) / whole, width: (100 * (toMs - fromMs)) / whole };
}

export interface PlacedPart extends Placed {
  name: PartName;
  /** It goes on outside the window. */
  before: boolean;
  after: boolean;
}

/** The parts of a run that a window shows, cut at its edges. */
export const shownParts = (run: Parameters<typeof partsOf>[0], window: Span): PlacedPart[] =>
  partsOf(run).flatMap(({ name, ...part }) =>
    within([part], window).map((cut) => ({
      name,
      ...placed(cut, window),
      before: part.fromMs < window.fromMs,
      after: part.toMs > window.toMs,
    })),
  );

/** Stretches without anybody to load it, and those in which it is out of order. */
export function shadesOf(oven: Oven, day: string, window: Span, zone: string): { closed: Placed[]; out: Placed[] } {
  const place = (span: Span) => placed(span, window);
  return {
    closed: between(openingsOn(oven.hours, day, zone), window).map(place),
    out: outages(oven, window).map(place),
  };
}

export interface Tick extends Placed {
  words: string;
}

/** Full hours to read the picture by: each second one, or each third where it is long. */
export function ticksOf(day: string, hours: Hours, zone: string): Tick[] {
  const window = windowOf(day, hours, zone);
  const by = hours.to - hours.from > 16 ? 3 : 2;
  const first = Math.ceil(hours.from / by) * by;
  return Array.from({ length: Math.floor((hours.to - first) / by) + 1 }, (_, i) => first + i * by)
    .filter((hour) => hour < hours.to)
    .map((hour) => {
      const ms = instantMs(day, `${two(hour)}:00`, zone);
      return { words: two(hour), ...placed({ fromMs: ms, toMs: ms }, window) };
    });
}

export const quarter = (ms: number): number => Math.round(ms / stepMs) * stepMs;

/** Where a batch would stand: in which oven, from when. */
export interface Place {
  ovenId: string;
  startMs: number;
}

/** A key pressed on a batch moves it: a quarter of an hour along, an hour with Shift, an oven up or down; null for other keys. */
export function movedByKey(place: Place, key: string, shift: boolean, ovenIds: readonly string[]): Place | null {
  const by = shift ? 4 : 1;
  const at = ovenIds.indexOf(place.ovenId);
  const beside = (step: number) => ({ ...place, ovenId: ovenIds[at + step] ?? place.ovenId });
  if (key === 'ArrowRight') return { ...place, startMs: Math.floor(place.startMs / stepMs) * stepMs + by * stepMs };
  if (key === 'ArrowLeft') return { ...place, startMs: Math.ceil(place.startMs / stepMs) * stepMs - by * stepMs };
  if (key === 'ArrowDown') return beside(1);
  if (key === 'ArrowUp') return beside(-1);
  return null;
}

/** Monday's week that holds a day. */
export function weekOf(day: string): string[] {
  const weekday = ((new Date(`${day}T12:00Z`).getUTCDay() + 6) % 7) + 1;
  return Array.from({ length: 7 }, (_, i) => dayAfter(day, i + 1 - weekday));
}

/** The runs of one day and oven: what takes up some of the day, by its start. */
export const runsOn = (runs: readonly Run[], day: string, zone: string): Run[] =>
  runs
    .filter((run) => dayOf(new Date(run.start), zone) <= day && dayOf(new Date(Date.parse(run.end) - 1), zone) >= day)
    .sort((a, b) => Date.parse(a.start) - Date.parse(b.start));
