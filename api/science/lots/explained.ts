// Is it the lot, the plate, the person or the air? The share of a retention's variance that goes with each explanation,
// were all others held still, with its interval; and which explanations the data cannot tell apart.
import { fisherBelow, fisherQuantile, noncentralFisherBelow } from '../distributions/continuous.ts';
import { rootBetween } from '../distributions/root.ts';
import type { Estimate } from './one-way.ts';
import { fewestForShares, toldOf, type Told } from './spread.ts';
import { leastSquares, type LeastSquares } from './squares.ts';

/** One value a plate: a figure (water, humidity, hours) or a name (lot, user). */
export interface Explanation {
  readonly name: string;
  readonly values: readonly number[] | readonly string[];
}

export interface Explained {
  readonly name: string;
  readonly told: Told;
  /** Of the whole variance when nothing else is asked. */
  readonly alone: number;
  /** Of the whole variance: what it would make the values spread, were all others held still. */
  readonly share: Estimate;
  /** Chance of as much from nothing. */
  readonly p: number;
  /** When the data cannot tell: the explanations it goes together with in them. */
  readonly togetherWith: readonly string[];
}

export interface Explanations {
  readonly plates: number;
  readonly each: readonly Explained[];
  /** Explained, but by no single one alone: the data cannot tell by which. */
  readonly shared: number;
  /** What none of them explains: from plate to plate. */
  readonly unexplained: number;
}

/** Rows left for the spread that nothing explains. */
const fewestLeft = 8;

/** Null when the values do not differ, or explanations have as many levels as there are plates. */
export function explainedBy(
  values: readonly number[],
  explanations: readonly Explanation[],
  confidence = 0.9,
): Explanations | null {
  const n = values.length;
  const blocks = explanations.map(({ values: given }) => columnsOf(given));
  const without = (...left: number[]): LeastSquares =>
    leastSquares(
      values,
      blocks.flatMap((block, i) => (left.includes(i) ? [] : block)),
    );
  const all = without();
  const freedom = n - all.rank;
  const whole = leastSquares(values, []).rest;
  if (!(whole > 0) || freedom < 1) return null;
  const square = all.rest / freedom;
  const enough = n >= fewestForShares && freedom >= fewestLeft;

  const each = explanations.map(({ name }, i) => {
    const others = without(i);
    const columns = all.rank - others.rank;
    // Noncentrality of what the others explain.
    const beside = square > 0 ? (whole - others.rest) / square : 0;
    const alone = 1 - leastSquares(values, blocks[i]!).rest / whole;
    const hidden = hiddenBy(blocks[i]!, [i]);
    if (columns === 0) {
      // Its every column is one of the others': anything up to what it explains alone.
      const onlyIt = leastSquares(values, blocks[i]!);
      const left = n - onlyIt.rank;
      const f =
        left < 1 || !(onlyIt.rest > 0)
          ? Infinity
          : (whole - onlyIt.rest) / (onlyIt.rank - 1 || 1) / (onlyIt.rest / left);
      const { high } = shareInterval(f, onlyIt.rank - 1 || 1, Math.max(1, left), n, confidence);
      const share = { value: 0, low: 0, high };
      return { name, told: toldOf(share, enough), alone, share, p: 1, own: 0, togetherWith: companions(i, hidden) };
    }
    const sum = others.rest - all.rest;
    const f = square > 0 ? sum / columns / square : Infinity;
    const own = Math.max(0, (sum - columns * square) / (whole + square));
    const { low, high } = shareInterval(f, columns, freedom, n + beside, confidence);
    const share = {
      value: Math.min(1, own * hidden),
      low: Math.min(1, low * hidden),
      high: Math.min(1, high * hidden),
    };
    const told = toldOf(share, enough);
    const togetherWith = told === 'cannot tell' ? companions(i, hidden) : [];
    return {
      name,
      told,
      alone,
      share,
      p: f === Infinity ? 0 : 1 - fisherBelow(f, columns, freedom),
      own,
      togetherWith,
    };
  });

  /** How many times more a block of columns spreads than what the others leave of it. */
  function hiddenBy(block: readonly number[][], left: readonly number[]): number {
    const others = blocks.flatMap((other, j) => (left.includes(j) ? [] : other));
    const sum = (columns: readonly number[][]): number =>
      block.reduce((total, column) => total + leastSquares(column, columns).rest, 0);
    return sum([]) / sum(others);
  }

  /** Those without which it would be far less hidden. */
  function companions(i: number, hidden: number): string[] {
    return explanations.flatMap(({ name }, j) => (j !== i && hiddenBy(blocks[i]!, [i, j]) < hidden / 2 ? [name] : []));
  }

  const unexplained = Math.min(1, (n * square) / (whole + square));
  const owned = each.reduce((sum, { own }) => sum + own, 0);
  return {
    plates: n,
    each: each.map(({ own: _, ...one }) => one),
    shared: Math.max(0, 1 - unexplained - owned),
    unexplained,
  };
}

/**
 * The noncentralities λ that would show this F are the interval (J. H. Steiger, Psychol. Methods 9 (2004) 164); a share
 * λ/(λ + n + what the others explain) of the whole.
 */
function shareInterval(f: number, columns: number, left: number, besides: number, confidence: number) {
  if (f === Infinity) return { low: 1, high: 1 };
  const tail = (1 - confidence) / 2;
  const noncentrality = (chance: number, shown: number): number => {
    const excess = (lambda: number): number => chance - noncentralFisherBelow(shown, columns, left, lambda);
    if (excess(0) >= 0) return 0;
    let top = 4 + 2 * columns * shown;
    while (excess(top) < 0) top *= 2;
    return rootBetween(excess, 0, top, 1e-7);
  };
  const share = (lambda: number): number => lambda / (lambda + besides);
  // An F by luck far below what chance shows on average would prove nought; the high end takes no less than the median.
  const least = Math.max(f, fisherQuantile(0.5, columns, left));
  return { low: share(noncentrality(1 - tail, f)), high: share(noncentrality(tail, least)) };
}

function columnsOf(given: Explanation['values']): number[][] {
  const names = [...new Set<number | string>(given)];
  if (typeof given[0] === 'number') return [given.map(Number)];
  return names.slice(1).map((name) => given.map((value) => (value === name ? 1 : 0)));
}
