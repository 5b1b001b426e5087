// How much of a request is still to go into an oven: what was asked, less what is in one or came out of one already.
import type { RequestRow } from './facts.ts';

type Load = { containerId: string | null; run: { state: string; isPinned: boolean } | null };

/** In an oven or out of it, or fixed in its place, and not yet booked as a portion of its own. */
const isUnbooked = ({ run }: Load): boolean =>
  run !== null && (['IN_OVEN', 'COOLING', 'COOLED'].includes(run.state) || (run.state === 'PLANNED' && run.isPinned));

/** The planner leaves it where it is: it is somewhere, or was dried. What was poured and interrupted waits under its own label. */
export const isPlaced = (load: Load, containerId: string): boolean =>
  isUnbooked(load) ||
  load.run?.state === 'FINISHED' ||
  (load.run?.state === 'INTERRUPTED' && load.containerId !== null && load.containerId !== containerId);

const sum = (some: readonly (number | null)[]): number => some.reduce<number>((all, each) => all + (each ?? 0), 0);

/** Grams less than this are rounding. */
const nothing = 1e-3;

/** Null plates for sorbent. A request for all takes what no other request of its container asks for. */
export function freeOfLoads(
  request: RequestRow,
  requests: readonly RequestRow[],
): { dryGrams: number; plates: null } | { dryGrams: null; plates: number } {
  const { container, loads } = request;
  const others = requests.filter(({ id, containerId }) => id !== request.id && containerId === container.id);
  const placed = loads.filter((load) => isPlaced(load, container.id));
  const unbooked = loads.filter(isUnbooked);
  if (container.kind === 'PLATE_BOX') {
    const all =
      request.plates === null
        ? (container.plates ?? 0) - sum(others.map(({ plates }) => plates)) - sum(unbooked.map(({ plates }) => plates))
        : request.plates - sum(placed.map(({ plates }) => plates));
    return { dryGrams: null, plates: Math.max(0, all) };
  }
  const all =
    request.dryGrams === null
      ? container.dryGrams - sum(others.map(({ dryGrams }) => dryGrams)) - sum(unbooked.map(({ dryGrams }) => dryGrams))
      : request.dryGrams - sum(placed.map(({ dryGrams }) => dryGrams));
  return { dryGrams: all > nothing ? all : 0, plates: null };
}
