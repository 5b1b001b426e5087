// What a lot check compares: the retention of each reference compound, and how far each two stand apart on the plate.
import type { PlateValue } from './difference.ts';

export interface CheckedPlate {
  readonly lot: 'old' | 'new';
  readonly tank: string | null;
  /** Readings by compound, one a spot. */
  readonly spots: Readonly<Record<string, readonly number[]>>;
}

export interface Quantity {
  readonly compounds: readonly [string] | readonly [string, string];
  readonly plates: readonly PlateValue[];
}

/** Compounds in the order in which they first appear; a plate that lacks one is left out of its quantities. */
export function quantitiesOf(plates: readonly CheckedPlate[]): Quantity[] {
  const compounds = [...new Set(plates.flatMap(({ spots }) => Object.keys(spots)))];
  const pairs = compounds.flatMap((one, i) => compounds.slice(i + 1).map((other) => [one, other] as const));
  const quantity = (names: Quantity['compounds'], value: (plate: CheckedPlate) => number | null): Quantity => ({
    compounds: names,
    plates: plates.flatMap((plate) => {
      const mean = value(plate);
      return mean === null ? [] : [{ lot: plate.lot, tank: plate.tank, value: mean }];
    }),
  });
  return [
    ...compounds.map((name) => quantity([name], (plate) => plateMean(plate, name))),
    ...pairs.map(([one, other]) =>
      quantity([one, other], (plate) => {
        const [first, second] = [plateMean(plate, one), plateMean(plate, other)];
        return first === null || second === null ? null : first - second;
      }),
    ),
  ];
}

function plateMean({ spots }: CheckedPlate, compound: string): number | null {
  const values = spots[compound] ?? [];
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
}
