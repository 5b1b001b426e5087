// The ledger as it is asked for: the lots with lines, what became of each over a span of weeks, and why.
import { z } from 'zod';
import type { Context } from '../context.ts';
import {
  ledgerOpenings,
  ledgerStocks,
  ledgerSums,
  type Apart,
  type LedgerOpening,
  type LedgerStock,
  type LedgerSum,
} from '../database/ledger.ts';
import { sorbentOf } from '../stock/service.ts';
import { ledgerBroughtUp } from './current.ts';
import { accounts, figuresOf, type Account, type Figures, type Place } from './rules.ts';
import { mondayIn, weeksAfter } from './week.ts';

export const ledgerKinds = ['SORBENT', 'PLATES'] as const;

const day = z
  .string('a day such as 2026-03-02')
  .transform((text, at) => {
    const monday = mondayIn(text.trim());
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
  readonly sums: (apart: Apart) => Promise<readonly LedgerSum[]>;
  /** What came of it before the span; none where it is from the beginning. */
  readonly openings: () => Promise<readonly LedgerOpening[]>;
  /** Mondays; until is not in it. Null: from the beginning, or up to now. */
  readonly from: string | null;
  readonly until: string | null;
}

export const keyOf = ({ lotId, isPlates }: Pick<LedgerStock, 'lotId' | 'isPlates'>): string =>
  `${lotId} ${isPlates ? 'P' : 'S'}`;

/** The stocks that are meant, in no order. */
export async function stocksMeant(context: Context, { item, lot, kind }: LedgerSaid): Promise<LedgerStock[]> {
  await ledgerBroughtUp(context);
  const { database, lab } = context;
  const sorbentId = item ? (await sorbentOf({ tx: database.read, labId: lab.id }, item, 'item')).id : null;
  const found = await ledgerStocks(database, { labId: lab.id, sorbentId, lotNumber: lot ?? null });
  return found.filter(({ isPlates }) => !kind || isPlates === (kind === 'PLATES'));
}

/** Reads once what all of some stocks come to, by stock. */
function shared<Sum extends Pick<LedgerStock, 'lotId' | 'isPlates'>>(read: () => Promise<Sum[]>) {
  let all: Promise<Map<string, Sum[]>> | null = null;
  const grouped = async (): Promise<Map<string, Sum[]>> => {
    const by = new Map<string, Sum[]>();
    for (const sum of await read()) {
      const own = by.get(keyOf(sum));
      if (own) own.push(sum);
      else by.set(keyOf(sum), [sum]);
    }
    return by;
  };
  return async (stock: LedgerStock): Promise<Sum[]> => (await (all ??= grouped())).get(keyOf(stock)) ?? [];
}

const withReasons: readonly Account[] = ['WRITTEN_OFF', 'LOST', 'SPENT_ON_CHECKS'];

/** Stocks with what they come to over a span; each figure is read once for all of them, when it is asked for. */
export function withSums(
  { database }: Pick<Context, 'database'>,
  { from = null, until }: Pick<LedgerSaid, 'from' | 'until'>,
  stocks: readonly LedgerStock[],
): Stock[] {
  const lotIds = [...new Set(stocks.map(({ lotId }) => lotId))];
  const span = { from, until: until ? weeksAfter(until, 1) : null };
  const sums = (apart: Apart, accounts: readonly Account[] | null = null) =>
    shared(() => ledgerSums(database, { lotIds, ...span }, apart, accounts));
  const by = { whole: sums(null), week: sums('week'), why: sums('why', withReasons) };
  const openings = shared(async () => (from === null ? [] : ledgerOpenings(database, lotIds, from)));
  return stocks.map((stock) => ({
    ...{ ...stock, ...span },
    sums: (apart) => by[apart ?? 'whole'](stock),
    openings: () => openings(stock),
  }));
}

const isAccount = (account: string): account is Account => (accounts as readonly string[]).includes(account);

const countedIn = (isPlates: boolean) => (sum: LedgerSum) => ({
  isStock: sum.isStock,
  account: isAccount(sum.account) ? sum.account : 'COUNTED',
  amount: isPlates ? sum.plates : sum.dryGrams,
});

type Openings = Readonly<Record<Place, number>>;

/** What each place began the span with. */
async function openingOf({ isPlates, openings }: Stock): Promise<Openings> {
  const opening = { SHELF: 0, TAKEN_OUT: 0, WHOLE: 0 };
  for (const { isStock, plates, dryGrams } of await openings()) {
    const amount = isPlates ? plates : dryGrams;
    opening[isStock ? 'SHELF' : 'TAKEN_OUT'] += amount;
    opening.WHOLE += amount;
  }
  return opening;
}

/** What became of it over the span: dry g, or plates. */
export async function stockFigures(stock: Stock, place: Place): Promise<Figures> {
  const [sums, opening] = await Promise.all([stock.sums(null), openingOf(stock)]);
  return figuresOf(place, opening[place], sums.map(countedIn(stock.isPlates)));
}

export interface StockWeek {
  readonly stock: Stock;
  readonly week: string;
  readonly sums: readonly LedgerSum[];
  /** What each place began the week with. */
  readonly opening: Openings;
}

export const weekFigures = ({ stock, sums, opening }: StockWeek, place: Place): Figures =>
  figuresOf(place, opening[place], sums.map(countedIn(stock.isPlates)));

/** The weeks of the span in which anything happened to it. */
export async function stockWeeks(stock: Stock): Promise<StockWeek[]> {
  const [sums, began] = await Promise.all([stock.sums('week'), openingOf(stock)]);
  const weeks: { stock: Stock; week: string; sums: LedgerSum[]; opening: Openings }[] = [];
  const held = { ...began };
  for (const sum of sums) {
    const last = weeks.at(-1);
    if (last?.week === sum.week) last.sums.push(sum);
    else weeks.push({ stock, week: sum.week, sums: [sum], opening: { ...held } });
    const amount = stock.isPlates ? sum.plates : sum.dryGrams;
    held[sum.isStock ? 'SHELF' : 'TAKEN_OUT'] += amount;
    held.WHOLE += amount;
  }
  return weeks;
}

/** Grams as received of one dry gram: with the water it came in with. Null for plates. */
export async function asReceivedPerDry(stock: Stock): Promise<number | null> {
  if (stock.isPlates) return null;
  const [sums, openings] = await Promise.all([stock.sums(null), stock.openings()]);
  const came = sums.filter(({ account }) => account === 'CAME_IN');
  const total = (amounts: readonly number[]): number => amounts.reduce((sum, amount) => sum + amount, 0);
  const dry = total([...came.map((one) => one.dryGrams), ...openings.map((one) => one.cameInDryGrams)]);
  const received = total([
    ...came.map((one) => one.asReceivedGrams),
    ...openings.map((one) => one.cameInAsReceivedGrams),
  ]);
  return dry === 0 ? 1 : received / dry;
}

export interface Reason {
  readonly account: Account;
  readonly why: string | null;
  /** Dry g, or plates. */
  readonly amount: number;
  readonly events: number;
}

/** Why it was written off, lost, spent on checks within the span, most first. */
export async function stockReasons(stock: Stock): Promise<Reason[]> {
  const by = new Map<string, Reason>();
  for (const sum of await stock.sums('why')) {
    const { account, amount } = countedIn(stock.isPlates)(sum);
    const key = `${account} ${sum.why}`;
    const there = by.get(key) ?? { account, why: sum.why || null, amount: 0, events: 0 };
    by.set(key, { ...there, amount: there.amount - amount, events: there.events + sum.lines });
  }
  return [...by.values()].sort((one, other) => other.amount - one.amount);
}
