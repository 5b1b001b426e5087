// Which column a sample wants: Still, Kahn & Mitra, J. Org. Chem. 1978, 43, 2923, Table I (silica 40 to 63 µm, bed
// 150 mm). From memory.

export interface FlashColumn {
  readonly diameterMm: number;
  readonly eluentMl: number;
  /** Sample that it parts at ΔRf ≥ 0.2, and at ΔRf ≥ 0.1, mg. */
  readonly sampleMg: readonly [number, number];
  readonly fractionMl: number;
}

export const flashBedMm = 150;

export const flashColumns: readonly FlashColumn[] = [
  { diameterMm: 10, eluentMl: 100, sampleMg: [100, 40], fractionMl: 5 },
  { diameterMm: 20, eluentMl: 200, sampleMg: [400, 160], fractionMl: 10 },
  { diameterMm: 30, eluentMl: 400, sampleMg: [900, 360], fractionMl: 20 },
  { diameterMm: 40, eluentMl: 600, sampleMg: [1600, 600], fractionMl: 30 },
  { diameterMm: 50, eluentMl: 1000, sampleMg: [2500, 1000], fractionMl: 50 },
];

/** The narrowest column of the table that parts so much; null when the sample is too large or too alike. */
export function flashColumnFor(sampleMg: number, deltaRf: number): FlashColumn | null {
  if (deltaRf < 0.1) return null;
  const at = deltaRf >= 0.2 ? 0 : 1;
  return flashColumns.find((column) => sampleMg <= column.sampleMg[at]) ?? null;
}
