// A span of time made narrower or wider about a point, never beyond the whole.

export function zoomed(
  [from, until]: readonly [number, number],
  [first, last]: readonly [number, number],
  factor: number,
  about: number,
): [number, number] {
  const point = Math.min(until, Math.max(from, about));
  // Ten minutes is less than two readings of most loggers.
  const length = Math.min(last - first, Math.max(600, (until - from) * factor));
  const share = until > from ? (point - from) / (until - from) : 0.5;
  const start = Math.min(last - length, Math.max(first, point - share * length));
  return [start, start + length];
}
