// The ledger in words: what became of a lot in one sentence, amounts on the basis that is chosen, weeks as one says them.
import { grams, plates } from '../say/water.ts';
import { count } from '../say/words.ts';
import type { Account, Figures, Stock } from './questions.ts';

export type Basis = 'received' | 'dry';
type Counted = Pick<Stock, 'kind' | 'asReceivedPerDry'>;

/** An amount in its unit: whole plates, or grams on the basis that is shown. */
export function amountWords(amount: number, of: Counted, basis: Basis): string {
  if (of.kind === 'PLATES') return plates(Math.round(amount));
  return grams(basis === 'dry' ? amount : amount * (of.asReceivedPerDry ?? 1));
}

/** The same in a table's cell, where the heading says the unit; nothing is left empty. */
export function cell(amount: number, of: Counted, basis: Basis): string {
  if (Math.abs(amount) < 1e-6) return '';
  const shown = of.kind === 'PLATES' || basis === 'dry' ? amount : amount * (of.asReceivedPerDry ?? 1);
  const digits = of.kind === 'PLATES' || Math.abs(shown) >= 100 ? 0 : 1;
  return shown.toLocaleString('en-GB', { maximumFractionDigits: digits }).replace(/,/g, '\u202f').replace('-', '−');
}

/** Less than this is nothing: far under what a balance shows. */
const nothing = 1e-6;

const accountWords: Partial<Record<Account, string>> = {
  WRITTEN_OFF: 'written off',
  LOST: 'lost',
  SPENT_ON_CHECKS: 'spent on checks',
};

const gone = [
  ['WRITTEN_OFF', 'writtenOff'],
  ['LOST', 'lost'],
  ['SPENT_ON_CHECKS', 'spentOnChecks'],
] as const;
type Place = 'shelf' | 'takenOut';

/** "50 g written off (wet)" of what stood in one place; why, where all of it went from there, with one reason or two. */
function goneWords(of: Stock, place: Place, basis: Basis): string[] {
  const other = of[place === 'shelf' ? 'takenOut' : 'shelf'];
  return gone.flatMap(([account, name]) => {
    const amount = of[place][name];
    if (amount < nothing) return [];
    const whys =
      other[name] < nothing
        ? of.reasons.filter((reason) => reason.account === account && reason.why).map(({ why }) => why)
        : [];
    const said = whys.length === 0 ? '' : ` (${whys.slice(0, 2).join(', ')}${whys.length > 2 ? ', …' : ''})`;
    return [`${amountWords(amount, of, basis)} ${accountWords[account]}${said}`];
  });
}

/** What became of it on the shelf, so that it adds up to what is left: "5 kg came in, 1.6 kg used, 50 g written off (wet)". */
export function becameWords(of: Stock, basis: Basis): string {
  const { opening, cameIn, used, counted } = of.shelf;
  const parts = [
    opening > nothing ? `${amountWords(opening, of, basis)} at the beginning` : null,
    cameIn > nothing ? `${amountWords(cameIn, of, basis)} came in` : null,
    Math.abs(used) > nothing ? `${amountWords(used, of, basis)} used` : 'none used',
    ...goneWords(of, 'shelf', basis),
    Math.abs(counted) > nothing
      ? `counted ${amountWords(Math.abs(counted), of, basis)} ${counted > 0 ? 'more' : 'less'}`
      : null,
  ];
  return parts.filter((part) => part !== null).join(', ');
}

/** "Of what was taken 340 g stand in jars and trays still, 10 g lost"; null when there is nothing to say. */
export function takenOutWords(of: Stock, basis: Basis): string | null {
  const where = of.kind === 'PLATES' ? 'in boxes of their own' : 'in jars and trays';
  const parts = [
    ...(of.takenOut.onHand < nothing ? [] : [`${amountWords(of.takenOut.onHand, of, basis)} stand ${where} still`]),
    ...goneWords(of, 'takenOut', basis),
  ];
  return parts.length === 0 ? null : `Of what was taken ${parts.join(', ')}`;
}

/** "the week of 2 March". */
export function weekWords(monday: string, year: string): string {
  const options = { day: 'numeric', month: 'short', timeZone: 'UTC' } as const;
  const isOther = !monday.startsWith(year);
  return new Intl.DateTimeFormat('en-GB', { ...options, ...(isOther && { year: 'numeric' }) }).format(
    new Date(`${monday}T00:00:00Z`),
  );
}

export const lineAccountWords: Record<Account, string> = {
  CAME_IN: 'came in',
  TAKEN: 'taken',
  FILLED: 'filled',
  PACKED: 'packed',
  COMBINED: 'poured together',
  USED_UP: 'used up',
  WRITTEN_OFF: 'written off',
  LOST: 'lost',
  SPENT_ON_CHECKS: 'spent on a check',
  COUNTED: 'counted',
};

const columns: { name: keyof Figures; words: string }[] = [
  { name: 'cameIn', words: 'Came in' },
  { name: 'used', words: 'Used' },
  { name: 'writtenOff', words: 'Written off' },
  { name: 'lost', words: 'Lost' },
  { name: 'spentOnChecks', words: 'Checks' },
  { name: 'counted', words: 'Count ±' },
];

/** The columns in which any week has something, so that a table holds no empty ones. */
export const columnsOf = (weeks: readonly { shelf: Figures }[]): typeof columns =>
  columns.filter(({ name }) => name === 'used' || weeks.some(({ shelf }) => Math.abs(shelf[name]) > nothing));

/** Spans one may choose, in weeks; 0 is all there is. */
export const spans: readonly { weeks: number; words: string }[] = [
  { weeks: 13, words: 'a quarter' },
  { weeks: 26, words: 'half a year' },
  { weeks: 52, words: 'a year' },
  { weeks: 0, words: 'all the years' },
];

/** The Monday of the week of a day on the lab's clock, so many weeks back. */
export function mondayBack(day: string, weeks: number): string {
  const at = new Date(`${day}T00:00:00Z`);
  at.setUTCDate(at.getUTCDate() - ((at.getUTCDay() + 6) % 7) - 7 * weeks);
  return at.toISOString().slice(0, 10);
}

/** The use of each week from one Monday to another, both with it; weeks in which nothing happened are 0. */
export function usedBetween(of: Pick<Stock, 'weeks'>, first: string, last: string): number[] {
  const by = new Map(of.weeks.map(({ week, shelf }) => [week, Math.max(0, shelf.used)]));
  const used: number[] = [];
  for (let week = first; week <= last; week = mondayBack(week, -1)) used.push(by.get(week) ?? 0);
  return used;
}

/** What the small picture shows, for whoever does not see it. */
export function barsWords(used: readonly number[], of: Counted, basis: Basis): string {
  const some = used.filter((amount) => amount > nothing);
  if (some.length === 0) return `Nothing was used in ${count(used.length, 'week')}.`;
  return `Used in ${some.length} of ${count(used.length, 'week')}, most in one week ${amountWords(Math.max(...some), of, basis)}.`;
}

/** Lots under the name of their sorbent, in the order in which they come. */
export function bySorbent<Of extends { sorbent: { name: string } }>(all: readonly Of[]): [name: string, of: Of[]][] {
  const groups = new Map<string, Of[]>();
  for (const one of all) groups.set(one.sorbent.name, [...(groups.get(one.sorbent.name) ?? []), one]);
  return [...groups];
}
