// Least squares by columns: how much of the values is left when all that a mean and these columns can explain is taken off.

/** A column of which less than this is left by the others says nothing new. */
const tolerance = 1e-9;

export interface LeastSquares {
  /** Sum of squares that is left. */
  readonly rest: number;
  /** Columns that say something, the mean among them. */
  readonly rank: number;
}

/** Gram and Schmidt, each column twice, so that rounding leaves nothing behind. */
export function leastSquares(values: readonly number[], columns: readonly (readonly number[])[]): LeastSquares {
  const basis: number[][] = [];
  for (const column of [values.map(() => 1), ...columns]) {
    const centred = lessBasis(column, basis.slice(0, 1));
    const free = lessBasis(lessBasis(centred, basis), basis);
    const length = Math.sqrt(dot(free, free));
    const before = Math.sqrt(dot(centred, centred));
    const own = Math.sqrt(dot(column, column));
    if (length > tolerance * before && before > tolerance * own) basis.push(free.map((x) => x / length));
  }
  const left = lessBasis(lessBasis(values, basis), basis);
  const squares = dot(left, left);
  return { rest: squares > 1e-24 * dot(values, values) ? squares : 0, rank: basis.length };
}

function lessBasis(column: readonly number[], basis: readonly (readonly number[])[]): number[] {
  const left = [...column];
  for (const one of basis) {
    const part = dot(left, one);
    for (let i = 0; i < left.length; i++) left[i]! -= part * one[i]!;
  }
  return left;
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, value, i) => sum + value * b[i]!, 0);
