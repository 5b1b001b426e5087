// The ledger as it is asked for: the lots with lines, what became of each over a span of weeks, and why.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { ledgerStocks, ledgerSums, type Apart, type LedgerStock, type LedgerSum } from '../database/ledger.ts';
import { sorbentOf } from '../stock/service.ts';
import { ledgerBroughtUp } from './current.ts';
import { accounts, figuresOf, type Account, type Figures, type Place } from './rules.ts';
import { mondayOf, weeksAfter } from './week.ts';

export const ledgerKinds = ['SORBENT', 'PLATES'] as const;

const day = z
  .string('a day such as 2026-03-02')
  .transform((text, at) => {
    const monday = mondayOf(text.trim());
    if (monday === null) at.addIssue({ code: 'custom', message: 'a day such as 2026-03-02' });
    return monday ?? '';
  })
  .nullish();
const name = z.string().trim().min(1, 'a name').max(200, 'at most 200 signs').nullish();

/** Days stand for their whole weeks, the last one with it. */
export const ledgerSaid = z
  .object({
    item: name,
    lot: name,
    kind: z.enum(ledgerKinds, ledgerKinds.join(' or ')).nullish(),
    from: day,
    until: day,
  })
  .refine(({ from, until }) => !from || !until || from <= until, { path: ['until'], error: 'not before `from`' });

export type LedgerSaid = z.output<typeof ledgerSaid>;

/** One lot of one kind in the ledger, with what all lots of the page come to. */
export interface Stock extends LedgerStock {
  readonly key: string;
  readonly sums: (apart: Apart) => Promise<readonly LedgerSum[]>;
  /** Mondays; until is not in it. Null: from the beginning, or up to now. */
  readonly from: string | null;
  readonly until: string | null;
}

const keyOf = ({ lotId, isPlates }: Pick<LedgerStock, 'lotId' | 'isPlates'>): string =>
  `${lotId} ${isPlates ? 'P' : 'S'}`;

/** The stocks that are meant, by sorbent, last received first; `page` takes those that are wanted of them. */
export async function ledgerOf(
  context: Context,
  said: LedgerSaid,
  page: (stocks: { key: string }[]) => { key: string }[] = (stocks) => stocks,
): Promise<Stock[]> {
  await ledgerBroughtUp(context);
  const { database, lab } = context;
  const { item, lot, kind, from = null, until } = said;
  const sorbentId = item ? (await sorbentOf({ tx: database.read, labId: lab.id }, item, 'item')).id : null;
  const found = await ledgerStocks(database, { labId: lab.id, sorbentId, lotNumber: lot ?? null });
  const stocks = found
    .filter(({ isPlates }) => !kind || isPlates === (kind === 'PLATES'))
    .map((stock) => ({ ...stock, key: keyOf(stock) }));
  const wanted = new Set(page(stocks).map(({ key }) => key));
  const shown = stocks.filter(({ key }) => wanted.has(key));
  const span = { from, until: until ? weeksAfter(until, 1) : null };
  const read = new Map<Apart, Promise<Map<string, LedgerSum[]>>>();
  const sumsOf = async (apart: Apart): Promise<Map<string, LedgerSum[]>> => {
    const lotIds = shown.map(({ lotId }) => lotId);
    const by = new Map<string, LedgerSum[]>();
    for (const sum of await ledgerSums(database, { labId: lab.id, lotIds, ...span }, apart)) {
      const own = by.get(keyOf(sum));
      if (own) own.push(sum);
      else by.set(keyOf(sum), [sum]);
    }
    return by;
  };
  const sums = (key: string) => async (apart: Apart) => {
    const all = read.get(apart) ?? sumsOf(apart);
    read.set(apart, all);
    return (await all).get(key) ?? [];
  };
  return shown.map((stock) => ({ ...stock, ...span, sums: sums(stock.key) }));
}

const isAccount = (account: string): account is Account => (accounts as readonly string[]).includes(account);

const countedIn = (isPlates: boolean) => (sum: LedgerSum) => ({
  isStock: sum.isStock,
  account: isAccount(sum.account) ? sum.account : 'COUNTED',
  amount: isPlates ? sum.plates : sum.dryGrams,
});

const openingOf = (place: Place, { isPlates }: Stock, sums: readonly LedgerSum[]): number =>
  figuresOf(place, 0, sums.filter(({ isBefore }) => isBefore).map(countedIn(isPlates))).onHand;

/** What became of it over the span: dry g, or plates. */
export async function stockFigures(stock: Stock, place: Place): Promise<Figures> {
  const sums = await stock.sums(null);
  const within = sums.filter(({ isBefore }) => !isBefore).map(countedIn(stock.isPlates));
  return figuresOf(place, openingOf(place, stock, sums), within);
}

export interface StockWeek {
  readonly stock: Stock;
  readonly week: string;
  readonly sums: readonly LedgerSum[];
  /** What each place began the week with. */
  readonly opening: Readonly<Record<Place, number>>;
}

export const weekFigures = ({ stock, sums, opening }: StockWeek, place: Place): Figures =>
  figuresOf(place, opening[place], sums.map(countedIn(stock.isPlates)));

/** The weeks of the span in which anything happened to it. */
export async function stockWeeks(stock: Stock): Promise<StockWeek[]> {
  const [sums, all] = await Promise.all([stock.sums('week'), stock.sums(null)]);
  const by = new Map<string, LedgerSum[]>();
  for (const sum of sums) by.set(sum.week, [...(by.get(sum.week) ?? []), sum]);
  let opening = {
    SHELF: openingOf('SHELF', stock, all),
    TAKEN_OUT: openingOf('TAKEN_OUT', stock, all),
    WHOLE: openingOf('WHOLE', stock, all),
  };
  return [...by].map(([week, own]) => {
    const told = { stock, week, sums: own, opening };
    const left = (place: Place): number => weekFigures(told, place).onHand;
    opening = { SHELF: left('SHELF'), TAKEN_OUT: left('TAKEN_OUT'), WHOLE: left('WHOLE') };
    return told;
  });
}

/** Grams as received of one dry gram: with the water it came in with. Null for plates. */
export async function asReceivedPerDry(stock: Stock): Promise<number | null> {
  if (stock.isPlates) return null;
  const came = (await stock.sums(null)).filter(({ account }) => account === 'CAME_IN');
  const dry = came.reduce((sum, { dryGrams }) => sum + dryGrams, 0);
  return dry === 0 ? 1 : came.reduce((sum, { asReceivedGrams }) => sum + asReceivedGrams, 0) / dry;
}

export interface Reason {
  readonly account: Account;
  readonly why: string | null;
  /** Dry g, or plates. */
  readonly amount: number;
  readonly events: number;
}

const withReasons: readonly Account[] = ['WRITTEN_OFF', 'LOST', 'SPENT_ON_CHECKS'];

/** Why it was written off, lost, spent on checks within the span, most first. */
export async function stockReasons(stock: Stock): Promise<Reason[]> {
  const by = new Map<string, Reason>();
  for (const sum of await stock.sums('why')) {
    const { account, amount } = countedIn(stock.isPlates)(sum);
    if (!withReasons.includes(account)) continue;
    const key = `${account} ${sum.why}`;
    const there = by.get(key) ?? { account, why: sum.why || null, amount: 0, events: 0 };
    by.set(key, { ...there, amount: there.amount - amount, events: there.events + sum.lines });
  }
  return [...by.values()].sort((one, other) => other.amount - one.amount);
}
