// The incomplete beta function: Student's, Fisher's and the negative binomial's chances.
// Continued fraction: NIST Digital Library of Mathematical Functions 8.17.22, by Lentz's method.
import { nonZero } from './gamma.ts';
import { binomialTerm } from './saddle.ts';

/** I_x(a, b) and I_y(b, a) with y = 1 − x, each with its own digits; a, b > 0. */
export function betaShares(a: number, b: number, x: number, y: number): readonly [below: number, above: number] {
  if (x <= 0) return [0, 1];
  if (y <= 0) return [1, 0];
  if (x > (a + 1) / (a + b + 2)) {
    const [below, above] = betaShares(b, a, y, x);
    return [above, below];
  }
  let c = 1;
  let d = 1 / nonZero(1 - ((a + b) * x) / (a + 1));
  let h = d;
  for (let m = 1; m < 1e6; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / nonZero(1 + even * d);
    c = nonZero(1 + even / c);
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / nonZero(1 + odd * d);
    c = nonZero(1 + odd / c);
    h *= d * c;
    if (Math.abs(d * c - 1) < 4e-16) break;
  }
  // x^a y^b / (a B(a, b))
  const below = ((binomialTerm(a, a + b, x, y) * b) / (a + b)) * h;
  return [below, 1 - below];
}
