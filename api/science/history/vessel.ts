// What sorbent lies in, how it is shut and how one takes from it.
import type { SorbentNumbers } from './sorbent.ts';

/** How a container is shut; a conductance is that of the whole closure, m³/s. */
export type Closure = 'tight' | 'well closed' | 'loosely covered' | 'sealed' | { readonly conductanceM3PerS: number };

export type Lid = 'open' | Closure;

/** A bed in a vessel, the layers of one or more plates, or a packed column open at its top. */
export type Geometry =
  | {
      readonly kind: 'bed';
      readonly areaM2: number;
      readonly mouthAreaM2: number;
      readonly heightM: number;
      readonly volumeM3: number;
    }
  | { readonly kind: 'plate'; readonly layerM: number; readonly plateAreaM2: number; readonly volumeM3: number }
  | { readonly kind: 'column'; readonly areaM2: number; readonly volumeM3: number };

/** Opened so many times a day for so long, within working hours given as seconds of the UTC day (may wrap midnight). */
export interface Habit {
  readonly timesPerDay: number;
  readonly openSeconds: number;
  readonly fromS: number;
  readonly toS: number;
}

/** How one scoops: off the top; from the side, a fair sample; or after rolling the drum, which mixes it. */
export type Scooping = 'top' | 'side' | 'rolled';

export interface BedSpec {
  /** The container's id; names its own factors. */
  readonly key: string;
  readonly sorbent: SorbentNumbers;
  readonly geometry: Geometry;
  readonly scoopKg: number;
  /** Depth of the reported top layer. */
  readonly topM: number;
  /** The closure this container usually gets, for "hours to the limit if closed". */
  readonly usualClosure: Closure;
  /** Mass transfer at an open mouth, m/s (0.003 in still room air). */
  readonly filmMPerS: number;
  readonly pressurePa: number;
}
