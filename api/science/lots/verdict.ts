// Does a new lot behave like the last? One verdict for each quantity, and one for the lot.
import { differenceOf, type Difference, type PlateValue } from './difference.ts';
import { equivalenceOf } from './equivalence.ts';
import { platesNeeded } from './power.ts';

/** Rf; an invented default, to be shown as such and set by the lab. */
export const usualMargin = 0.03;
/** To what a spot is read, Rf. */
export const usualReadingStep = 0.01;
/** Fewer plates of a lot give no verdict, whatever they say; an invented default. */
export const fewestPlates = 3;

export type Outcome = 'accepted' | 'rejected' | 'too few';

export interface Verdict {
  readonly outcome: Outcome;
  readonly difference: number | null;
  /** Of a plate within tank and lot. */
  readonly sd: number | null;
  /** 90 %. */
  readonly low: number | null;
  readonly high: number | null;
  readonly p: number | null;
  readonly plates: Difference['plates'];
  /**
   * Further plates of each lot for a chance of 80 % of a verdict: were the lots as far apart as they look, and were they the
   * same. Null when there is a verdict, no spread to reckon with, or no number of plates would do.
   */
  readonly more: number | null;
  readonly moreIfSame: number | null;
}

export function verdictOf(
  plates: readonly PlateValue[],
  { margin = usualMargin, readingStep = usualReadingStep } = {},
): Verdict {
  const count = (lot: PlateValue['lot']): number => plates.filter((plate) => plate.lot === lot).length;
  const counts = { old: count('old'), new: count('new') };
  const found = differenceOf(plates, readingStep);
  if (!found) {
    const nothing = { difference: null, sd: null, low: null, high: null, p: null, more: null, moreIfSame: null };
    return { outcome: 'too few', ...nothing, plates: counts };
  }
  const { difference, sd, standardError, tanks } = found;
  const { low, high, p, within, beyond } = equivalenceOf(found, margin);
  const enough = Math.min(counts.old, counts.new) >= fewestPlates;
  const outcome = !enough ? 'too few' : within ? 'accepted' : beyond ? 'rejected' : 'too few';
  // Plates of each lot that would give this standard error.
  const each = 2 * (sd / standardError) ** 2;
  const more = (apart: number): number | null => {
    if (outcome !== 'too few') return null;
    const needed = platesNeeded({ difference: apart, sd, margin, tanksPerPlate: tanks / each });
    return needed === null
      ? null
      : Math.max(1, Math.ceil(needed - each), fewestPlates - Math.min(counts.old, counts.new));
  };
  return { outcome, difference, sd, low, high, p, plates: counts, more: more(difference), moreIfSame: more(0) };
}

/**
 * A lot is accepted when every quantity is, which needs no correction for their number (R. L. Berger, Technometrics 24
 * (1982) 295), rejected when one is, else undecided.
 */
export function lotOutcome(verdicts: readonly Pick<Verdict, 'outcome'>[]): Outcome {
  if (verdicts.some(({ outcome }) => outcome === 'rejected')) return 'rejected';
  return verdicts.length > 0 && verdicts.every(({ outcome }) => outcome === 'accepted') ? 'accepted' : 'too few';
}
