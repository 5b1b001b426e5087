// Water vapour in air: saturation pressure, concentration, diffusivity.

/** 0 °C in kelvin. */
export const zeroCelsiusK = 273.15;
/** The temperature at which a loading's activity is its reference activity, K (25 °C). */
export const referenceK = 298.15;
/** J/(mol K), SI 2019. */
const gasConstant = 8.314462618;
/** kg/mol, water. */
const molarMass = 0.018015268;
/** Pa, standard atmosphere. */
export const standardPressurePa = 101_325;

/**
 * Saturation pressure over liquid water, Pa, 0 to 200 °C (and supercooled below, as humidity sensors count it).
 * Hyland and Wexler, as in ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 6.
 */
export function saturationPressurePa(temperatureC: number): number {
  const t = temperatureC + zeroCelsiusK;
  return Math.exp(
    -5.8002206e3 / t +
      1.3914993 +
      t * (-4.8640239e-2 + t * (4.1764768e-5 - t * 1.4452093e-8)) +
      6.5459673 * Math.log(t),
  );
}

/** Saturation pressure over ice, Pa, -100 to 0 °C. Hyland and Wexler, ASHRAE as above, eq. 5. */
export function icePressurePa(temperatureC: number): number {
  const t = temperatureC + zeroCelsiusK;
  const polynomial = 6.3925247 + t * (-9.677843e-3 + t * (6.2215701e-7 + t * (2.0747825e-9 - t * 9.484024e-13)));
  return Math.exp(-5.6745359e3 / t + polynomial + 4.1635019 * Math.log(t));
}

/** Water vapour in saturated air, kg/m³: p_s M / (R T). */
export function saturatedKgPerM3(temperatureC: number): number {
  return (saturationPressurePa(temperatureC) * molarMass) / (gasConstant * (temperatureC + zeroCelsiusK));
}

/** Water vapour in air of a relative humidity (0 to 1), kg/m³. */
export function vapourKgPerM3(temperatureC: number, humidity: number): number {
  return humidity * saturatedKgPerM3(temperatureC);
}

/** Diffusivity of water vapour in air, m²/s. Massman, Atmos. Environ. 32 (1998) 1111; good to about 3 %. */
export function diffusivityM2PerS(temperatureC: number, pressurePa = standardPressurePa): number {
  return (2.178e-5 * Math.pow((temperatureC + zeroCelsiusK) / zeroCelsiusK, 1.81) * standardPressurePa) / pressurePa;
}

/**
 * Reference activity of sorbent that rests in air of a relative humidity at a temperature: φ^(T/T0), since R T ln(1/activity)
 * belongs to the loading alone (the characteristic curve of Polanyi).
 */
export function referenceActivity(humidity: number, temperatureC: number): number {
  return Math.pow(humidity, (temperatureC + zeroCelsiusK) / referenceK);
}
