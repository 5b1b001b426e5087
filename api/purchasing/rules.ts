// What an offer, a campaign and an order must say, and what goes together. Pure; tested without a database.
import type { Backing, OrderState } from '../database/generated/sqlite/client.ts';
import { invalid, missing } from '../errors.ts';

export interface Price {
  /** From so many packs on, for all of them. */
  readonly from: number;
  /** Minor units for one pack. */
  readonly minor: number;
}

/** The first is from 1, and a later one is never dearer: else nobody would order so many. */
export function checkPrices(prices: readonly Price[], amountOf: (minor: number) => string, under = 'input'): void {
  prices.forEach(({ from, minor }, index) => {
    const before = prices[index - 1];
    const path = `${under}.prices.${index}`;
    if (!before && from !== 1) throw invalid(`${path}.from`, from, '1: the price of a single pack');
    if (!before) return;
    if (from <= before.from) throw invalid(`${path}.from`, from, `more than ${before.from}, the one before`);
    if (minor > before.minor)
      throw invalid(`${path}.price`, amountOf(minor), `at most ${amountOf(before.minor)}, the price of fewer packs`);
  });
}

/** The price of one pack when so many are ordered. */
export const priceFor = (prices: readonly Price[], packs: number): number =>
  prices.reduce((found, { from, minor }) => (packs >= from ? minor : found), prices[0]?.minor ?? 0);

interface Lead {
  readonly leadLeastWeeks: number;
  readonly leadUsualWeeks: number;
  readonly leadMostWeeks: number;
}

export function checkLead({ leadLeastWeeks, leadUsualWeeks, leadMostWeeks }: Lead, under = 'input'): void {
  if (leadLeastWeeks > leadUsualWeeks)
    throw invalid(`${under}.leadLeastWeeks`, leadLeastWeeks, `at most the usual ${leadUsualWeeks}`);
  if (leadMostWeeks < leadUsualWeeks)
    throw invalid(`${under}.leadMostWeeks`, leadMostWeeks, `the usual ${leadUsualWeeks} or more`);
}

/** Chances of whole weeks: half of all take the usual time, a quarter each lies evenly on either side of it. */
export function leadChances({ leadLeastWeeks, leadUsualWeeks, leadMostWeeks }: Lead) {
  const chances = new Map<number, number>();
  const add = (from: number, to: number, chance: number) => {
    for (let weeks = from; weeks <= to; weeks++)
      chances.set(weeks, (chances.get(weeks) ?? 0) + chance / (to - from + 1));
  };
  add(leadUsualWeeks, leadUsualWeeks, 0.5);
  if (leadLeastWeeks < leadUsualWeeks) add(leadLeastWeeks, leadUsualWeeks - 1, 0.25);
  else add(leadUsualWeeks, leadUsualWeeks, 0.25);
  if (leadMostWeeks > leadUsualWeeks) add(leadUsualWeeks + 1, leadMostWeeks, 0.25);
  else add(leadUsualWeeks, leadUsualWeeks, 0.25);
  return [...chances].map(([weeks, chance]) => ({ weeks, chance })).sort((a, b) => a.weeks - b.weeks);
}

/** The weeks that a plan reckons with: by then nine in ten are there. */
export function plannedWeeks(lead: Lead): number {
  let sum = 0;
  for (const { weeks, chance } of leadChances(lead)) {
    sum += chance;
    if (sum >= 0.9 - 1e-9) return weeks;
  }
  return lead.leadMostWeeks;
}

interface Pack {
  readonly backing: Backing | null;
  readonly packGrams: number | null;
  readonly packPlates: number | null;
}

/** Plates are counted, bulk is weighed: one of both. */
export function checkPack({ backing, packGrams, packPlates }: Pack, under = 'input'): void {
  if (packGrams === null && packPlates === null)
    throw missing(`${under}.packGrams`, 'grams as received in one pack, or the plates of a box');
  if (packGrams !== null && packPlates !== null)
    throw invalid(`${under}.packPlates`, packPlates, 'grams or plates of a pack, not both');
  if (packGrams !== null && backing !== null)
    throw invalid(`${under}.backing`, backing, 'none: only plates have a backing');
}

/** What may be done next with an order in each state. */
const next: Record<OrderState, readonly OrderState[]> = {
  ASKED_FOR: ['BOUGHT', 'ON_THE_SHELF', 'CALLED_OFF'],
  BOUGHT: ['ON_THE_SHELF', 'CALLED_OFF', 'ASKED_FOR'],
  ON_THE_SHELF: ['BOUGHT'],
  CALLED_OFF: ['ASKED_FOR', 'BOUGHT'],
};

export const stateWords: Record<OrderState, string> = {
  ASKED_FOR: 'asked for',
  BOUGHT: 'bought',
  ON_THE_SHELF: 'on the shelf',
  CALLED_OFF: 'called off',
};

export function checkStep(from: OrderState, to: OrderState, id: string, under = 'input'): void {
  if (!next[from].includes(to))
    throw invalid(`${under}.id`, id, `an order that can be ${stateWords[to]}: this one is ${stateWords[from]}`);
}

export interface Use {
  readonly day: string;
  /** Dry grams, or plates. */
  readonly amount: number;
}

/** By day; what falls on one day is one use. Plates are whole. */
export function usesInOrder(uses: readonly Use[], backing: Backing | null, under = 'input'): Use[] {
  uses.forEach(({ amount }, index) => {
    if (backing !== null && !Number.isInteger(amount))
      throw invalid(`${under}.uses.${index}.amount`, amount, 'a whole number of plates');
  });
  const ofDay = new Map<string, number>();
  for (const { day, amount } of uses) ofDay.set(day, (ofDay.get(day) ?? 0) + amount);
  return [...ofDay].map(([day, amount]) => ({ day, amount })).sort((a, b) => (a.day < b.day ? -1 : 1));
}

/**
 * What of a campaign's uses is still to come, from this week on. Its needs count against the uses of their week: whichever
 * is more is wanted, less what its needs had already, which is met or kept for them.
 */
export function stillToCome(
  uses: readonly { readonly week: number; readonly amount: number }[],
  needs: readonly { readonly week: number; readonly amount: number; readonly had: number }[],
  thisWeek: number,
): { week: number; amount: number }[] {
  const weeks = new Map<number, { used: number; needed: number; had: number }>();
  const of = (week: number) => {
    const there = weeks.get(week) ?? { used: 0, needed: 0, had: 0 };
    weeks.set(week, there);
    return there;
  };
  for (const { week, amount } of uses) of(week).used += amount;
  for (const { week, amount, had } of needs) {
    of(week).needed += amount;
    of(week).had += had;
  }
  return [...weeks]
    .filter(([week]) => week >= thisWeek)
    .map(([week, { used, needed, had }]) => ({ week, amount: Math.max(used, needed) - had }))
    .filter(({ amount }) => amount > 0)
    .sort((a, b) => a.week - b.week);
}

/** How many of the uses an amount covers, taken in order. */
export function coveredCount(uses: readonly { readonly amount: number }[], amount: number): number {
  let left = amount + 1e-6;
  const first = uses.findIndex((use) => {
    if (use.amount > left) return true;
    left -= use.amount;
    return false;
  });
  return first < 0 ? uses.length : first;
}
