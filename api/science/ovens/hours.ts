// When a batch can start and end in the hours when someone is there: the earliest end, and later ends with a shorter stay.
import type { OvenModel } from './model.ts';
import type { Span } from './problem.ts';

/** Spans in order, those that meet made one. */
export function unitedSpans(spans: readonly Span[]): Span[] {
  const united: [number, number][] = [];
  for (const [from, to] of [...spans].sort((a, b) => a[0] - b[0] || a[1] - b[1])) {
    const last = united.at(-1);
    if (last && from <= last[1]) last[1] = Math.max(last[1], to);
    else united.push([from, to]);
  }
  return united;
}

/** Where `stay` leaves what it found: one object used again and again, since this is asked millions of times. */
export interface Stay {
  start: number;
  end: number;
}

/**
 * The stay of a batch that could start at `earliest` if someone were there: the one with the earliest end and, for that
 * end, the latest start. `wait` passes over as many such stays, one at most for each opening in which the batch starts.
 * False when the open hours hold none.
 */
export function stay(
  oven: OvenModel,
  earliest: number,
  setup: number,
  least: number,
  most: number,
  wait: number,
  found: Stay,
): boolean {
  const { openFrom, openTo, unattended } = oven;
  const count = openFrom.length;
  let left = wait;
  for (let i = 0; i < count; i += 1) {
    if (openTo[i]! < earliest) continue;
    const from = unattended ? openFrom[i]! : openFrom[i]! + setup;
    const start = earliest > from ? earliest : from;
    if (start > openTo[i]!) continue;
    const end = start + least;
    if (end <= openTo[i]!) {
      if (left === 0) {
        found.start = start;
        found.end = end;
        return true;
      }
      left -= 1;
      continue;
    }
    if (!unattended) continue;
    let later = i + 1;
    while (later < count && openTo[later]! < end) later += 1;
    if (later === count) return false;
    const opening = openFrom[later]!;
    const latest = opening <= end ? start : Math.min(openTo[i]!, opening - least);
    const ends = opening <= end ? end : opening;
    if (ends - latest > most) continue;
    if (left === 0) {
      found.start = latest;
      found.end = ends;
      return true;
    }
    left -= 1;
  }
  return false;
}
