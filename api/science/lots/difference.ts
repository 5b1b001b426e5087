// How much the plates of a new lot differ from those of the old one, each tank for itself: tanks differ by day, air and
// eluent, which both lots of a tank share. The plate counts as one, however many spots it carries.

export interface PlateValue {
  readonly lot: 'old' | 'new';
  /** Tank and day; plates without one count as of the same tank. */
  readonly tank: string | null;
  readonly value: number;
}

export interface Difference {
  /** New less old. */
  readonly difference: number;
  /** One standard deviation of a plate within its tank and lot. */
  readonly sd: number;
  readonly freedom: number;
  readonly standardError: number;
  readonly plates: { readonly old: number; readonly new: number };
  /** Tanks in which both lots ran. */
  readonly tanks: number;
}

/**
 * Least squares of value = tank + lot. With one tank this is the t test of two samples of equal spread, with one plate of
 * each lot in a tank the paired one. Null when nothing stands against nothing. A spread smaller than readings of that step
 * can show (step/√12) counts as that.
 */
export function differenceOf(plates: readonly PlateValue[], readingStep: number): Difference | null {
  const tanks = new Map<string | null, { old: number[]; new: number[] }>();
  for (const { lot, tank, value } of plates) {
    const cell = tanks.get(tank) ?? { old: [], new: [] };
    tanks.set(tank, cell);
    cell[lot].push(value);
  }
  let weights = 0;
  let weighted = 0;
  let squares = 0;
  let both = 0;
  let freedom = 0;
  const apart: { weight: number; difference: number }[] = [];
  for (const cell of tanks.values()) {
    for (const values of [cell.old, cell.new]) {
      if (values.length === 0) continue;
      squares += squaresAbout(values);
      freedom += values.length - 1;
    }
    if (cell.old.length === 0 || cell.new.length === 0) continue;
    const weight = (cell.old.length * cell.new.length) / (cell.old.length + cell.new.length);
    const difference = mean(cell.new) - mean(cell.old);
    apart.push({ weight, difference });
    weights += weight;
    weighted += weight * difference;
    both += 1;
  }
  if (both === 0) return null;
  const difference = weighted / weights;
  for (const one of apart) squares += one.weight * (one.difference - difference) ** 2;
  freedom += both - 1;
  if (freedom < 1) return null;
  const sd = Math.max(Math.sqrt(squares / freedom), readingStep / Math.sqrt(12));
  const count = (lot: PlateValue['lot']): number => plates.filter((plate) => plate.lot === lot).length;
  return {
    difference,
    sd,
    freedom,
    standardError: sd / Math.sqrt(weights),
    plates: { old: count('old'), new: count('new') },
    tanks: both,
  };
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

function squaresAbout(values: readonly number[]): number {
  const centre = mean(values);
  return values.reduce((sum, value) => sum + (value - centre) ** 2, 0);
}
