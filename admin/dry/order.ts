// The order set by hand: what a move makes of the list, and how the API is told it.

interface Placed {
  id: string;
}

/** The list with one of it at another place; the same list when nothing moves. */
export function moved<P extends Placed>(list: readonly P[], id: string, to: number): readonly P[] {
  const from = list.findIndex((one) => one.id === id);
  const place = Math.min(list.length - 1, Math.max(0, to));
  const one = list[from];
  if (!one || from === place) return list;
  const others = list.filter((other) => other.id !== id);
  return [...others.slice(0, place), one, ...others.slice(place)];
}

/** Before which other it stands; null when it is last. */
export function beforeOf(list: readonly Placed[], id: string): string | null {
  const at = list.findIndex((one) => one.id === id);
  return at < 0 ? null : (list[at + 1]?.id ?? null);
}

/** The place a pointer at `y` points to, among lines from top to bottom. */
export function placeAt(y: number, lines: readonly { top: number; bottom: number }[]): number {
  const below = lines.findIndex(({ top, bottom }) => y < (top + bottom) / 2);
  return below < 0 ? lines.length - 1 : below;
}

/** "58F-J5H is 1 of 3 now". */
export const placeWords = (label: string, list: readonly Placed[], id: string): string =>
  `${label} is ${list.findIndex((one) => one.id === id) + 1} of ${list.length} now`;
