// Conditioning a packed column: how much mobile phase, how long at a flow, and how long it rests after the heat of wetting.

/** Column volumes of mobile phase before the sample (common practice). */
export const usualColumnVolumes: readonly [number, number] = [2, 3];

/** Practice is 2 to 3: less leaves air and water, more is only wasted. Null within. */
export function oddColumnVolumes(columnVolumes: number): string | null {
  const [least, most] = usualColumnVolumes;
  const said = `${Number(columnVolumes.toFixed(2))} column volumes`;
  if (columnVolumes < least) {
    return `${said} are fewer than the usual ${least} to ${most}: kept, but the bed may not be wetted through`;
  }
  return columnVolumes > most ? `${said} are more than the usual ${least} to ${most}: kept` : null;
}

/** Column volumes that a flow brings in so many minutes. */
export const columnVolumesOf = (flowMlPerMin: number, minutes: number, columnVolumeMl: number): number =>
  (flowMlPerMin * minutes) / columnVolumeMl;

/** Heat spreads this fast in a wetted bed, m²/s: 0.25 W/m K over 2 MJ/m³ K (organic solvent and oxide; from memory). */
const wetDiffusivityM2PerS = 1.25e-7;
/** First zero of the Bessel function J₀: the slowest way in which a round bar cools at its wall. */
const firstZero = 2.4048;
/** The middle of the bar begins at this multiple of that slowest part. */
const begins = 1.602;
/** Left of the warming when the bubbles are taken to be gone. */
const heatLeft = 0.05;
/** Gas needs time to rise in any bed (common practice). */
const leastMinutes = 5;

/**
 * Minutes after wetting until a twentieth of the heat is left in the middle: a long round bar whose wall stays at room
 * temperature, Θ = 1.602 e^(-2.4048² Fo), Fo = α t / R² (Carslaw & Jaeger). Grows with the square of the bore. A default.
 */
export function restMinutes(diameterMm: number): number {
  const radiusM = diameterMm / 2000;
  const seconds = ((radiusM ** 2 / wetDiffusivityM2PerS) * Math.log(begins / heatLeft)) / firstZero ** 2;
  return Math.max(leastMinutes, seconds / 60);
}

export const restSource =
  'a default: until a twentieth of the heat of wetting is left in the middle of a round bed (Carslaw & Jaeger; heat diffusivity from memory), at least 5 min for bubbles; feel the column, and wait until it is at room temperature';
