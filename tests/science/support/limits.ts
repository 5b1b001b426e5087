// Closed answers that the bed must reach in its limits.

/** Roots of β tan β = L, by bisection, one in each branch. Crank, The Mathematics of Diffusion, eq. 4.51. */
export function surfaceRoots(l: number, count: number): number[] {
  return Array.from({ length: count }, (_, n) => {
    let low = n * Math.PI;
    let high = n * Math.PI + Math.PI / 2;
    for (let k = 0; k < 200; k++) {
      const middle = (low + high) / 2;
      if (middle * Math.tan(middle) < l) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  });
}

/** Uptake of a plane sheet behind a surface resistance, relative to its last, at D t / l²; Crank, section 4.3.6. */
export const surfaceUptake = (l: number, fourier: number): number =>
  1 -
  surfaceRoots(l, 60).reduce(
    (sum, b) => sum + (2 * l * l * Math.exp(-b * b * fourier)) / (b * b * (b * b + l * l + l)),
    0,
  );

/** The same without resistance; Crank, eq. 4.18. */
export const sheetUptake = (fourier: number): number => {
  let left = 0;
  for (let n = 0; n < 200; n++)
    left += (8 / ((2 * n + 1) ** 2 * Math.PI ** 2)) * Math.exp((-((2 * n + 1) ** 2) * Math.PI ** 2 * fourier) / 4);
  return 1 - left;
};

/** Depth of a sharp front: ρ_b w (X²/2 D_b + X r) = c t. */
export const frontM = (held: number, bedM2PerS: number, resistance: number, supplied: number): number =>
  bedM2PerS * (Math.sqrt(resistance ** 2 + (2 * supplied) / (held * bedM2PerS)) - resistance);
