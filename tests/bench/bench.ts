// What a bench answers, and how repeated figures become one.

export interface Bench {
  /** Our figure: the median of its runs. */
  value: number;
  unit: string;
  /** What stands on the other side of the ratio, measured in the same run. */
  against: string;
  /** Ours over theirs; null where nothing stands against it. */
  ratio: number | null;
  /** Largest less smallest of our runs, over the median. */
  spread: number;
  /** Further figures: errors of both, latencies, memory, the target. */
  details?: Record<string, number | string | boolean | null>;
}

/** A bench lies in `tests/bench/NAME.ts`, whose one exported function is this. `short` takes seconds, for CI. */
export type RunBench = (short: boolean) => Promise<Bench>;

const sorted = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b);

/** The value below which a share of the values lies; 0.5 is the median, 0.99 the p99. NaN of none. */
export function quantile(values: readonly number[], share: number): number {
  const order = sorted(values);
  return order[Math.min(order.length - 1, Math.floor(share * order.length))] ?? NaN;
}

/** Largest less smallest, over the median. */
export function spread(values: readonly number[]): number {
  const order = sorted(values);
  return ((order.at(-1) ?? NaN) - (order[0] ?? NaN)) / quantile(order, 0.5);
}
