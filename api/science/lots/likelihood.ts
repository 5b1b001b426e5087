// The restricted likelihood of value = mean + one random effect a factor + rest, factors nested or crossed:
// D. Bates et al., J. Stat. Softw. 67 (2015) i01, with penalised least squares. The factor with most levels (plates) is
// eliminated first, where its block is diagonal, so that the cost is of the order of the other levels.

export interface Grouped {
  readonly values: readonly number[];
  /** For each factor the level of each value, counted from 0. */
  readonly factors: readonly (readonly number[])[];
}

/** −2 ln of the restricted likelihood. */
export interface Deviance {
  /** At standard deviations relative to the rest, with the best standard deviation of the rest. */
  readonly relative: (ratios: readonly number[]) => number;
  /** That best standard deviation. */
  readonly rest: (ratios: readonly number[]) => number;
  /** At given ratios and a given standard deviation of the rest. */
  readonly at: (ratios: readonly number[], rest: number) => number;
  readonly mean: (ratios: readonly number[]) => number;
}

interface Solved {
  readonly logs: number;
  readonly squares: number;
  readonly mean: number;
}

export function devianceOf({ values, factors }: Grouped): Deviance {
  const n = values.length;
  const centre = values.reduce((sum, value) => sum + value, 0) / n;
  const solve = solver(
    values.map((value) => value - centre),
    factors,
  );
  const freedom = n - 1;
  const twoPi = 2 * Math.PI;
  return {
    relative: (ratios) => {
      const { logs, squares } = solve(ratios);
      return logs + freedom * (1 + Math.log((twoPi * squares) / freedom));
    },
    rest: (ratios) => Math.sqrt(solve(ratios).squares / freedom),
    at: (ratios, rest) => {
      const { logs, squares } = solve(ratios);
      return logs + freedom * Math.log(twoPi * rest * rest) + squares / (rest * rest);
    },
    mean: (ratios) => centre + solve(ratios).mean,
  };
}

function solver(values: readonly number[], factors: Grouped['factors']): (ratios: readonly number[]) => Solved {
  const levels = factors.map((factor) => Math.max(-1, ...factor) + 1);
  const first = levels.indexOf(Math.max(...levels));
  // Columns: the levels of the other factors, the mean, the value itself.
  const others = factors.map((_, k) => k).filter((k) => k !== first);
  const offsets = new Map<number, number>();
  const factorOfColumn: number[] = [];
  for (const k of others) {
    offsets.set(k, factorOfColumn.length);
    for (let level = 0; level < levels[k]!; level++) factorOfColumn.push(k);
  }
  const random = factorOfColumn.length;
  const size = random + 2;
  const cross = new Float64Array(size * size);
  const counts = new Float64Array(first < 0 ? 0 : levels[first]!);
  const rows = Array.from(counts, () => new Map<number, number>());
  for (const [i, value] of values.entries()) {
    const entries: [number, number][] = [
      ...others.map((k): [number, number] => [offsets.get(k)! + factors[k]![i]!, 1]),
      [random, 1],
      [random + 1, value],
    ];
    for (const [a, x] of entries) for (const [b, y] of entries) cross[a * size + b]! += x * y;
    if (first < 0) continue;
    const level = factors[first]![i]!;
    counts[level]! += 1;
    const row = rows[level]!;
    for (const [a, x] of entries) row.set(a, (row.get(a) ?? 0) + x);
  }
  const sparse = rows.map((row) => ({ columns: [...row.keys()], sums: [...row.values()] }));

  return (ratios) => {
    const scale = (column: number): number => (column < random ? ratios[factorOfColumn[column]!]! : 1);
    const left = new Float64Array(size * size);
    for (let a = 0; a < size; a++) {
      for (let b = 0; b <= a; b++) left[a * size + b] = cross[a * size + b]! * scale(a) * scale(b);
      if (a < random) left[a * size + a]! += 1;
    }
    let logs = 0;
    const ratio = first < 0 ? 0 : ratios[first]!;
    for (const [level, { columns, sums }] of sparse.entries()) {
      const pivot = counts[level]! * ratio * ratio + 1;
      logs += Math.log(pivot);
      const scaled = sums.map((sum, i) => sum * scale(columns[i]!));
      const weight = (ratio * ratio) / pivot;
      for (let i = 0; i < columns.length; i++) {
        for (let j = 0; j < columns.length; j++) {
          if (columns[j]! <= columns[i]!) left[columns[i]! * size + columns[j]!]! -= weight * scaled[i]! * scaled[j]!;
        }
      }
    }
    choleskyInPlace(left, size);
    for (let a = 0; a <= random; a++) logs += 2 * Math.log(left[a * size + a]!);
    const last = left[size * size - 1]!;
    return { logs, squares: last * last, mean: left[(size - 1) * size + random]! / left[random * size + random]! };
  };
}

/** The lower triangle becomes its own root. */
function choleskyInPlace(a: Float64Array, n: number): void {
  for (let j = 0; j < n; j++) {
    for (let i = j; i < n; i++) {
      let sum = a[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= a[i * n + k]! * a[j * n + k]!;
      a[i * n + j] = i === j ? Math.sqrt(Math.max(sum, 1e-300)) : sum / a[j * n + j]!;
    }
  }
}
