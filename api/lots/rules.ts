// The ledger: what every event of a timeline did to the dry grams and plates of its container, in an account each. It is
// read off the same fold that says how containers stand, so that it cannot tell anything else. Pure.
import { fold } from '../stock/rules.ts';
import { nothingGrams, type Base, type Entry } from '../stock/stand.ts';

export const accounts = [
  /** Came into the lab. */
  'received',
  /** Portions and plates: out of one container, into another. */
  'taken',
  /** Columns, as taken. */
  'packed',
  /** Poured together: out of one, into the other. */
  'combined',
  'used up',
  'written off',
  'lost',
  'spent on checks',
  /** What a count found more or less than the book. */
  'counted',
] as const;
export type Account = (typeof accounts)[number];

/** A container and what stands of its timeline. */
export interface Kept {
  readonly container: string;
  readonly item: string;
  readonly lot: string;
  readonly base: Base;
  readonly entries: readonly Entry[];
}

/** What one event did to one container: more is positive, less negative. */
export interface Line {
  readonly event: string;
  readonly at: Date;
  readonly container: string;
  readonly item: string;
  readonly lot: string;
  readonly account: Account;
  readonly dryGrams: number;
  /** Null for what holds no plates. */
  readonly plates: number | null;
  readonly why: string | null;
  /** The container came in as it is, and was not filled from another: what leaves it leaves the shelf. */
  readonly isStock: boolean;
}

const accountOf: Partial<Record<Entry['type'], Account>> = {
  CAME_IN: 'received',
  PORTION_TAKEN: 'taken',
  PLATES_TAKEN: 'taken',
  COLUMN_PACKED: 'packed',
  COMBINED: 'combined',
  USED_UP: 'used up',
  DISCARDED: 'written off',
  LOST: 'lost',
  SPENT_ON_CHECK: 'spent on checks',
  COUNTED: 'counted',
};

/** In the order of what happened, container by container. Throws on a timeline that cannot be true: none is stored. */
export function linesOf({ container, item, lot, base, entries }: Kept): Line[] {
  const lines: Line[] = [];
  let isStock = false;
  const { impossible } = fold(base, entries, (entry, before, after) => {
    if (before === null) isStock = entry.type === 'CAME_IN';
    const dryGrams = after.dryGrams - (before?.dryGrams ?? 0);
    const plates = after.plates === null ? null : after.plates - (before?.plates ?? 0);
    const account = accountOf[entry.type];
    if (account === undefined || (dryGrams === 0 && (plates ?? 0) === 0)) return;
    const line = (of: Account, grams: number, why: string | null): Line => ({
      ...{ event: entry.id, at: entry.at, container, item, lot, account: of },
      ...{ dryGrams: grams, plates, why, isStock },
    });
    // What was poured over and did not arrive stayed behind in the empty container.
    const poured =
      entry.type === 'COMBINED' && entry.role === 'own' && plates === null ? -(entry.dryGrams ?? 0) : dryGrams;
    if (Math.abs(dryGrams - poured) <= nothingGrams) lines.push(line(account, dryGrams, whyOf(entry)));
    else lines.push(line(account, poured, null), line('lost', dryGrams - poured, 'left behind'));
  });
  if (impossible) throw new Error(`the timeline of ${container} cannot be true: ${impossible.why}`);
  return lines;
}

function whyOf(entry: Entry): string | null {
  if ('why' in entry.detail) return entry.detail.why;
  return entry.type === 'SPENT_ON_CHECK' ? entry.detail.what : null;
}

export interface Week {
  readonly item: string;
  readonly lot: string;
  readonly week: string;
  /** Dry grams in all containers of the lot before and after. */
  readonly openingDryGrams: number;
  readonly closingDryGrams: number;
  /** Dry grams by account; moves within the lot add up to nothing. */
  readonly dryGrams: Readonly<Record<Account, number>>;
  /** What left the shelf, less what came back to it: drums and boxes that came in, counts apart. */
  readonly usedDryGrams: number;
  readonly usedPlates: number;
  /** The lines behind the figures. */
  readonly lines: readonly Line[];
}

/** Weeks with anything in them, by item, lot and week; `weekOf` names the lab's week so that names sort by time. */
export function weeksOf(lines: readonly Line[], weekOf: (at: Date) => string): Week[] {
  const lots = grouped(lines, ({ item, lot }) => JSON.stringify([item, lot]));
  return [...lots.values()].flatMap((ofLot) => {
    const named = [...grouped(ofLot, ({ at }) => weekOf(at))].sort(([one], [other]) => (one < other ? -1 : 1));
    let openingDryGrams = 0;
    return named.map(([week, within]): Week => {
      const { item = '', lot = '' } = within[0] ?? {};
      const dryGrams = Object.fromEntries(accounts.map((account) => [account, 0])) as Record<Account, number>;
      let [usedDryGrams, usedPlates, closingDryGrams] = [0, 0, openingDryGrams];
      for (const line of within) {
        dryGrams[line.account] += line.dryGrams;
        closingDryGrams += line.dryGrams;
        if (!line.isStock || line.account === 'received' || line.account === 'counted') continue;
        usedDryGrams -= line.dryGrams;
        usedPlates -= line.plates ?? 0;
      }
      const told = {
        item,
        lot,
        week,
        openingDryGrams,
        closingDryGrams,
        dryGrams,
        usedDryGrams,
        usedPlates,
        lines: within,
      };
      openingDryGrams = closingDryGrams;
      return told;
    });
  });
}

function grouped(lines: readonly Line[], keyOf: (line: Line) => string): Map<string, Line[]> {
  const groups = new Map<string, Line[]>();
  for (const line of lines) {
    const key = keyOf(line);
    const group = groups.get(key);
    if (group) group.push(line);
    else groups.set(key, [line]);
  }
  return groups;
}
