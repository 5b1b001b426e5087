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

/** What plates of both lots say, on one axis of their own. */
export function platesOf({ values }: Pick<Quantity, 'values'>): { at: number; isNew: boolean }[] {
  const all = values.map(({ value }) => value);
  const low = Math.min(...all);
  const span = Math.max(...all) - low;
  return values.map(({ value, isNew }) => ({ at: span > 0 ? 4 + (92 * (value - low)) / span : 50, isNew }));
}
