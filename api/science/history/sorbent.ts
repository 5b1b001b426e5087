// The numbers of a sorbent.

/** Parameters of w(a), kg water per kg dry sorbent over reference activity; see `isotherm.ts`. */
export interface IsothermNumbers {
  readonly filmCapacity: number;
  readonly filmC: number;
  readonly filmK: number;
  readonly poreCapacity: number;
  readonly poreActivity: number;
  readonly poreWidth: number;
}

/** One sigma of ln(capacity): `below` up to the reference activity `from`, rising linearly to `above` at `to`. */
export interface CapacityDoubt {
  readonly below: number;
  readonly above: number;
  readonly from: number;
  readonly to: number;
}

export interface SorbentNumbers {
  readonly isotherm: IsothermNumbers;
  /** Dry sorbent per bed volume. */
  readonly bulkDensityKgPerM3: number;
  /** Void between the grains, of the bed volume. */
  readonly voidFraction: number;
  readonly doubt: CapacityDoubt;
  /** Water added to make each activity grade, of the total mass; null where no table is known. */
  readonly grades: readonly { readonly grade: string; readonly waterOfTotal: number }[] | null;
}
