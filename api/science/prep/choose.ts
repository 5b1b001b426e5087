// Which containers serve a need: one lot, good ones before such that must be dried, the oldest first. Pure.

export interface Candidate {
  readonly containerId: string;
  readonly lotId: string;
  readonly lotReceivedAt: number;
  /** After this it wants a retest; null when none is given. */
  readonly retestAt: number | null;
  readonly cameInAt: number;
  readonly isOpen: boolean;
  /** What is free of it: dry grams, or plates. */
  readonly free: number;
  /** Within the limit at the time of the need, as it stands. */
  readonly isGood: boolean;
  /** It may go to an oven, and a recipe is known. */
  readonly canDry: boolean;
  /** Prepared already: pre-washed and dry again, say. */
  readonly isPrepared: boolean;
  /** Its lot was rejected: never taken. */
  readonly isRejected?: boolean;
}

export interface Wanted {
  readonly amount: number;
  readonly at: number;
  /** Only of this lot. */
  readonly lotId: string | null;
}

export interface Share {
  readonly containerId: string;
  readonly amount: number;
  /** It must be dried first. */
  readonly mustDry: boolean;
}

export type Choice =
  | { readonly shares: readonly Share[]; readonly lotId: string }
  | { readonly shares: null; readonly free: number; readonly usable: number; readonly why: Lack };

/** Nothing of it there; not enough in one lot; enough, but too wet and never to be dried; past its retest date; rejected. */
export type Lack = 'none' | 'notEnough' | 'tooWet' | 'retest' | 'rejected';

/** Grams are sums of floats. */
const nothing = 1e-6;

const usable = ({ isGood, canDry, free }: Candidate): boolean => (isGood || canDry) && free > nothing;

/** Prepared, then good, then opened ones, then the oldest. */
const order = (a: Candidate, b: Candidate): number =>
  Number(b.isPrepared) - Number(a.isPrepared) ||
  Number(b.isGood) - Number(a.isGood) ||
  Number(b.isOpen) - Number(a.isOpen) ||
  a.cameInAt - b.cameInAt ||
  (a.containerId < b.containerId ? -1 : 1);

/** From the first in order; from a single one where that is enough and no worse. */
function sharesOf(some: readonly Candidate[], amount: number): Share[] {
  const single = some.find((one) => one.free >= amount - nothing && one.isGood === some[0]?.isGood);
  const shares: Share[] = [];
  let left = amount;
  for (const { containerId, free, isGood } of single ? [single] : some) {
    const taken = Math.min(left, free);
    if (left > nothing && taken > nothing) shares.push({ containerId, amount: taken, mustDry: !isGood });
    left -= taken;
  }
  return shares;
}

const sum = (some: readonly Candidate[]): number => some.reduce((total, { free }) => total + free, 0);

/** The oldest lot that has enough; of a lot all that is good before anything is dried. */
export function chosen(candidates: readonly Candidate[], { amount, at, lotId }: Wanted): Choice {
  const ofLot = candidates.filter((one) => lotId === null || one.lotId === lotId);
  const there = ofLot.filter(({ free }) => free > nothing);
  const all = there.filter(({ isRejected }) => !isRejected);
  const inDate = all.filter(({ retestAt }) => lotId !== null || retestAt === null || retestAt > at);
  const lots = new Map<string, Candidate[]>();
  for (const one of inDate.filter(usable)) lots.set(one.lotId, [...(lots.get(one.lotId) ?? []), one]);
  const enough = [...lots.values()].filter((some) => sum(some) >= amount - nothing);
  const goodIn = (some: readonly Candidate[]) => sum(some.filter(({ isGood }) => isGood)) >= amount - nothing;
  const [best] = enough.sort(
    (a, b) =>
      Number(goodIn(b)) - Number(goodIn(a)) ||
      (a[0]?.lotReceivedAt ?? 0) - (b[0]?.lotReceivedAt ?? 0) ||
      ((a[0]?.lotId ?? '') < (b[0]?.lotId ?? '') ? -1 : 1),
  );
  if (best) {
    const some = [...best].sort(order);
    const good = some.filter(({ isGood }) => isGood);
    return { shares: sharesOf(sum(good) >= amount - nothing ? good : some, amount), lotId: best[0]?.lotId ?? '' };
  }
  const most = Math.max(0, ...[...lots.values()].map(sum));
  const why: Lack =
    all.length === 0
      ? there.length > 0
        ? 'rejected'
        : 'none'
      : sum(all) >= amount - nothing && inDate.length === 0
        ? 'retest'
        : sum(inDate) >= amount - nothing && sum(inDate.filter(usable)) < amount - nothing
          ? 'tooWet'
          : 'notEnough';
  return { shares: null, free: sum(all), usable: most, why };
}
