// A plan's sentences as people read them: weeks become days, a line says what to order by when and why. Pure.
import type { Part, Sentence } from '../science/purchase/words.ts';
import { daySaid, daysAfter, mondayOfWeek } from './weeks.ts';

export interface Calendar {
  /** The Monday of week 1. */
  readonly monday: string;
  readonly today: string;
}

const dayOfWeek = (week: number, { monday, today }: Calendar): string => daySaid(mondayOfWeek(monday, week), today);

/** A lot that a plan orders has no number yet: it is said from whom and when. Others keep theirs. */
export function lotSaid(name: string, offers: readonly { id: string; supplier: string }[], calendar: Calendar): string {
  const [offer, week] = name.split('@');
  const found = offers.find(({ id }) => id === offer);
  if (!found || week === undefined) return name;
  return `the lot to be ordered from ${found.supplier} in the week of ${dayOfWeek(Number(week), calendar)}`;
}

/** Names of the plan's offers and of the orders on their way: a lot of neither is one that is there. */
export interface Named {
  readonly offers: readonly { readonly id: string; readonly supplier: string }[];
  readonly orders: Readonly<Record<string, string>>;
}

function partSaid(part: Part, { offers, orders }: Named, calendar: Calendar): string {
  if (typeof part === 'string') return part;
  if ('amount' in part) {
    const isLarge = part.unit === 'g' && part.amount >= 1000;
    return isLarge ? `${kilograms(part.amount)} kg` : `${part.amount} ${part.unit}`;
  }
  if ('week' in part) return `the week of ${dayOfWeek(part.week, calendar)}`;
  if ('fromWeek' in part)
    return `the weeks of ${dayOfWeek(part.fromWeek, calendar)} to ${dayOfWeek(part.toWeek, calendar)}`;
  if (part.lot in orders) return `the lot of ${part.lot}`;
  const said = lotSaid(part.lot, offers, calendar);
  return said === part.lot ? `lot ${said}` : said;
}

/** A sentence of the programme as people read it. */
export const said = (sentence: Sentence, named: Named, calendar: Calendar): string =>
  sentence.map((part) => partSaid(part, named, calendar)).join('');

const kilograms = (grams: number): string => String(Number((grams / 1000).toPrecision(3)));

export const fridayOf = (monday: string): string => daysAfter(monday, 4);

/** The last day on which an order of a week is in time: its Friday, never before today. */
export function orderBy(week: number, { monday, today }: Calendar): string {
  const friday = fridayOf(mondayOfWeek(monday, week));
  return friday < today ? today : friday;
}

/** `Order 2 packs of 5 kg by 12 March: ordered a week later, lot F-118 ends …`. */
export const lineSentence = (packs: string, by: string, reason: string, { today }: Calendar): string =>
  `Order ${packs} by ${daySaid(by, today)}: ${reason.charAt(0).toLowerCase()}${reason.slice(1)}`;
