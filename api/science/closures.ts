// What stands between a room and a bed: mouth, headspace and closure, as a resistance in s/m of bed area.
import type { Closure, Geometry, Lid } from './history.ts';

/**
 * Conductance of a closure in m³/s per litre of container, from the USP <671> classes (100 and 2000 mg of water a day
 * and litre at 75 % RH and 23 °C into dry air; limits from memory, conversion here).
 */
export const tightPerLitre = 7.5e-8;
export const wellClosedPerLitre = 1.5e-6;
/**
 * A loosely laid lid: a gap, per 0.20 m of rim. D A / L of 0.1 mm by 10 mm path gives 5e-8, 0.5 mm gives 2.5e-7 (derived);
 * the default is their geometric mean.
 */
export const loosePerRim = 1.1e-7;
const rimM = 0.2;
/** Still room air over an open mouth, m/s; 0.0015 to 0.005, flat plate and free convection (derived). */
export const stillAirMPerS = 0.003;

/** Volume conductance of a shut lid, m³/s; 0 when sealed as received. */
export function conductanceM3PerS(closure: Closure, geometry: Geometry): number {
  if (typeof closure === 'object') return closure.conductanceM3PerS;
  if (closure === 'sealed') return 0;
  if (closure === 'tight') return tightPerLitre * geometry.volumeM3 * 1000;
  if (closure === 'well closed') return wellClosedPerLitre * geometry.volumeM3 * 1000;
  return (loosePerRim * mouthRimM(geometry)) / rimM;
}

// A round mouth of the mouth's area; a plate box counts as a square tray of its plates.
function mouthRimM(geometry: Geometry): number {
  if (geometry.kind === 'plate') return 4 * Math.sqrt(geometry.plateAreaM2);
  return 2 * Math.sqrt(Math.PI * (geometry.kind === 'bed' ? geometry.mouthAreaM2 : geometry.areaM2));
}

/** The name under which a closure's inflow is learned. */
export const closureName = (closure: Closure): string => (typeof closure === 'object' ? 'given' : closure);

/** Same lid? */
export function sameLid(one: Lid, other: Lid): boolean {
  if (typeof one === 'object' && typeof other === 'object') return one.conductanceM3PerS === other.conductanceM3PerS;
  return one === other;
}
