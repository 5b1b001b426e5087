// The ledger: what every event of a timeline did to the dry grams and plates of its container, in an account each. It is
// read off the same fold that says how containers stand, so that it cannot tell anything else. Pure.
import { fold } from '../stock/rules.ts';
import { nothingGrams, type Base, type Entry } from '../stock/stand.ts';

export const accounts = [
  /** Came into the lab. */
  'CAME_IN',
  /** Portions and plates, out of a container. */
  'TAKEN',
  /** The same, into the container that was filled. */
  'FILLED',
  /** Into a column. */
  'PACKED',
  /** Poured together: out of one, into the other. */
  'COMBINED',
  'USED_UP',
  'WRITTEN_OFF',
  'LOST',
  'SPENT_ON_CHECKS',
  /** What a count found more or less than the book. */
  'COUNTED',
] as const;
export type Account = (typeof accounts)[number];

/** A container and what stands of its timeline. */
export interface Kept {
  readonly container: string;
  readonly base: Base;
  readonly entries: readonly Entry[];
}

/** What one event did to one container: more is positive, less negative. */
export interface Line {
  readonly event: string;
  readonly at: Date;
  readonly container: string;
  readonly account: Account;
  readonly dryGrams: number;
  /** Null for what holds no plates. */
  readonly plates: number | null;
  /** Of what came in: grams with the water it was booked with. */
  readonly asReceivedGrams: number | null;
  readonly why: string | null;
  /** The container came in as it is, and was not filled from another. */
  readonly isStock: boolean;
}

const accountOf: Partial<Record<Entry['type'], Account>> = {
  CAME_IN: 'CAME_IN',
  PORTION_TAKEN: 'TAKEN',
  PLATES_TAKEN: 'TAKEN',
  COLUMN_PACKED: 'PACKED',
  COMBINED: 'COMBINED',
  USED_UP: 'USED_UP',
  DISCARDED: 'WRITTEN_OFF',
  LOST: 'LOST',
  SPENT_ON_CHECK: 'SPENT_ON_CHECKS',
  COUNTED: 'COUNTED',
};

/**
 * In the order of what happened to it. A column has none: what was packed is used. Throws on a timeline that cannot be
 * true: none is stored.
 */
export function linesOf({ container, base, entries }: Kept): Line[] {
  const lines: Line[] = [];
  if (base.kind === 'COLUMN') return lines;
  let isStock = false;
  const { impossible } = fold(base, entries, (entry, before, after) => {
    if (before === null) isStock = entry.type === 'CAME_IN';
    const dryGrams = after.dryGrams - (before?.dryGrams ?? 0);
    const plates = after.plates === null ? null : after.plates - (before?.plates ?? 0);
    const outOf = accountOf[entry.type];
    if (outOf === undefined || (dryGrams === 0 && (plates ?? 0) === 0)) return;
    const account = outOf === 'TAKEN' && entry.role === 'filled' ? 'FILLED' : outOf;
    const line = (of: Account, grams: number, why: string | null): Line => ({
      ...{ event: entry.id, at: entry.at, container, account: of, dryGrams: grams, plates, why, isStock },
      asReceivedGrams: entry.type === 'CAME_IN' ? grams * (1 + entry.detail.bookedWaterFraction) : null,
    });
    // What was poured over and did not arrive stayed behind in the empty container.
    const poured =
      entry.type === 'COMBINED' && entry.role === 'own' && plates === null ? -(entry.dryGrams ?? 0) : dryGrams;
    if (Math.abs(dryGrams - poured) <= nothingGrams) lines.push(line(account, dryGrams, whyOf(entry)));
    else lines.push(line(account, poured, null), line('LOST', dryGrams - poured, 'left behind'));
  });
  if (impossible) throw new Error(`the timeline of ${container} cannot be true: ${impossible.why}`);
  return lines;
}

function whyOf(entry: Entry): string | null {
  if ('why' in entry.detail) return entry.detail.why;
  return entry.type === 'SPENT_ON_CHECK' ? entry.detail.what : null;
}

/** Lines added up, in one unit: dry grams, or plates. */
export interface Sum {
  readonly isStock: boolean;
  readonly account: Account;
  readonly amount: number;
}

/** What became of a stock over a time. `opening + cameIn + filled - used - writtenOff - lost - spentOnChecks + counted` is left. */
export interface Figures {
  opening: number;
  cameIn: number;
  /** Poured or laid into it out of other containers. */
  filled: number;
  taken: number;
  packed: number;
  usedUp: number;
  /** Poured back into it, less what was poured out of it. */
  putBack: number;
  /** All that left it for use, less what was put back: taken, packed, used up. */
  used: number;
  writtenOff: number;
  lost: number;
  spentOnChecks: number;
  counted: number;
  onHand: number;
}

/** Drums and boxes as they came in; what was taken out of them and stands in the lab still; both together. */
export const places = ['SHELF', 'TAKEN_OUT', 'WHOLE'] as const;
export type Place = (typeof places)[number];

/** What became of a place over the time of the sums, which began with an opening amount. */
export function figuresOf(place: Place, opening: number, sums: Iterable<Sum>): Figures {
  const by = Object.fromEntries(accounts.map((account) => [account, 0])) as Record<Account, number>;
  let onHand = opening;
  for (const { isStock, account, amount } of sums) {
    if (place !== 'WHOLE' && isStock !== (place === 'SHELF')) continue;
    by[account] += amount;
    onHand += amount;
  }
  // Over all, what was taken and filled again is only elsewhere.
  const filled = place === 'WHOLE' ? 0 : by.FILLED;
  const taken = zero(-by.TAKEN - (place === 'WHOLE' ? by.FILLED : 0));
  const [packed, usedUp, putBack] = [zero(-by.PACKED), zero(-by.USED_UP), zero(by.COMBINED)];
  return {
    ...{ opening: zero(opening), cameIn: by.CAME_IN, filled, taken, packed, usedUp, putBack },
    used: zero(taken + packed + usedUp - putBack),
    writtenOff: zero(-by.WRITTEN_OFF),
    lost: zero(-by.LOST),
    spentOnChecks: zero(-by.SPENT_ON_CHECKS),
    counted: zero(by.COUNTED),
    onHand: zero(onHand),
  };
}

/** What rounding left of nothing is nothing. */
const zero = (amount: number): number => (Math.abs(amount) < 1e-9 ? 0 : amount);

/** What each week used up of a stock: what came back is taken off the weeks before it, so that none is below nothing. */
export function usedByWeek(net: readonly number[]): number[] {
  const used = net.map(zero);
  for (let week = used.length - 1; week > 0; week -= 1) {
    const came = used[week] ?? 0;
    if (came >= 0) continue;
    used[week] = 0;
    used[week - 1] = (used[week - 1] ?? 0) + came;
  }
  if (used.length > 0) used[0] = Math.max(0, used[0] ?? 0);
  return used;
}
