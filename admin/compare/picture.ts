// A compared quantity as places on one axis: its interval, the margin either side of nought. Pure.
import type { Quantity } from './questions.ts';

export interface Placed {
  /** From the left, in hundredths. */
  readonly from: number;
  readonly to: number;
  readonly at: number;
  /** It goes on beyond the axis. */
  readonly isCut: boolean;
}

export interface Axis {
  readonly margin: { readonly from: number; readonly to: number };
  readonly place: (quantity: Pick<Quantity, 'difference' | 'low' | 'high'>) => Placed | null;
}

/** All quantities of a check on one axis, so that they can be compared; one far off does not flatten the rest. */
export function axisOf(quantities: readonly Pick<Quantity, 'difference' | 'low' | 'high'>[], margin: number): Axis {
  const ends = quantities.flatMap(({ low, high }) =>
    low === null || high === null ? [] : [Math.abs(low), Math.abs(high)],
  );
  const reach = Math.min(Math.max(1.4 * margin, ...ends.map((end) => 1.05 * end)), 6 * margin);
  const along = (value: number): number => 50 + (50 * value) / reach;
  const clipped = (value: number): number => Math.min(100, Math.max(0, along(value)));
  return {
    margin: { from: along(-margin), to: along(margin) },
    place: ({ difference, low, high }) =>
      difference === null || low === null || high === null
        ? null
        : {
            from: clipped(low),
            to: clipped(high),
            at: clipped(difference),
            isCut: along(low) < 0 || along(high) > 100,
          },
  };
}

/** Of a dot, in hundredths of the axis. */
const dotWidth = 1.6;

/** What plates of both lots say, on one axis of their own. */
export function platesOf({ values }: Pick<Quantity, 'values'>): { at: number; isNew: boolean }[] {
  const all = values.map(({ value }) => value);
  const low = Math.min(...all);
  const span = Math.max(...all) - low;
  const seen = new Map<string, number>();
  return values.map(({ value, isNew }) => {
    // Plates of one lot that say the same stand beside each other, not on each other.
    const key = `${isNew} ${value.toFixed(6)}`;
    const before = seen.get(key) ?? 0;
    seen.set(key, before + 1);
    const aside = (before % 2 === 0 ? -1 : 1) * Math.ceil(before / 2) * dotWidth;
    return { at: Math.min(99, Math.max(1, (span > 0 ? 8 + (84 * (value - low)) / span : 50) + aside)), isNew };
  });
}
