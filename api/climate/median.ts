// The middle of several numbers.

/** Of the numbers that are numbers; the mean of the middle two when they are even in count; NaN when there are none. */
export function median(values: readonly number[]): number {
  if (values.length === 1) return values[0] ?? NaN;
  const sorted = values.filter((value) => !Number.isNaN(value)).sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? NaN) + upper) / 2;
}
