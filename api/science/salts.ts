// Relative humidity over saturated salt solutions, for equilibrating sorbent and for checking sensors.
//
// Greenspan, J. Res. Natl. Bur. Stand. 81A (1977) 89; polynomials in °C. Signs of LiCl, CH3COOK and K2CO3 as they
// reproduce Greenspan's own table (stored copies of the code elsewhere carry them wrong; LiCl would give 10.89 at 25 °C).

export interface Salt {
  readonly name: string;
  /** Coefficients of t^0, t^1, …; % RH. */
  readonly polynomial: readonly number[];
  readonly fromC: number;
  readonly toC: number;
}

export const salts: readonly Salt[] = [
  { name: 'lithium chloride', polynomial: [11.2323, 0.00824245, -0.21489e-3], fromC: 0, toC: 80 },
  { name: 'potassium acetate', polynomial: [22.4388, 0.156288, -0.612268e-2], fromC: 0, toC: 30 },
  { name: 'magnesium chloride', polynomial: [33.6686, -0.00797397, -0.108988e-2], fromC: 0, toC: 80 },
  { name: 'potassium carbonate', polynomial: [43.1315, 0.00147523], fromC: 0, toC: 30 },
  { name: 'sodium chloride', polynomial: [75.5164, 0.0398321, -0.265459e-2, 0.2848e-4], fromC: 0, toC: 80 },
  { name: 'potassium chloride', polynomial: [88.619, -0.19334, 0.899706e-3], fromC: 0, toC: 80 },
  { name: 'potassium nitrate', polynomial: [96.3361, 0.0112371, -0.484514e-2], fromC: 0, toC: 50 },
  { name: 'potassium sulfate', polynomial: [98.7792, -0.0590502], fromC: 0, toC: 50 },
];

/** Magnesium nitrate has no polynomial here: points at 20, 25 and 30 °C, from memory of Greenspan's table. */
const magnesiumNitrate = [
  [20, 54.38],
  [25, 52.89],
  [30, 51.4],
] as const;

/** Relative humidity (0 to 1) over a saturated salt, or null outside its range and for a salt not in the table. */
export function saltHumidity(name: string, temperatureC: number): number | null {
  if (name === 'magnesium nitrate') return pointHumidity(temperatureC);
  const salt = salts.find((one) => one.name === name);
  if (!salt || temperatureC < salt.fromC || temperatureC > salt.toC) return null;
  return salt.polynomial.reduceRight((sum, coefficient) => sum * temperatureC + coefficient, 0) / 100;
}

function pointHumidity(temperatureC: number): number | null {
  for (const [i, [toC, to]] of magnesiumNitrate.entries()) {
    const before = magnesiumNitrate[i - 1];
    if (!before || temperatureC < before[0] || temperatureC > toC) continue;
    return (before[1] + ((temperatureC - before[0]) / (toC - before[0])) * (to - before[1])) / 100;
  }
  return null;
}

/** Where the humidities come from, in words, and what they are worth. */
export const saltSource = (name: string): string =>
  name === 'magnesium nitrate'
    ? 'Greenspan, J. Res. Natl. Bur. Stand. 81A (1977) 89, points at 20, 25 and 30 °C from memory'
    : 'Greenspan, J. Res. Natl. Bur. Stand. 81A (1977) 89, polynomial';

/** Every salt of the table, driest first, with the temperatures it is known for. */
export const saltTable: readonly { name: string; fromC: number; toC: number }[] = [
  ...salts.map(({ name, fromC, toC }) => ({ name, fromC, toC })),
  { name: 'magnesium nitrate', fromC: 20, toC: 30 },
].sort((one, other) => (saltHumidity(one.name, 25) ?? 0) - (saltHumidity(other.name, 25) ?? 0));
