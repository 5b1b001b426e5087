// Where a rising function passes nought: the secant where it helps, halving where it does not.

/** A point between `low` and `high` where `rising` changes its sign; `precision` is relative, to the last digits if not said. */
export function rootBetween(rising: (x: number) => number, low: number, high: number, precision = 2e-15): number {
  let [a, b] = [low, high];
  let [fa, fb] = [rising(a), rising(b)];
  if (fa >= 0) return a;
  if (fb <= 0) return b;
  for (let step = 0; step < 200; step++) {
    const middle = (a + b) / 2;
    if (middle <= a || middle >= b) return middle;
    // Every third step halves, so that a flat side cannot hold it up.
    const secant = b - (fb * (b - a)) / (fb - fa);
    const x = step % 3 === 2 || !(secant > a && secant < b) ? middle : secant;
    const fx = rising(x);
    if (fx === 0) return x;
    if (fx < 0) [a, fa] = [x, fx];
    else [b, fb] = [x, fx];
    if (b - a <= precision * Math.max(Math.abs(a), Math.abs(b))) return (a + b) / 2;
  }
  return (a + b) / 2;
}

/** The same above 0, wherever it lies; 0 or infinity when it does not pass. */
export function rootAbove(rising: (x: number) => number): number {
  if (rising(Number.MIN_VALUE) >= 0) return 0;
  let high = 1;
  while (rising(high) < 0) {
    high *= 2;
    if (high > 1e300) return Infinity;
  }
  let low = high / 2;
  while (rising(low) > 0) {
    low /= 2;
    if (low < 1e-300) return 0;
  }
  return rootBetween(rising, low, high);
}
