// The least value of a smooth function of a few numbers: quasi-Newton steps (Broyden, Fletcher, Goldfarb, Shanno) on
// central differences.

export interface Minimum {
  readonly at: readonly number[];
  readonly value: number;
}

const step = 1e-5;

export function minimumOf(f: (x: readonly number[]) => number, start: readonly number[]): Minimum {
  const n = start.length;
  let x = [...start];
  let value = f(x);
  if (n === 0) return { at: x, value };
  const gradientAt = (at: readonly number[]): number[] =>
    at.map((xi, i) => {
      const h = step * Math.max(1, Math.abs(xi));
      const moved = [...at];
      moved[i] = xi + h;
      const up = f(moved);
      moved[i] = xi - h;
      return (up - f(moved)) / (2 * h);
    });
  const identity = (): number[][] => x.map((_, i) => x.map((__, j) => (i === j ? 1 : 0)));
  let inverse = identity();
  let gradient = gradientAt(x);
  for (let round = 0; round < 100; round++) {
    let direction = inverse.map((row) => -dot(row, gradient));
    let slope = dot(direction, gradient);
    if (!(slope < 0)) {
      inverse = identity();
      direction = gradient.map((g) => -g);
      slope = dot(direction, gradient);
    }
    if (!(slope < -1e-18)) break;
    // No first step longer than 1, and shorter until it goes down.
    let length = Math.min(1, 1 / Math.max(...direction.map(Math.abs)));
    let next = x;
    let nextValue = Infinity;
    for (let halving = 0; halving < 40; halving++, length /= 2) {
      next = x.map((xi, i) => xi + length * direction[i]!);
      nextValue = f(next);
      if (nextValue <= value + 1e-4 * length * slope) break;
    }
    if (!(nextValue < value)) break;
    const nextGradient = gradientAt(next);
    const s = next.map((xi, i) => xi - x[i]!);
    const y = nextGradient.map((g, i) => g - gradient[i]!);
    const gained = value - nextValue;
    [x, value, gradient] = [next, nextValue, nextGradient];
    const sy = dot(s, y);
    if (sy > 1e-16) inverse = updated(inverse, s, y, sy);
    if (gained < 1e-12 * (1 + Math.abs(value)) && Math.max(...gradient.map(Math.abs)) < 1e-5) break;
  }
  return { at: x, value };
}

function updated(inverse: number[][], s: number[], y: number[], sy: number): number[][] {
  const hy = inverse.map((row) => dot(row, y));
  const factor = (1 + dot(y, hy) / sy) / sy;
  return inverse.map((row, i) =>
    row.map((h, j) => h + factor * s[i]! * s[j]! - (hy[i]! * s[j]! + s[i]! * hy[j]!) / sy),
  );
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, value, i) => sum + value * b[i]!, 0);
