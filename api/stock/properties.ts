// The numbers of a sorbent as the lab keeps them: filled from the table of its class, each with where it comes
// from, and replaced one by one by what the lab has measured.
import type { Confidence, NumberOrigin } from '../database/generated/sqlite/client.ts';
import { sorbentClass, type SorbentClass } from '../science/properties.ts';

export interface Property {
  name: string;
  value: number | null;
  unit: string;
  origin: NumberOrigin;
  confidence: Confidence;
  source: string;
}

export const bulkDensityName = 'bulkDensityKgPerM3';

/** Names, with their units. The first six are the isotherm (exposure model, section 2). */
export const propertyUnits = {
  filmCapacity: 'kg/kg',
  filmC: '1',
  filmK: '1',
  poreCapacity: 'kg/kg',
  poreActivity: '1',
  poreWidth: '1',
  [bulkDensityName]: 'kg/m³',
  voidFraction: '1',
  capacityDoubt: '1',
  capacityDoubtWet: '1',
} as const;

export type PropertyName = keyof typeof propertyUnits;
/** Between which each makes sense; beyond, the isotherm would have no meaning or no end. */
export const propertyBounds: Record<PropertyName, readonly [number, number]> = {
  filmCapacity: [0.0001, 1],
  filmC: [0.05, 1000],
  filmK: [0.05, 0.99],
  poreCapacity: [0, 3],
  poreActivity: [0.05, 0.99],
  poreWidth: [0.005, 0.5],
  [bulkDensityName]: [50, 3000],
  voidFraction: [0.05, 0.95],
  capacityDoubt: [0.01, 2],
  capacityDoubtWet: [0.01, 2],
};

export const propertyNames = Object.keys(propertyUnits) as PropertyName[];
export const isothermNames = ['filmCapacity', 'filmC', 'filmK', 'poreCapacity', 'poreActivity', 'poreWidth'] as const;

const confidences: Record<SorbentClass['isothermConfidence'], Confidence> = {
  confirmed: 'CONFIRMED',
  'from memory': 'FROM_MEMORY',
  derived: 'DERIVED',
  guess: 'GUESS',
};

function property(name: PropertyName, value: number | null, confidence: Confidence, source: string): Property {
  return { name, value, unit: propertyUnits[name], origin: value === null ? 'UNKNOWN' : 'TABLE', confidence, source };
}

const doubtSource = 'how far sorbents of the class lie apart: one standard deviation of the logarithm of its water';

/** What the table of a class says, unknown numbers included; all unknown for a class of the lab's own. */
export function classProperties(className: string): Property[] {
  const known = sorbentClass(className);
  if (!known) return propertyNames.map((name) => property(name, null, 'GUESS', 'a class of the lab: not given yet'));
  const confidence = confidences[known.isothermConfidence];
  return [
    ...isothermNames.map((name) => property(name, known.isotherm?.[name] ?? null, confidence, known.isothermSource)),
    property(bulkDensityName, known.bulkDensityKgPerM3, 'FROM_MEMORY', known.packingSource),
    property('voidFraction', known.voidFraction, 'FROM_MEMORY', known.packingSource),
    property('capacityDoubt', known.doubt?.below ?? null, confidence, doubtSource),
    property('capacityDoubtWet', known.doubt?.above ?? null, confidence, doubtSource),
  ];
}
