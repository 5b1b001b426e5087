// Two one-sided tests: is a difference surely within a margin, surely beyond it, or neither?
// D. J. Schuirmann, J. Pharmacokinet. Biopharm. 15 (1987) 657: each side at 5 %, which is the 90 % interval within the margin.
import { studentBelow, studentQuantile } from '../distributions/continuous.ts';
import type { Difference } from './difference.ts';

/** Chance of accepting a lot that differs by the margin, and of rejecting one that does. */
export const usualRisk = 0.05;

export interface Equivalence {
  readonly low: number;
  readonly high: number;
  /** Of the two tests the one that passes less easily. */
  readonly p: number;
  readonly within: boolean;
  readonly beyond: boolean;
}

export function equivalenceOf(
  { difference, standardError, freedom }: Pick<Difference, 'difference' | 'standardError' | 'freedom'>,
  margin: number,
  risk = usualRisk,
): Equivalence {
  const half = studentQuantile(1 - risk, freedom) * standardError;
  const low = difference - half;
  const high = difference + half;
  return {
    low,
    high,
    p: studentBelow((Math.abs(difference) - margin) / standardError, freedom),
    within: low > -margin && high < margin,
    beyond: low > margin || high < -margin,
  };
}
