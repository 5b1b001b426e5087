// A list that refreshes itself without moving what somebody is about to tap.
import { states } from '../say/state.ts';
import type { Line } from '../fields.ts';
import type { Group } from './questions.ts';

/** How many lines would come, go or change places if the list were put in order. */
export function outOfPlace(shown: readonly Group[], fresh: readonly Group[]): number {
  const before = placesIn(shown);
  const after = new Map(placesIn(fresh).map((place, at) => [place, at]));
  const there = new Set(before);
  const gone = before.filter((place) => !after.has(place)).length;
  const come = [...after.keys()].filter((place) => !there.has(place)).length;
  const places = before.flatMap((place) => after.get(place) ?? []);
  const moved = places.length - longestRise(places);
  // A line that changes its group both goes and comes: it is one.
  const labels = new Set(shown.flatMap((group) => group.labels));
  const regrouped = fresh
    .flatMap(({ state, labels: all }) => all.map((label) => ({ label, place: `${state} ${label}` })))
    .filter(({ label, place }) => labels.has(label) && !there.has(place)).length;
  return gone + come - regrouped + moved;
}

/** Each line as its group and its label. */
const placesIn = (groups: readonly Group[]): string[] =>
  groups.flatMap(({ state, labels }) => labels.map((label) => `${state} ${label}`));

/** The length of the longest increasing subsequence: the lines that can stay while the others move (patience sorting). */
function longestRise(places: readonly number[]): number {
  const tops: number[] = [];
  for (const place of places) {
    let low = 0;
    let high = tops.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((tops[middle] ?? 0) < place) low = middle + 1;
      else high = middle;
    }
    tops[low] = place;
  }
  return tops.length;
}

/** Lines in the order of the list, for when nobody can be asked: by state, then by the hours left when they were seen. */
export function groupsOf(lines: readonly Line[]): Group[] {
  const hours = ({ exposure }: Line) => exposure?.hoursToLimit ?? Infinity;
  return states
    .map((state) => {
      const of = lines.filter(({ exposure }) => (exposure?.state ?? 'UNKNOWN') === state);
      return { state, labels: of.sort((a, b) => hours(a) - hours(b) || 0).map(({ label }) => label) };
    })
    .filter(({ labels }) => labels.length > 0);
}

export interface Stretch {
  /** The place of its first line in the whole list, from 1 on. */
  place: number;
  labels: string[];
}

/** A group in stretches of so many lines, which come and go as one scrolls. */
export function stretchesOf(labels: readonly string[], before: number, size: number): Stretch[] {
  return Array.from({ length: Math.ceil(labels.length / size) }, (_, i) => {
    return { place: before + i * size + 1, labels: labels.slice(i * size, (i + 1) * size) };
  });
}

export interface Band {
  lines: number;
  stretches: Stretch[];
}

/** Stretches in bands of so many. */
export function bandsOf(stretches: readonly Stretch[], size: number): Band[] {
  return Array.from({ length: Math.ceil(stretches.length / size) }, (_, i) => {
    const some = stretches.slice(i * size, (i + 1) * size);
    return { lines: some.reduce((sum, { labels }) => sum + labels.length, 0), stretches: some };
  });
}
