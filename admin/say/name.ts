// Names of numbers as the API writes them, in plain English, and the numbers themselves.

const plain: Record<string, string> = {
  filmCapacity: 'film capacity',
  filmC: 'film strength C',
  filmK: 'film strength K',
  poreCapacity: 'pore capacity',
  poreActivity: 'activity at which pores fill',
  poreWidth: 'width of the pore filling',
  bulkDensityKgPerM3: 'bulk density',
  voidFraction: 'void between the grains',
  learnedCapacity: 'water it holds, as learned',
  learnedClosure: 'what its kind of closure lets in, as learned',
  learnedContainer: 'what its own closure lets in besides, as learned',
  learnedOpenMouth: 'what an open mouth lets in, as learned',
  learnedBed: 'speed through the bed, as learned',
  learnedHumidity: 'the loggers’ humidity, as learned',
};

const UNIT_ENDS = /(Percent|Fraction|KgPerM3|GramsPerM3|Grams|Mm|Um|Nm|Ml|C)$/;

/** `bulkDensityKgPerM3` as "bulk density"; what is plain already stays. */
export function spokenName(name: string): string {
  if (!/[a-z][A-Z]/.test(name)) return plain[name] ?? name;
  return (
    plain[name] ??
    name
      .replace(UNIT_ENDS, '')
      .replace(/([a-z])([A-Z])/g, '$1 $2')
      .toLowerCase()
  );
}

/** A value with its unit, at most four figures; "unknown" where nobody knows. */
export function figure(value: number | null, unit: string): string {
  if (value === null) return 'unknown';
  const digits = String(Number(value.toPrecision(4)));
  return unit === '' || unit === '1' ? digits : `${digits}\u00a0${unit}`;
}
