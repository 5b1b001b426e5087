// What drying needs to know of a sorbent beside isotherm, density and voids, each figure with how far it is to be trusted.
//
// `derived` worked out from published points; `from memory` a handbook not seen here; `guess` a placeholder to be measured.
import { sorbentClass, type Confidence } from '../properties.ts';
import type { IsothermNumbers } from '../history.ts';
import type { DryingSorbent } from './load.ts';

export interface Figure {
  readonly value: number;
  readonly confidence: Confidence;
  readonly source: string;
}

export interface DryingFigures {
  /** Of the tail of tightly held water, kg/kg. */
  readonly tailCapacity: Figure;
  readonly particleM: Figure;
  readonly heatCapacityJPerKgK: Figure;
  readonly solidWPerMK: Figure;
  readonly gasWPerMK: Figure;
  readonly heatOfSorptionJPerKg: Figure;
}

const derived = (value: number, source: string): Figure => ({ value, confidence: 'derived', source });
const remembered = (value: number, source: string): Figure => ({ value, confidence: 'from memory', source });
const guess = (value: number, source: string): Figure => ({ value, confidence: 'guess', source });

/** The tail's other two numbers, the same for every class: fitted with its capacity to the gel's 60 to 140 °C equilibria. */
export const tailActivity = derived(0.05, 'desiccant gel of JCED 10.1021/je400517c, Table 3');
export const tailExponent = derived(0.4, 'desiccant gel of JCED 10.1021/je400517c, Table 3');

const gelTail = 'desiccant gel of JCED 10.1021/je400517c, scaled by 0.67 (an assumption)';
const powder = 'powder in air 0.08 to 0.12 W/(m K), in hard vacuum 0.02 to 0.05';
const usualGrain = 'middle of the usual grade';

export const dryingFigures: Readonly<Record<string, DryingFigures>> = {
  silica: {
    tailCapacity: derived(0.0105, gelTail),
    particleM: derived(50e-6, '40 to 63 µm'),
    heatCapacityJPerKgK: remembered(921, 'tables of dry silica gel in the sorption cooling literature'),
    solidWPerMK: guess(0.03, powder),
    gasWPerMK: guess(0.09, powder),
    heatOfSorptionJPerKg: derived(2.75e6, 'isosteres of JCED 10.1021/je400517c, 2600 to 2950 kJ/kg'),
  },
  alumina: {
    tailCapacity: guess(0.0105, 'as silica'),
    particleM: derived(100e-6, '63 to 200 µm'),
    heatCapacityJPerKgK: remembered(880, 'handbook value of alumina'),
    solidWPerMK: guess(0.04, 'silica in proportion to density'),
    gasWPerMK: guess(0.11, 'silica, with wider voids'),
    heatOfSorptionJPerKg: guess(2.9e6, 'first layer 60 to 80 kJ/mol, then about 45'),
  },
  c18: {
    tailCapacity: guess(0.00105, 'a tenth of silica, as its film'),
    particleM: derived(50e-6, '40 to 63 µm'),
    heatCapacityJPerKgK: guess(1000, 'silica with its phase'),
    solidWPerMK: guess(0.03, 'as silica'),
    gasWPerMK: guess(0.09, 'as silica'),
    heatOfSorptionJPerKg: guess(2.6e6, 'a little above the latent heat of 2442 kJ/kg'),
  },
  'magnesium silicate': {
    tailCapacity: guess(0.0063, '0.6 of silica, as its film'),
    particleM: derived(150e-6, '75 to 250 µm'),
    heatCapacityJPerKgK: guess(950, usualGrain),
    solidWPerMK: guess(0.03, 'as silica'),
    gasWPerMK: guess(0.09, 'as silica'),
    heatOfSorptionJPerKg: guess(2.75e6, 'as silica'),
  },
  cellulose: {
    tailCapacity: remembered(0, 'no tail: heat of sorption falls to the latent heat, 50 to 44 kJ/mol'),
    particleM: derived(50e-6, usualGrain),
    heatCapacityJPerKgK: remembered(1340, 'handbook value of cellulose'),
    solidWPerMK: remembered(0.03, powder),
    gasWPerMK: remembered(0.06, powder),
    heatOfSorptionJPerKg: remembered(2.6e6, '50 to 44 kJ/mol, falling with water'),
  },
};

/** A sorbent of these numbers with the drying figures of a class, for a lab's own sorbents as well. */
export function dryingSorbentOf(
  isotherm: IsothermNumbers,
  bulkDensityKgPerM3: number,
  voidFraction: number,
  figures: DryingFigures,
): DryingSorbent {
  return {
    isotherm: {
      ...isotherm,
      tailCapacity: figures.tailCapacity.value,
      tailActivity: tailActivity.value,
      tailExponent: tailExponent.value,
    },
    bulkDensityKgPerM3,
    voidFraction,
    particleM: figures.particleM.value,
    heatCapacityJPerKgK: figures.heatCapacityJPerKgK.value,
    solidWPerMK: figures.solidWPerMK.value,
    gasWPerMK: figures.gasWPerMK.value,
    heatOfSorptionJPerKg: figures.heatOfSorptionJPerKg.value,
  };
}

/** A class of the table as drying sees it; null where isotherm, packing or drying figures are not known. */
export function dryingSorbent(name: string): DryingSorbent | null {
  const known = sorbentClass(name);
  const figures = dryingFigures[name];
  if (!known?.isotherm || known.bulkDensityKgPerM3 === null || known.voidFraction === null || !figures) return null;
  return dryingSorbentOf(known.isotherm, known.bulkDensityKgPerM3, known.voidFraction, figures);
}
