// Cells of a tray: even ones, for heat comes from both ends and the wettest spot travels between.

/** 24 can miss the tolerance, 32 keep within 0.6 of it on sixty random trays, 40 within 0.4. */
export const trayCells = 40;

/** Thicknesses from top to floor, m. */
export function trayGrid(depthM: number, cells = trayCells): Float64Array {
  return new Float64Array(cells).fill(depthM / cells);
}
