// Readings of one quantity by one sensor, in order of time: °C or % RH over milliseconds since 1970, UTC.

export type Quantity = 'TEMPERATURE' | 'RELATIVE_HUMIDITY';

export interface Series {
  readonly atMs: Float64Array;
  readonly values: Float64Array;
}

export const dayMs = 86_400_000;
export const hourMs = 3_600_000;
export const nothingRead: Series = { atMs: new Float64Array(0), values: new Float64Array(0) };

/** The first index whose time is not before the given one; the length when there is none. */
export function indexAt(atMs: Float64Array, time: number): number {
  let low = 0;
  let high = atMs.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((atMs[middle] ?? 0) < time) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The readings in [from, until), as a view of the same memory. */
export function between({ atMs, values }: Series, from: number, until: number): Series {
  const start = indexAt(atMs, from);
  const end = indexAt(atMs, until);
  return { atMs: atMs.subarray(start, end), values: values.subarray(start, end) };
}

/** Pieces that follow each other in time, as one. */
export function joined(pieces: readonly Series[]): Series {
  if (pieces.length === 1 && pieces[0]) return pieces[0];
  const length = pieces.reduce((sum, piece) => sum + piece.atMs.length, 0);
  const atMs = new Float64Array(length);
  const values = new Float64Array(length);
  let at = 0;
  for (const piece of pieces) {
    atMs.set(piece.atMs, at);
    values.set(piece.values, at);
    at += piece.atMs.length;
  }
  return { atMs, values };
}

/** The same readings by UTC day number. */
export function byDay(series: Series): Map<number, Series> {
  const days = new Map<number, Series>();
  for (let from = 0; from < series.atMs.length;) {
    const day = Math.floor((series.atMs[from] ?? 0) / dayMs);
    const rest = series.atMs.subarray(from);
    const until = from + indexAt(rest, (day + 1) * dayMs);
    days.set(day, { atMs: series.atMs.subarray(from, until), values: series.values.subarray(from, until) });
    from = until;
  }
  return days;
}

/** In order of time; readings of one instant stay in the order given. */
export function inOrder(atMs: ArrayLike<number>, values: ArrayLike<number>): Series {
  const order = Uint32Array.from({ length: atMs.length }, (_, index) => index);
  order.sort((a, b) => (atMs[a] ?? 0) - (atMs[b] ?? 0) || a - b);
  return {
    atMs: Float64Array.from(order, (index) => atMs[index] ?? 0),
    values: Float64Array.from(order, (index) => values[index] ?? 0),
  };
}
