// A need in words: what is needed, whether it will be ready and how, when it comes again; and needs by day.
import type { Clock } from '../say/state.ts';
import { labClock, spokenDay, spokenTime } from '../say/time.ts';
import { grams } from '../say/water.ts';
import { count, sentence } from '../say/words.ts';
import type { Need, Preview, Standing, StepKind } from './questions.ts';

const figure = (value: number): string => String(Number(value.toPrecision(3)));

/** How much of it: "10 plates", "150 g, dry", "column 30 × 150 mm". */
export function amountWords({ kind, plates, dryGrams, column }: Need): string {
  if (kind === 'PLATES') return count(plates ?? 0, 'plate');
  if (kind === 'SORBENT') return `${grams(dryGrams ?? 0)} dry`;
  return column ? `Column ${figure(column.diameterMm)} × ${figure(column.bedLengthMm)}\u00a0mm` : 'Column';
}

/** What else was said of it. */
export function detailWords(need: Need): string {
  const { kind, isForExtraction, isPreWashed, mobilePhase, regime, regimeHumidityPercent, column } = need;
  const parts = [
    isForExtraction ? `for extraction in ${mobilePhase ?? ''}` : '',
    kind === 'PLATES' && !isPreWashed ? 'no pre-wash' : '',
    regime === 'EQUILIBRATED'
      ? regimeHumidityPercent === null
        ? 'equilibrated in the room'
        : `equilibrated at ${figure(regimeHumidityPercent)}\u00a0% RH`
      : '',
    kind === 'COLUMN' && mobilePhase ? `in ${mobilePhase}` : '',
    kind === 'COLUMN' && column ? `${grams(column.dryGrams)} dry` : '',
    need.isLotWished && need.lot ? `lot ${need.lot.lotNumber}` : '',
    need.limitWaterFraction === null ? '' : `at most ${figure(need.limitWaterFraction * 100)}\u00a0% water`,
    need.priority > 1 ? (need.priority === 8 ? 'before all else' : 'matters more') : '',
  ];
  return parts.filter(Boolean).join(', ');
}

const doing: Partial<Record<StepKind, string>> = {
  PRE_WASH: 'pre-wash',
  AIR_DRY: 'out of the hood',
  OVEN: 'oven',
  EQUILIBRATE: 'equilibrate',
  PACK: 'pack',
  CONDITION: 'condition',
};

interface Planned {
  kind: StepKind;
  startAt: string;
  endAt: string;
  doneAt?: string | null;
}

/** "pre-wash 16:20, oven tomorrow 12:40": what somebody does for it still, first of each kind. */
export function stepsWords(steps: readonly Planned[], { now, zone }: Clock): string {
  const isWashed = !steps.some(({ kind, doneAt }) => kind === 'PRE_WASH' && !doneAt);
  const said = new Set<StepKind>();
  let lastDay = 'today';
  const parts = steps.flatMap(({ kind, startAt, endAt, doneAt }) => {
    const name = doing[kind];
    if (!name || doneAt || said.has(kind) || (kind === 'AIR_DRY' && !isWashed)) return [];
    said.add(kind);
    const at = new Date(kind === 'AIR_DRY' ? endAt : startAt);
    const day = spokenDay(at, now, zone);
    const words = day === lastDay ? labClock(at, zone).slice(11) : spokenTime(at, now, zone);
    lastDay = day;
    return [`${name} ${words}`];
  });
  return parts.join(', ');
}

/** The step that comes next. */
export const nextOf = (steps: readonly Planned[]): Planned | undefined => steps.find(({ doneAt }) => !doneAt);

/** What a need that is being typed would come to. */
export function previewWords(of: Preview, clock: Clock): { can: boolean; words: string } | null {
  if (of.can === undefined) return null;
  const labels = [...new Set((of.from ?? []).map(({ container }) => container.label))];
  if (of.can) {
    const steps = stepsWords(of.steps ?? [], clock);
    const from = labels.length > 0 ? `from ${labelsWords(labels)}` : '';
    const mark = lotMark(of.from?.[0]?.container.lot ?? null);
    return { can: true, words: [from, steps || 'ready as it stands', mark].filter(Boolean).join('; ') };
  }
  return { can: false, words: of.obstacle?.sentence ?? 'something stands in the way' };
}

/** A lot that nobody has accepted yet is offered with this mark. */
export function lotMark(lot: { lotNumber: string; standing: Standing } | null): string {
  if (lot?.standing === 'IN_CHECK') return `the check of lot ${lot.lotNumber} is not decided yet`;
  return lot?.standing === 'UNCHECKED' ? `lot ${lot.lotNumber} is not checked against the last lot` : '';
}

/** At most three labels, and how many more. */
export const labelsWords = (labels: readonly string[]): string =>
  labels.length <= 3 ? labels.join(', ') : `${labels.slice(0, 2).join(', ')} and ${labels.length - 2} more`;

const days = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** "every Friday", "on working days", "Mondays and Thursdays". */
export function againWords(weekdays: readonly number[] | null): string {
  if (!weekdays || weekdays.length === 0) return '';
  const sorted = [...weekdays].sort((a, b) => a - b);
  if (sorted.length === 7) return 'every day';
  if (sorted.join() === '1,2,3,4,5') return 'Monday to Friday';
  const names = sorted.map((day) => days[day - 1] ?? '');
  return `every ${names.length === 1 ? names[0] : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`}`;
}

/** The day so many days on, as `2026-11-26`. */
export const dayAfter = (day: string, by: number): string =>
  new Date(Date.parse(`${day}T12:00Z`) + by * 86_400_000).toISOString().slice(0, 10);

/** Noon in UTC of a day, for its name: "Friday 27 November". */
export const dayWords = (day: string): string =>
  new Intl.DateTimeFormat('en-GB', { weekday: 'long', day: 'numeric', month: 'long', timeZone: 'UTC' })
    .format(new Date(`${day}T12:00Z`))
    .replace(',', '');

/** "today", "tomorrow", "last Friday", else the weekday and date. */
export function dayName(day: string, today: string): string {
  const apart = Math.round((Date.parse(day) - Date.parse(today)) / 86_400_000);
  if (apart === 0) return 'today';
  if (apart === 1) return 'tomorrow';
  if (apart === -1) return 'yesterday';
  const weekday = dayWords(day).split(' ')[0] ?? '';
  if (apart < 0 && apart >= -7) return `last ${weekday}`;
  return apart > 0 && apart < 7 ? weekday : dayWords(day);
}

/** Over a day: "Tomorrow, Friday 27 November". */
export function headWords(day: string, today: string): string {
  const name = dayName(day, today);
  return ['today', 'tomorrow', 'yesterday'].includes(name) ? `${sentence(name)}, ${dayWords(day)}` : dayWords(day);
}

export interface Day {
  day: string;
  needs: Need[];
}

/** Needs by their days, in order. */
export function byDay(needs: readonly Need[]): Day[] {
  const groups = new Map<string, Need[]>();
  for (const need of needs) groups.set(need.day, [...(groups.get(need.day) ?? []), need]);
  return [...groups].sort(([a], [b]) => (a < b ? -1 : 1)).map(([day, of]) => ({ day, needs: of }));
}

/**
 * Days to come of which the same weekday a week before had needs, and of which nothing was copied yet: "same as last
 * Friday". Series come again by themselves and are not counted.
 */
export function sameAsBefore(needs: readonly Need[], today: string): { from: string; to: string; count: number }[] {
  const once = needs.filter(({ weekdays, state }) => weekdays === null && state !== 'DROPPED');
  const on = (day: string): Need[] => once.filter((need) => need.day === day);
  return Array.from({ length: 7 }, (_, i) => dayAfter(today, i)).flatMap((to) => {
    const from = dayAfter(to, -7);
    const before = on(from);
    return before.length > 0 && on(to).length === 0 ? [{ from, to, count: before.length }] : [];
  });
}
