// Changes a list under somebody's hand without moving what the hand is at.
import { flushSync } from 'svelte';

const linesOf = (place: HTMLElement): HTMLElement[] => [...place.querySelectorAll<HTMLElement>('[data-label]')];

/** Lines keep at least the height they have, and what grows above `hand` all the same is scrolled away. */
export function changeInPlace(place: HTMLElement, hand: Element | null, change: () => void): void {
  const lines = linesOf(place);
  // All are measured before any is changed, so that the page is laid out once.
  const boxes = lines.map((line) => line.getBoundingClientRect());
  for (const [i, line] of lines.entries()) line.style.minHeight = `${boxes[i]?.height ?? 0}px`;
  const inSight = lines[boxes.findIndex(({ top }) => top >= 0)];
  const still = hand !== null && place.contains(hand) ? hand : inSight;
  const before = still?.getBoundingClientRect().top ?? 0;
  flushSync(change);
  const moved = still?.isConnected ? still.getBoundingClientRect().top - before : 0;
  if (moved !== 0) scrollBy(0, moved);
}

/** Lets lines be as high as they are, once no hand is there. */
export function letGo(place: HTMLElement): void {
  for (const line of linesOf(place)) line.style.removeProperty('min-height');
}
