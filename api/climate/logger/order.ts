/** Whether dates are written day first, month first or year first: decided over all dates of a file, and asked when they do not tell. */
import type { DateOrder } from './file.ts';
import type { WrittenDate } from './stamp.ts';

const DAY_MS = 86_400_000;

export type OrderEvidence = {
  /** The different dates, in the order of their first appearance. */
  dates: readonly WrittenDate[];
  /** An order that the header or preamble spells out, such as `dd/mm/yyyy`. */
  said: DateOrder | null;
  answered: DateOrder | null;
  twelveHour: boolean;
};

/** The order, and the orders to ask between when the dates allow more than one. */
export function dateOrderOf({ dates, said, answered, twelveHour }: OrderEvidence): {
  order: DateOrder;
  open: DateOrder[];
} {
  if (answered) return { order: answered, open: [] };
  const possible = differing(possibleOrders(dates), dates);
  const [only = 'day-first'] = possible;
  if (dates.every(({ digits }) => digits[0] > 2)) return { order: 'year-first', open: [] };
  if (possible.length <= 1) return { order: only, open: [] };
  if (said && possible.includes(said)) return { order: said, open: [] };
  return { order: likeliest(possible, dates, twelveHour), open: possible };
}

/** Midnight of the date as if its clock were UTC; NaN when there is no such day under this order. */
export function midnightOf({ parts, digits, named }: WrittenDate, order: DateOrder): number {
  const [a, b, c] = parts;
  if (named) return civilMs(fullYear(c, digits[2]), b, a);
  if (digits[0] > 2) return digits[2] > 2 ? NaN : civilMs(a, b, c);
  if (order === 'year-first') return digits[2] > 2 ? NaN : civilMs(fullYear(a, digits[0]), b, c);
  const year = fullYear(c, digits[2]);
  return order === 'day-first' ? civilMs(year, b, a) : civilMs(year, a, b);
}

/** Two digits mean 1990 to 2089; three are no year. */
function fullYear(year: number, digits: number): number {
  if (digits === 3) return NaN;
  return digits > 2 ? year : year + (year >= 90 ? 1900 : 2000);
}

/** Loggers of this kind did not exist before 1990; a date after 2100 is a fault of the clock or of the file. */
function civilMs(year: number, month: number, day: number): number {
  if (!(year >= 1990 && year < 2100) || month < 1 || month > 12 || day < 1) return NaN;
  const ms = Date.UTC(year, month - 1, day);
  return new Date(ms).getUTCDate() === day ? ms : NaN;
}

/** The orders under which the fewest dates are impossible. One 13th is enough to rule month-first out. */
function possibleOrders(dates: readonly WrittenDate[]): DateOrder[] {
  const orders: DateOrder[] = ['day-first', 'month-first', 'year-first'];
  const impossible = orders.map((order) => dates.filter((date) => Number.isNaN(midnightOf(date, order))).length);
  const fewest = Math.min(...impossible);
  const possible = orders.filter((_, index) => impossible[index] === fewest);
  const loose = dates.filter(({ digits, named }) => !named && digits[0] <= 2);
  // With full stops the day stands first wherever they are used (CLDR short dates; from memory).
  if (loose.length > 0 && loose.every(({ mark }) => mark === '.') && possible.includes('day-first'))
    return ['day-first'];
  return possible.filter((order) => order !== 'year-first' || possible.length === 1 || beginsWithYear(loose));
}

/** A two-digit year in front stays while the day at the end runs. */
function beginsWithYear(dates: readonly WrittenDate[]): boolean {
  const different = (place: 0 | 2): number => new Set(dates.map(({ parts }) => parts[place])).size;
  return dates.length > 0 && different(0) < different(2);
}

/** One order for each way to read the dates: 04/04 is the same day either way. */
function differing(orders: readonly DateOrder[], dates: readonly WrittenDate[]): DateOrder[] {
  const seen = new Set<string>();
  return orders.filter((order) => {
    const days = dates.map((date) => midnightOf(date, order)).join();
    return !seen.has(days) && seen.add(days);
  });
}

/** A logger goes from day to day: the order with the shortest way through the dates; else the habit of a 12-hour clock, else of most of the world. */
function likeliest(orders: readonly DateOrder[], dates: readonly WrittenDate[], twelveHour: boolean): DateOrder {
  const habit: DateOrder[] = twelveHour
    ? ['month-first', 'day-first', 'year-first']
    : ['day-first', 'month-first', 'year-first'];
  const ways = orders.map((order) => ({ order, days: wayThrough(dates, order) }));
  ways.sort((one, other) => one.days - other.days || habit.indexOf(one.order) - habit.indexOf(other.order));
  return ways[0]?.order ?? 'day-first';
}

function wayThrough(dates: readonly WrittenDate[], order: DateOrder): number {
  const days = dates.map((date) => midnightOf(date, order) / DAY_MS).filter((day) => !Number.isNaN(day));
  return days.reduce((sum, day, index) => sum + Math.abs(day - (days[index - 1] ?? day)), 0);
}

/** The order that a text spells out with letters: `dd/mm/yyyy`, `TT.MM.JJJJ`, `M/D/YY`. */
export function saidOrderOf(text: string): DateOrder | null {
  const letters = /\b([dtjgmya])\1{0,3}[-/. ]([dtjgmy])\2{0,3}[-/. ]([dtjgmya])\3{0,3}\b/i.exec(text);
  if (!letters) return null;
  const [first, second] = [letters[1]?.toLowerCase() ?? '', letters[2]?.toLowerCase() ?? ''];
  if ('yja'.includes(first) && second === 'm') return 'year-first';
  if (first === 'm' && 'dtjg'.includes(second)) return 'month-first';
  return 'dtjg'.includes(first) && second === 'm' ? 'day-first' : null;
}
