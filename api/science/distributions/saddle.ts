// Binomial and Poisson terms for real arguments, exact to the last few digits however large they are.
// Saddle-point expansion: C. Loader, Fast and accurate computation of binomial probabilities, 2000.

const halfLogTwoPi = 0.5 * Math.log(2 * Math.PI);

/** ln Γ(x + 1) less Stirling's formula. Below 15 the product of the recurrence is taken off a larger argument. */
function stirlingError(x: number): number {
  let n = x;
  let shift = 0;
  while (n < 15) {
    n += 1;
    // δ(n−1) − δ(n) = (n − ½) ln(n/(n−1)) − 1, with the term at 0 as its limit.
    shift += n === 1 ? 1 - halfLogTwoPi : (n - 0.5) * Math.log1p(1 / (n - 1)) - 1;
  }
  const s = 1 / (n * n);
  return shift + (1 / 12 - s * (1 / 360 - s * (1 / 1260 - s * (1 / 1680 - s * (1 / 1188 - (s * 691) / 360360))))) / n;
}

/** x ln(x/m) + m − x without cancellation. */
function deviance(x: number, m: number): number {
  if (x === 0) return m;
  if (Math.abs(x - m) > 0.1 * (x + m)) return x * Math.log(x / m) + m - x;
  const v = (x - m) / (x + m);
  let sum = (x - m) * v;
  let term = 2 * x * v;
  for (let j = 3; ; j += 2) {
    term *= v * v;
    const next = sum + term / j;
    if (next === sum) return sum;
    sum = next;
  }
}

/** ln Γ(x), x > 0. */
export function logGamma(x: number): number {
  return stirlingError(x) + (x + 0.5) * Math.log(x) - x + halfLogTwoPi - Math.log(x);
}

/** m^x e^−m / Γ(x + 1), x ≥ 0. */
export function poissonTerm(x: number, m: number): number {
  if (m === 0) return x === 0 ? 1 : 0;
  if (x === 0) return Math.exp(-m);
  return Math.exp(-stirlingError(x) - deviance(x, m)) / Math.sqrt(2 * Math.PI * x);
}

/** Γ(n + 1)/(Γ(x + 1) Γ(n − x + 1)) p^x q^(n − x) with q = 1 − p, given apart so that neither loses its digits. */
export function binomialTerm(x: number, n: number, p: number, q: number): number {
  if (p === 0) return x === 0 ? 1 : 0;
  if (q === 0) return x === n ? 1 : 0;
  const y = n - x;
  if (x === 0) return Math.exp(n * (p < 0.1 ? Math.log1p(-p) : Math.log(q)));
  if (y === 0) return Math.exp(n * (q < 0.1 ? Math.log1p(-q) : Math.log(p)));
  const exponent = stirlingError(n) - stirlingError(x) - stirlingError(y) - deviance(x, n * p) - deviance(y, n * q);
  return Math.exp(exponent) * Math.sqrt(n / (2 * Math.PI * x * y));
}
