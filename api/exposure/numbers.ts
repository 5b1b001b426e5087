// A sorbent's numbers for the estimator: those stored with it, the class table's where it has none of its own.
import type { FleetLot, FleetProperty } from '../database/fleet.ts';
import type { CapacityDoubt, IsothermNumbers, SorbentNumbers } from '../science/history.ts';
import { sorbentClass, sorbentNumbers, type SorbentClass } from '../science/properties.ts';
import { dryingIsotherm } from '../science/residual.ts';
import type { DryingIsotherm } from '../science/tray/isotherm.ts';
import type { DryingSorbent } from '../science/tray/load.ts';
import { dryingFigures, dryingSorbentOf } from '../science/tray/properties.ts';

/** Names of the stored numbers of an isotherm and of a packing; the same as in the class table. */
export const isothermNames = ['filmCapacity', 'filmC', 'filmK', 'poreCapacity', 'poreActivity', 'poreWidth'] as const;

/** One sigma of ln(capacity) for a class of the lab's own, until somebody weighs: a factor of two (invented default). */
const ownDoubt = { below: Math.LN2, above: Math.LN2, from: 0.6, to: 0.7 };

/** A class that no table knows: everything must be stored with the sorbent. */
const unheardOf = (name: string): SorbentClass => ({
  name,
  isotherm: null,
  isothermSource: 'none',
  isothermConfidence: 'guess',
  bulkDensityKgPerM3: null,
  voidFraction: null,
  packingSource: 'none',
  doubt: ownDoubt,
  upperWaterFraction: null,
  grades: null,
  note: '',
});

function isothermFrom(stored: ReadonlyMap<string, number>, table: IsothermNumbers | null): IsothermNumbers | null {
  const value = (name: (typeof isothermNames)[number], otherwise: number | undefined) =>
    stored.get(name) ?? table?.[name] ?? otherwise;
  const filmCapacity = value('filmCapacity', undefined);
  const filmC = value('filmC', undefined);
  const filmK = value('filmK', undefined);
  if (filmCapacity === undefined || filmC === undefined || filmK === undefined) return null;
  return {
    filmCapacity,
    filmC,
    filmK,
    poreCapacity: value('poreCapacity', 0) ?? 0,
    poreActivity: value('poreActivity', 0.785) ?? 0.785,
    poreWidth: value('poreWidth', 0.05) ?? 0.05,
  };
}

const doubtFrom = (stored: ReadonlyMap<string, number>, table: CapacityDoubt): CapacityDoubt => {
  const below = stored.get('capacityDoubt') ?? table.below;
  return { ...table, below, above: stored.get('capacityDoubtWet') ?? Math.max(below, table.above) };
};

export interface Numbers {
  /** With its tail of tightly held water. */
  readonly isotherm: DryingIsotherm;
  readonly bed: SorbentNumbers;
  /** The same on a plate. */
  readonly layer: SorbentNumbers;
  /** Loose, as the oven sees it; null where its class's figures for drying are not known. */
  readonly drying: DryingSorbent | null;
}

/** The numbers, or what is missing for an estimate. */
export function numbersOf(
  { sorbentClass: name, sorbentName }: Pick<FleetLot, 'sorbentClass' | 'sorbentName'>,
  properties: readonly Pick<FleetProperty, 'name' | 'value'>[],
): Numbers | string {
  const stored = new Map(properties.flatMap(({ name, value }) => (value === null ? [] : [[name, value] as const])));
  const table = sorbentClass(name) ?? unheardOf(name);
  const own: SorbentClass = {
    ...table,
    isotherm: isothermFrom(stored, table.isotherm),
    doubt: doubtFrom(stored, table.doubt ?? ownDoubt),
    bulkDensityKgPerM3: stored.get('bulkDensityKgPerM3') ?? table.bulkDensityKgPerM3,
    voidFraction: stored.get('voidFraction') ?? table.voidFraction,
  };
  if (!own.isotherm) return `how much water ${sorbentName} holds is not known: missing isotherm`;
  if (own.bulkDensityKgPerM3 === null) return `missing bulk density of ${sorbentName}`;
  if (own.voidFraction === null) return `missing void fraction of ${sorbentName}`;
  const bed = sorbentNumbers(own);
  const layer = sorbentNumbers(own, true);
  if (!bed || !layer) return `missing numbers of ${sorbentName}`;
  const figures = dryingFigures[name];
  const drying = figures ? dryingSorbentOf(own.isotherm, own.bulkDensityKgPerM3, own.voidFraction, figures) : null;
  return { isotherm: dryingIsotherm(own.isotherm, name), bed, layer, drying };
}
