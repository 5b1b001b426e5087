// One sensor's readings of one UTC day as a stored row, and how new readings join it.
import { dayMs, type Series } from './series.ts';

/** The columns of a ReadingDay that hold the readings; both little-endian. */
export interface Chunk {
  count: number;
  /** Int32 each, milliseconds since the day began. */
  offsetsMs: Uint8Array;
  /** Float64 each, °C or % RH. */
  values: Uint8Array;
}

const bytesOf = (array: Int32Array | Float64Array): Uint8Array =>
  new Uint8Array(array.buffer, array.byteOffset, array.byteLength);

/** A stored column's own copy, so that it starts where a typed array may start. */
const aligned = (bytes: Uint8Array): ArrayBuffer => new Uint8Array(bytes).buffer;

export function encodeDay(day: number, { atMs, values }: Series): Chunk {
  const start = day * dayMs;
  const offsets = new Int32Array(atMs.length);
  for (let i = 0; i < offsets.length; i++) offsets[i] = (atMs[i] ?? 0) - start;
  return { count: offsets.length, offsetsMs: bytesOf(offsets), values: bytesOf(values) };
}

export function decodeDay(day: number, chunk: Pick<Chunk, 'offsetsMs' | 'values'>): Series {
  const start = day * dayMs;
  const offsets = new Int32Array(aligned(chunk.offsetsMs));
  const atMs = new Float64Array(offsets.length);
  for (let i = 0; i < offsets.length; i++) atMs[i] = start + (offsets[i] ?? 0);
  return { atMs, values: new Float64Array(aligned(chunk.values)) };
}

/** A reading of an instant that has another value already. */
export interface Disagreement {
  atMs: number;
  kept: number;
  other: number;
}

export interface Merged {
  series: Series;
  /** How many instants are new. */
  added: number;
  /** How many were there with the same value. */
  repeated: number;
  disagreeing: Disagreement[];
}

/**
 * What is there, joined by what is new; both in order of time. A reading is known by its instant: the same value
 * again changes nothing, another value is kept out and named, because nobody can say which of two is right and
 * an answer that was given must not change by itself.
 */
export function merged(before: Series, news: Series): Merged {
  const length = before.atMs.length + news.atMs.length;
  const atMs = new Float64Array(length);
  const values = new Float64Array(length);
  const disagreeing: Disagreement[] = [];
  let count = 0;
  let repeated = 0;
  let i = 0;
  for (let j = 0; j < news.atMs.length; j++) {
    const at = news.atMs[j] ?? 0;
    const value = news.values[j] ?? 0;
    for (; i < before.atMs.length && (before.atMs[i] ?? 0) <= at; i++, count++) {
      atMs[count] = before.atMs[i] ?? 0;
      values[count] = before.values[i] ?? 0;
    }
    if (count > 0 && atMs[count - 1] === at) {
      const kept = values[count - 1] ?? 0;
      if (kept === value) repeated++;
      else disagreeing.push({ atMs: at, kept, other: value });
    } else {
      atMs[count] = at;
      values[count] = value;
      count++;
    }
  }
  for (; i < before.atMs.length; i++, count++) {
    atMs[count] = before.atMs[i] ?? 0;
    values[count] = before.values[i] ?? 0;
  }
  const added = count - before.atMs.length;
  const series = { atMs: atMs.subarray(0, count), values: values.subarray(0, count) };
  return { series, added, repeated, disagreeing };
}
