// What moved from one plan to the next: orders that came, went, or are of other packs or for another week. Pure.
import { daySaid } from './weeks.ts';

/** An order that is still to be made by a plan. */
export interface Ordered {
  readonly offerId: string;
  /** The Monday of its week. */
  readonly monday: string;
  /** The last day that is in time. */
  readonly by: string;
  readonly packs: number;
}

export interface Moved {
  readonly what: 'CAME' | 'WENT' | 'CHANGED';
  readonly offerId: string;
  readonly before: Ordered | null;
  readonly after: Ordered | null;
}

const byWeek = (a: Ordered, b: Ordered): number => (a.monday < b.monday ? -1 : a.monday > b.monday ? 1 : 0);

/** Of one offer: orders of one week belong together; what is left does so in its order of time. */
function movedOf(offerId: string, before: readonly Ordered[], after: readonly Ordered[]): Moved[] {
  const isIn = (some: readonly Ordered[]) => (one: Ordered) => some.some(({ monday }) => monday === one.monday);
  const stayed = before.flatMap((old): Moved[] => {
    const now = after.find(({ monday }) => monday === old.monday);
    return now && now.packs !== old.packs ? [{ what: 'CHANGED', offerId, before: old, after: now }] : [];
  });
  const gone = before.filter((one) => !isIn(after)(one)).sort(byWeek);
  const come = after.filter((one) => !isIn(before)(one)).sort(byWeek);
  const others = Array.from({ length: Math.max(gone.length, come.length) }, (_, at): Moved => {
    const [old, now] = [gone[at] ?? null, come[at] ?? null];
    return { what: old === null ? 'CAME' : now === null ? 'WENT' : 'CHANGED', offerId, before: old, after: now };
  });
  return [...stayed, ...others];
}

/** The soonest first. */
export function movedBetween(before: readonly Ordered[], after: readonly Ordered[]): Moved[] {
  const of = (some: readonly Ordered[], id: string) => some.filter(({ offerId }) => offerId === id);
  const offers = [...new Set([...after, ...before].map(({ offerId }) => offerId))];
  const dayOf = (one: Moved) => (one.after ?? one.before)?.monday ?? '';
  return offers
    .flatMap((id) => movedOf(id, of(before, id), of(after, id)))
    .sort((a, b) => (dayOf(a) < dayOf(b) ? -1 : dayOf(a) > dayOf(b) ? 1 : 0));
}

/** `3 packs of 5 kg instead of 2, by 13 March instead of 6 March: …`; what it is of comes behind. */
export function movedSentence(
  { before, after }: Moved,
  packsText: (packs: number) => string,
  item: string,
  today: string,
): string {
  const day = (one: Ordered) => daySaid(one.by, today);
  if (before === null) return after === null ? '' : `New: ${packsText(after.packs)} of ${item} by ${day(after)}.`;
  if (after === null) return `No more: ${packsText(before.packs)} of ${item} by ${day(before)}.`;
  const packs = packsText(after.packs) + (after.packs === before.packs ? '' : ` instead of ${before.packs}`);
  const by = day(after) + (after.monday === before.monday ? '' : ` instead of ${day(before)}`);
  return `Now ${packs} of ${item} by ${by}.`;
}
