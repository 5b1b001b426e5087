// Who takes a scanned code instead of the container's page: a screen that gathers codes one after another.

type Taker = (code: string) => void;
const takers: Taker[] = [];

/** Takes every scan from now on; returns how to stop. */
export function takeScans(taker: Taker): () => void {
  takers.push(taker);
  return () => void takers.splice(takers.indexOf(taker), 1);
}

/** Gives a code to whoever takes it; false when nobody does. */
export function giveScan(code: string): boolean {
  const taker = takers.at(-1);
  taker?.(code);
  return taker !== undefined;
}
