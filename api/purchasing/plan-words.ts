// A plan's sentences as people read them: weeks become days, a line says what to order by when and why. Pure.
import { daySaid, daysAfter, mondayOfWeek } from './weeks.ts';

export interface Calendar {
  /** The Monday of week 1. */
  readonly monday: string;
  readonly today: string;
}

const dayOfWeek = (week: number, { monday, today }: Calendar): string => daySaid(mondayOfWeek(monday, week), today);

/** `week 14` is the week of a Monday. */
export const withDays = (sentence: string, calendar: Calendar): string =>
  sentence
    .replace(
      /\bfrom week (\d+) to (\d+)\b/g,
      (_, from, to) =>
        `from the week of ${dayOfWeek(Number(from), calendar)} to that of ${dayOfWeek(Number(to), calendar)}`,
    )
    .replace(
      /\bweeks (\d+) to (\d+)\b/g,
      (_, from, to) => `the weeks of ${dayOfWeek(Number(from), calendar)} to ${dayOfWeek(Number(to), calendar)}`,
    )
    .replace(/\bweek (\d+)\b/g, (_, week) => `the week of ${dayOfWeek(Number(week), calendar)}`)
    .replace(/\b(\d+) g\b/g, (text, grams) => (Number(grams) >= 1000 ? `${kilograms(Number(grams))} kg` : text));

/** A lot that a plan orders has no number yet: it is said from whom and when. Others keep theirs. */
export function lotSaid(name: string, offers: readonly { id: string; supplier: string }[], calendar: Calendar): string {
  const [offer, week] = name.split('@');
  const found = offers.find(({ id }) => id === offer);
  if (!found || week === undefined) return name;
  return `the lot to be ordered from ${found.supplier} in the week of ${dayOfWeek(Number(week), calendar)}`;
}

/** The same within a sentence. */
export const withLots = (
  sentence: string,
  offers: readonly { id: string; supplier: string }[],
  calendar: Calendar,
): string =>
  offers.reduce((text, { id }) => {
    const parts = text.split(`${id}@`);
    return parts
      .map((part, index) => {
        if (index === 0) return part;
        const week = /^\d+/.exec(part)?.[0] ?? '';
        return `${lotSaid(`${id}@${week}`, offers, calendar)}${part.slice(week.length)}`;
      })
      .join('')
      .replaceAll('lot the lot', 'the lot');
  }, sentence);

const kilograms = (grams: number): string => String(Number((grams / 1000).toPrecision(3)));

/** The last day on which an order of a week is in time: its Friday, never before today. */
export function orderBy(week: number, { monday, today }: Calendar): string {
  const friday = daysAfter(mondayOfWeek(monday, week), 4);
  return friday < today ? today : friday;
}

const lower = (sentence: string): string => `${sentence.charAt(0).toLowerCase()}${sentence.slice(1)}`;

/** `Order 2 packs of 5 kg by 12 March: ordered a week later, lot F-118 ends …`. */
export const lineSentence = (packs: string, by: string, reason: string, calendar: Calendar): string =>
  `Order ${packs} by ${daySaid(by, calendar.today)}: ${lower(withDays(reason, calendar))}`;
