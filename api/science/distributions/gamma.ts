// The incomplete gamma function: chi-square and Poisson chances.
// Series and continued fraction: NIST Digital Library of Mathematical Functions 8.7.1 and 8.9.2.
import { poissonTerm } from './saddle.ts';

const tiny = 1e-300;
const precision = 1e-16;

/** P(a, x) and Q(a, x) = 1 − P, each with its own digits; a > 0, x ≥ 0. */
export function gammaShares(a: number, x: number): readonly [below: number, above: number] {
  if (x <= 0) return [0, 1];
  if (x === Infinity) return [1, 0];
  const term = poissonTerm(a, x);
  if (x < a + 1) {
    let sum = 1;
    let part = 1;
    for (let n = a + 1; part > precision * sum; n++) {
      part *= x / n;
      sum += part;
    }
    const below = term * sum;
    return [below, 1 - below];
  }
  // Lentz's method.
  let b = x + 1 - a;
  let c = 1 / tiny;
  let d = 1 / b;
  let h = d;
  for (let i = 1; i < 1e6; i++) {
    const an = -i * (i - a);
    b += 2;
    d = 1 / nonZero(an * d + b);
    c = nonZero(b + an / c);
    h *= d * c;
    if (Math.abs(d * c - 1) < 4 * precision) break;
  }
  const above = term * a * h;
  return [1 - above, above];
}

export const nonZero = (value: number): number => (Math.abs(value) < tiny ? tiny : value);

/** P(X ≤ x) of a chi-square with so many degrees of freedom. */
export const chiSquareBelow = (x: number, freedom: number): number => gammaShares(freedom / 2, x / 2)[0];
