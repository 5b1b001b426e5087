// A list that refreshes itself without moving what somebody is about to tap.

export interface Named {
  label: string;
}

/** The shown lines with their newest values, in the places they have; what is new waits, what is gone stays as it was. */
export function heldOrder<L extends Named>(shown: readonly L[], fresh: readonly L[]): L[] {
  const newest = new Map(fresh.map((line) => [line.label, line]));
  return shown.map((line) => newest.get(line.label) ?? line);
}

/** How many lines would come, go or change places if the list were put in order. */
export function outOfPlace(shown: readonly Named[], fresh: readonly Named[]): number {
  const after = new Map(fresh.map(({ label }, place) => [label, place]));
  const before = new Set(shown.map(({ label }) => label));
  const gone = shown.filter(({ label }) => !after.has(label)).length;
  const come = fresh.filter(({ label }) => !before.has(label)).length;
  const places = shown.flatMap(({ label }) => after.get(label) ?? []);
  return gone + come + places.length - longestRise(places);
}

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
