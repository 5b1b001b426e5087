// Where shelf and book differ, and what the book is to be told of it. Plain data.
import { typedNumber } from '../say/water.ts';
import type { OnShelf } from './questions.ts';

/** What was typed of one that was found; nothing where it was only seen. */
export interface Seen {
  label: string;
  /** Grams of sorbent, grams with the vessel, or plates. */
  amount: string;
  isGross: boolean;
  /** Leave the book as it is, although they differ. */
  leave: boolean;
}

/** What becomes of one that was not found; LEFT writes nothing. */
export type Became = 'LEFT' | 'NOT_FOUND' | 'USED_UP' | 'MOVED';
export interface Missed {
  as: Became;
  room: string;
  note: string;
}

export interface Differences {
  /** Found, and the book has it here. */
  asBooked: OnShelf[];
  /** Found, and the book has it in another room. */
  elsewhere: OnShelf[];
  /** Found, and by the book nothing is left in it. */
  finished: OnShelf[];
  /** The book has it here, and nobody found it. */
  missing: OnShelf[];
}

/** `found` are the containers of the codes that were seen; `book` is what the book has in the room. */
export function differences(room: string, book: readonly OnShelf[], found: readonly OnShelf[]): Differences {
  const seen = new Set(found.map(({ label }) => label));
  const isHere = (of: OnShelf): boolean => of.room.name.toLowerCase() === room.toLowerCase();
  const inUse = found.filter(({ finishedAt }) => finishedAt === null);
  return {
    asBooked: inUse.filter(isHere),
    elsewhere: inUse.filter((of) => !isHere(of)),
    finished: found.filter(({ finishedAt }) => finishedAt !== null),
    missing: book.filter(({ label, finishedAt }) => finishedAt === null && !seen.has(label)),
  };
}

export interface ToTell {
  found: { label: string; grams?: number; plates?: number; grossGrams?: number }[];
  missed: { label: string; as: Exclude<Became, 'LEFT'>; room?: string; note?: string }[];
  /** What is wrong, by label, said as what would be right. */
  wrong: Record<string, string>;
}

function amountOf({ amount, isGross }: Seen, { kind }: OnShelf): Record<string, number> | null | 'wrong' {
  if (amount.trim() === '') return null;
  const value = typedNumber(amount);
  if (value === null || value < 0) return 'wrong';
  if (kind === 'PLATE_BOX') return Number.isInteger(value) ? { plates: value } : 'wrong';
  return isGross ? { grossGrams: value } : { grams: value };
}

/** What is told: only what differs or was counted, and was not left as it is. */
export function toTell(
  { asBooked, elsewhere, finished, missing }: Differences,
  seen: readonly Seen[],
  missedAs: Readonly<Record<string, Missed>>,
): ToTell {
  const told: ToTell = { found: [], missed: [], wrong: {} };
  const bySeen = new Map(seen.map((each) => [each.label, each]));
  for (const of of [...asBooked, ...elsewhere, ...finished]) {
    const said = bySeen.get(of.label);
    if (!said || said.leave) continue;
    const amount = amountOf(said, of);
    if (amount === 'wrong')
      told.wrong[of.label] = of.kind === 'PLATE_BOX' ? 'a whole number of plates' : 'grams, such as 240 or 12.5';
    else if (amount || !asBooked.includes(of)) told.found.push({ label: of.label, ...amount });
  }
  for (const { label } of missing) {
    const { as, room, note } = missedAs[label] ?? { as: 'LEFT', room: '', note: '' };
    if (as === 'LEFT') continue;
    if (as === 'MOVED' && room === '') told.wrong[label] = 'the room it was moved to';
    else
      told.missed.push({
        label,
        as,
        ...(as === 'MOVED' ? { room } : {}),
        ...(note.trim() === '' ? {} : { note: note.trim() }),
      });
  }
  return told;
}

/** The sum of it in one line: "12 as the book says, 1 of another room, 2 not found". */
export function sumWords({ asBooked, elsewhere, finished, missing }: Differences): string {
  const parts = [
    `${asBooked.length} as the book says`,
    elsewhere.length > 0 ? `${elsewhere.length} of another room` : '',
    finished.length > 0 ? `${finished.length} used up by the book` : '',
    `${missing.length} not found`,
  ];
  return parts.filter((part) => part !== '').join(', ');
}
