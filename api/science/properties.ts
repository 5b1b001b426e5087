// What is known of each sorbent class, with where it comes from and how sure it is. One table; a lab's own numbers replace it.
//
// `confirmed` seen in a stored text; `from memory` recalled, source named but not seen; `derived` computed from such;
// `guess` a placeholder. The screen shows these words beside the numbers.
import { aluminaGrades, magnesiumSilicateGrades, silicaGrades, type Grades } from './grades.ts';
import type { CapacityDoubt, IsothermNumbers, SorbentNumbers } from './history.ts';

export type Confidence = 'confirmed' | 'from memory' | 'derived' | 'guess';

export interface SorbentClass {
  readonly name: string;
  /** Null: nothing is known, and its water is not estimated until the lab gives an isotherm. */
  readonly isotherm: IsothermNumbers | null;
  readonly isothermSource: string;
  readonly isothermConfidence: Confidence;
  readonly bulkDensityKgPerM3: number | null;
  readonly voidFraction: number | null;
  readonly packingSource: string;
  readonly doubt: CapacityDoubt | null;
  /** Default upper end of the band, dry basis; an invented default, shown as such. */
  readonly upperWaterFraction: number | null;
  readonly grades: Grades | null;
  readonly note: string;
}

/** One sigma as ln(1 + the relative spread), the same at every humidity. */
const even = (relative: number): CapacityDoubt => ({
  below: Math.log(1 + relative),
  above: Math.log(1 + relative),
  from: 0.6,
  to: 0.7,
});
const film = (filmCapacity: number, filmC: number, filmK: number): IsothermNumbers => ({
  filmCapacity,
  filmC,
  filmK,
  poreCapacity: 0,
  poreActivity: 0.785,
  poreWidth: 0.05,
});

const unknownWater = {
  isotherm: null,
  isothermSource: 'no data found',
  isothermConfidence: 'guess',
  doubt: null,
  upperWaterFraction: null,
  grades: null,
} as const;

export const sorbentClasses: readonly SorbentClass[] = [
  {
    name: 'silica',
    isotherm: {
      filmCapacity: 0.066,
      filmC: 6.8,
      filmK: 0.83,
      poreCapacity: 0.42,
      poreActivity: 0.785,
      poreWidth: 0.05,
    },
    isothermSource:
      'about 6 nm pores, 500 m²/g; not measured: bracketed by non-porous silica, intermediate-density gel and 4 nm silica (NIST-ISODB 10.1007/s10450-016-9845-2), pore filling by the Kelvin equation',
    isothermConfidence: 'derived',
    bulkDensityKgPerM3: 500,
    voidFraction: 0.4,
    packingSource: 'derived from a pore volume of 0.75 mL/g; density common practice',
    // 30 % to 60 % RH, a factor of 2 above.
    doubt: { below: Math.log(1.3), above: Math.log(2), from: 0.6, to: 0.7 },
    upperWaterFraction: 0.05,
    grades: silicaGrades,
    note: 'Dried silica takes up water from 23 % RH upwards past 5 %. Desorption lies higher than the model.',
  },
  {
    name: 'alumina',
    isotherm: film(0.0417, 33.8, 0.847),
    isothermSource:
      'about 155 m²/g: the fit to activated alumina of 350 m²/g (NIST-ISODB 10.1021/la901107s, Fig. 5), scaled by area',
    isothermConfidence: 'derived',
    bulkDensityKgPerM3: 950,
    voidFraction: 0.52,
    packingSource: 'from memory, 900 to 1000 kg/m³; void derived from a pore volume of 0.25 mL/g',
    doubt: even(0.35),
    upperWaterFraction: 0.03,
    grades: aluminaGrades,
    note: 'Half of its water at 50 % RH is on by 10 % RH: a dried bottle loses its grade sooner than silica.',
  },
  {
    name: 'c18',
    isotherm: film(0.0066, 6.8, 0.83),
    isothermSource:
      'a tenth of the silica film, no pore filling: about 10 % of the surface is bare on end-capped phases (LCGC N. Am. 39(1) 2021, 33)',
    isothermConfidence: 'guess',
    bulkDensityKgPerM3: 550,
    voidFraction: 0.4,
    packingSource: 'as silica with its phase; from memory',
    doubt: { below: Math.log(3), above: Math.log(3), from: 0.6, to: 0.7 },
    upperWaterFraction: 0.006,
    grades: null,
    note: 'A guess within a factor of 3; phases that are not end-capped can be two to three times wetter.',
  },
  {
    name: 'magnesium silicate',
    isotherm: film(0.04, 6.8, 0.83),
    isothermSource: '0.6 of the silica film for 250 to 300 m²/g; no data found',
    isothermConfidence: 'guess',
    bulkDensityKgPerM3: 480,
    voidFraction: 0.45,
    packingSource: 'from memory',
    doubt: { below: Math.LN2, above: Math.LN2, from: 0.6, to: 0.7 },
    upperWaterFraction: 0.03,
    grades: magnesiumSilicateGrades,
    note: 'A guess within a factor of 2: one sample weighed after standing over a salt puts it right.',
  },
  {
    name: 'cellulose',
    isotherm: film(0.036, 9, 0.78),
    isothermSource: 'common values for microcrystalline cellulose',
    isothermConfidence: 'from memory',
    bulkDensityKgPerM3: 350,
    voidFraction: 0.55,
    packingSource: 'from memory',
    doubt: even(0.25),
    upperWaterFraction: 0.05,
    grades: null,
    note: '',
  },
  {
    name: 'amino',
    ...unknownWater,
    bulkDensityKgPerM3: 550,
    voidFraction: 0.4,
    packingSource: 'as silica; from memory',
    note: 'Polar phase: wetter than c18, drier than bare silica, how much is not known. At most 60 to 80 °C.',
  },
  {
    name: 'cyano',
    ...unknownWater,
    bulkDensityKgPerM3: 550,
    voidFraction: 0.4,
    packingSource: 'as silica; from memory',
    note: 'Between c18 and bare silica, how much is not known. At most 80 to 100 °C.',
  },
  {
    name: 'diol',
    ...unknownWater,
    bulkDensityKgPerM3: 550,
    voidFraction: 0.4,
    packingSource: 'as silica; from memory',
    note: 'Polar phase: its water is not known. At most 80 to 100 °C.',
  },
  {
    name: 'polyamide',
    ...unknownWater,
    bulkDensityKgPerM3: 250,
    voidFraction: null,
    packingSource: 'from memory, unsure',
    note: 'Swells with water; no isotherm found.',
  },
  {
    name: 'kieselguhr',
    ...unknownWater,
    bulkDensityKgPerM3: 300,
    voidFraction: 0.8,
    packingSource: 'from memory, unsure',
    note: 'Wide pores, small surface: takes up little water from room air, how little is not known. Calcined grades hold crystalline silica.',
  },
  {
    name: 'silver-impregnated silica',
    ...unknownWater,
    bulkDensityKgPerM3: 550,
    voidFraction: 0.4,
    packingSource: 'as silica; from memory',
    note: 'Silver nitrate takes up water of its own; not known. Keep dark.',
  },
  {
    name: 'desiccant gel',
    // Least squares through the points below, 0.3 % water rms; the numbers describe, they do not explain.
    isotherm: {
      filmCapacity: 0.1947,
      filmC: 20,
      filmK: 0.2171,
      poreCapacity: 0.1238,
      poreActivity: 0.3636,
      poreWidth: 0.0855,
    },
    isothermSource: 'fitted to measured points at 20 °C (JCED 10.1021/je400517c Table 3, NIST-ISODB)',
    isothermConfidence: 'derived',
    bulkDensityKgPerM3: 700,
    voidFraction: 0.4,
    packingSource: 'from memory',
    doubt: even(0.15),
    upperWaterFraction: null,
    grades: null,
    note: 'Narrow pores, 2.2 nm: takes up from dry air what chromatographic silica does not. Half-spent gel (20 to 40 % RH) wets what is drier.',
  },
];

/** Sorbent on a plate, 0.1 kg/m² at 0.25 mm, in proportion for other layers; thickness and binder make it ±30 % (from memory). */
export const layerDensityKgPerM3 = 400;

export const sorbentClass = (name: string): SorbentClass | null =>
  sorbentClasses.find((one) => one.name === name) ?? null;

/** Numbers of a class, or null when its isotherm or packing is not known. As a layer on a plate it has the layer's density. */
export function sorbentNumbers(one: SorbentClass, layer = false): SorbentNumbers | null {
  const { isotherm, bulkDensityKgPerM3, voidFraction, doubt, grades } = one;
  if (!isotherm || bulkDensityKgPerM3 === null || voidFraction === null || !doubt) return null;
  return {
    isotherm,
    bulkDensityKgPerM3: layer ? layerDensityKgPerM3 : bulkDensityKgPerM3,
    voidFraction,
    doubt,
    grades,
  };
}
