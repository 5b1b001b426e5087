// Weighings with made-up slopes, for what must hold of the fit whatever the model behind it.
import type { Expected } from '../../../api/science/calibration/expect.ts';
import { familiesOf, priorsOf } from '../../../api/science/calibration/families.ts';
import { screen, type Screened } from '../../../api/science/calibration/screen.ts';

/** One weighing of something linear: `slopes` by factor, each with one sigma of its prior; expected is nothing at 0. */
export function row(
  id: string,
  container: string,
  found: number,
  noise: number,
  slopes: Readonly<Record<string, readonly [value: number, sd: number]>>,
  confirmed = false,
): Expected {
  return {
    weighing: { id, container, atS: 0, found: { of: 'whole', waterFraction: found, sd: noise }, confirmed },
    found,
    expected: 0,
    noise,
    slopes: new Map(Object.entries(slopes).map(([name, [value, sd]]) => [name, { value, sd }])),
    unusable: null,
  };
}

/** One step from nothing learned, which is the whole way where all is linear. */
export const fitted = (rows: readonly Expected[]): Screened => screen(familiesOf(rows), new Map(), priorsOf(rows));
