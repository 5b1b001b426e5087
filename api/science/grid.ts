// Cells of a bed: 24, thin at the top where water comes in; 4 equal ones for a plate's layer.

export const bedCells = 24;
export const plateCells = 4;
const firstCellM = 0.4e-3;

export interface Grid {
  readonly depthM: number;
  readonly cells: number;
  readonly thicknessM: Float64Array;
}

/** A bed's cells in geometric ratio from a first of min(0.4 mm, L/60); 16 cells miss the tolerance, 20 are marginal. */
export function bedGrid(depthM: number): Grid {
  const first = Math.min(firstCellM, depthM / 60);
  const ratio = ratioOf(depthM / first);
  const thicknessM = new Float64Array(bedCells);
  let sum = 0;
  for (let i = 0, thickness = first; i < bedCells; i++, thickness *= ratio) {
    thicknessM[i] = thickness;
    sum += thickness;
  }
  const exact = depthM / sum;
  for (let i = 0; i < bedCells; i++) thicknessM[i] = thicknessM[i]! * exact;
  return { depthM, cells: bedCells, thicknessM };
}

export function plateGrid(layerM: number): Grid {
  return { depthM: layerM, cells: plateCells, thicknessM: new Float64Array(plateCells).fill(layerM / plateCells) };
}

// q with (q^n - 1)/(q - 1) = total, by Newton on the logarithm of both sides.
function ratioOf(total: number): number {
  const n = bedCells;
  let q = 1 + (2 * Math.log(total / n)) / n;
  for (let k = 0; k < 50; k++) {
    const power = Math.pow(q, n);
    const sum = (power - 1) / (q - 1);
    const slope = (n * power) / (q * (power - 1)) - 1 / (q - 1);
    const step = Math.log(sum / total) / slope;
    q -= step;
    if (Math.abs(step) < 1e-13) break;
  }
  return q;
}
