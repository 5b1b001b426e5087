// Cells of a tray: thin at the open top and at the floor, where heat comes in, thicker between.

/** Cells of a bed while drying; 24 can miss the tolerance. */
export const trayCells = 32;
/** A cell over its outer neighbour. */
const growth = 1.1;

/** Thicknesses from top to floor, m; each half is the mirror of the other. */
export function trayGrid(depthM: number, cells = trayCells, ratio = growth): Float64Array {
  const thicknessM = new Float64Array(cells);
  let sum = 0;
  for (let i = 0; i < cells; i++) {
    const inward = Math.min(i, cells - 1 - i);
    const thickness = Math.pow(ratio, inward);
    thicknessM[i] = thickness;
    sum += thickness;
  }
  for (let i = 0; i < cells; i++) thicknessM[i] = (thicknessM[i]! * depthM) / sum;
  return thicknessM;
}
