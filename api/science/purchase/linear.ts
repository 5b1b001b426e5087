// A linear programme put together row by row, and solved by HiGHS.
import type { Highs } from 'highs';

export interface Linear {
  readonly cost: number[];
  readonly lower: number[];
  readonly upper: number[];
  readonly whole: boolean[];
  readonly rowLower: number[];
  readonly rowUpper: number[];
  readonly starts: number[];
  readonly columns: number[];
  readonly values: number[];
}

export const emptyLinear = (): Linear => ({
  cost: [],
  lower: [],
  upper: [],
  whole: [],
  rowLower: [],
  rowUpper: [],
  starts: [0],
  columns: [],
  values: [],
});

/** The number of the new column. */
export function column(linear: Linear, cost: number, upper = Infinity, whole = false): number {
  linear.cost.push(cost);
  linear.lower.push(0);
  linear.upper.push(upper);
  linear.whole.push(whole);
  return linear.cost.length - 1;
}

/** lower ≤ Σ value × column ≤ upper; a column may be named more than once. */
export function row(
  linear: Linear,
  lower: number,
  upper: number,
  terms: Iterable<readonly [column: number, value: number]>,
): number {
  const sums = new Map<number, number>();
  for (const [at, value] of terms) sums.set(at, (sums.get(at) ?? 0) + value);
  for (const [at, value] of sums) {
    if (value === 0) continue;
    linear.columns.push(at);
    linear.values.push(value);
  }
  linear.starts.push(linear.columns.length);
  linear.rowLower.push(lower);
  linear.rowUpper.push(upper);
  return linear.rowLower.length - 1;
}

export interface SolveOptions {
  readonly seconds: number;
  /** Branches that may be looked at; counted, so that the answer is always the same. */
  readonly nodes?: number;
  readonly gap?: number;
  readonly stopped: () => boolean;
}

export interface Solved {
  readonly proven: boolean;
  readonly objective: number;
  readonly bound: number;
  readonly values: Float64Array;
  readonly rowDual: Float64Array;
}

/** Null when nothing feasible was found. */
export function solve(highs: Highs, linear: Linear, options: SolveOptions): Solved | null {
  const isMixed = linear.whole.some(Boolean);
  const model = highs.createModel({
    numCols: linear.cost.length,
    numRows: linear.rowLower.length,
    colCost: linear.cost,
    colLower: linear.lower,
    colUpper: linear.upper,
    rowLower: linear.rowLower,
    rowUpper: linear.rowUpper,
    matrix: {
      format: 'csr',
      numRows: linear.rowLower.length,
      numCols: linear.cost.length,
      starts: linear.starts,
      indices: linear.columns,
      values: linear.values,
    },
    ...(isMixed ? { integrality: linear.whole.map((whole) => (whole ? 1 : 0)) } : {}),
  });
  try {
    model.options.set({
      output_flag: false,
      time_limit: Math.max(0.05, options.seconds),
      ...(isMixed ? { mip_rel_gap: options.gap ?? 0, mip_abs_gap: 1e-7, mip_feasibility_tolerance: 1e-7 } : {}),
      ...(isMixed && options.nodes !== undefined ? { mip_max_nodes: options.nodes } : {}),
    });
    const { mipInterrupt } = highs.constants.callbackType;
    model.run({
      [mipInterrupt](event) {
        if (options.stopped()) event.interrupt();
      },
    });
    if (model.info.get('primal_solution_status') !== 2) return null;
    const { colValue, rowDual } = model.getSolution();
    const objective = model.getObjectiveValue();
    const bound = isMixed ? Number(model.info.get('mip_dual_bound')) : objective;
    return { proven: model.getModelStatus() === 7, objective, bound, values: colValue, rowDual };
  } finally {
    model.dispose();
  }
}
