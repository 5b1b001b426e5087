// The words in which a container's history is told to the estimator, and its start, its bed and its air.
// Everything here is plain data; times are seconds since 1970 (UTC), quantities are SI.

import type { RoomAir } from './climate.ts';
import type { InOven } from './oven-dried.ts';

/** One UTC day of a room's air as 288 means of 300 s each. */
export interface DayBlocks {
  /** Days since 1970-01-01, UTC. */
  readonly day: number;
  readonly temperatureC: Float64Array;
  readonly vapourKgPerM3: Float64Array;
  readonly saturatedKgPerM3: Float64Array;
  /** 0 measured or bridged, 1 filled by the typical day, 2 nothing known (the other arrays are not read there). */
  readonly uncertain: Uint8Array;
}

/** A typical day: the same 288 means on the UTC clock, held to be uncertain wherever it is used. */
export type TypicalDay = Omit<DayBlocks, 'day' | 'uncertain'>;

/** How a container is shut; a conductance is that of the whole closure, m³/s. */
export type Closure = 'tight' | 'well closed' | 'loosely covered' | 'sealed' | { readonly conductanceM3PerS: number };
export type Lid = 'open' | Closure;

/** Parameters of w(a), kg water per kg dry sorbent over reference activity; see `isotherm.ts`. */
export interface IsothermNumbers {
  readonly filmCapacity: number;
  readonly filmC: number;
  readonly filmK: number;
  readonly poreCapacity: number;
  readonly poreActivity: number;
  readonly poreWidth: number;
}

/** One sigma of ln(capacity): `below` up to the reference activity `from`, rising linearly to `above` at `to`. */
export interface CapacityDoubt {
  readonly below: number;
  readonly above: number;
  readonly from: number;
  readonly to: number;
}

export interface SorbentNumbers {
  readonly isotherm: IsothermNumbers;
  /** Dry sorbent per bed volume. */
  readonly bulkDensityKgPerM3: number;
  /** Void between the grains, of the bed volume. */
  readonly voidFraction: number;
  readonly doubt: CapacityDoubt;
  /** Water added to make each activity grade, of the total mass; null where no table is known. */
  readonly grades: readonly { readonly grade: string; readonly waterOfTotal: number }[] | null;
}

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

/** Water of well-mixed material, handed from one container to another with what it depends on. */
export interface Handover {
  readonly waterFraction: number;
  /** ∂w/∂(ln factor), or ∂w/∂φ for `bias`. */
  readonly factors: readonly { readonly factor: string; readonly value: number }[];
  readonly startSdLn: number;
  readonly known: boolean;
  /** When the water was last set as a whole, s; what `start:` among its factors began. Null where nobody knows. */
  readonly fillS?: number | null;
  /** Temperature of its last drying, °C; null where none is known of. */
  readonly driedAtC?: number | null;
}

/** What the container was when its history began. `dryKg` counts sorbent, `plates` the plates of a box (1 otherwise). */
export interface Start {
  readonly atS: number;
  readonly room: string;
  readonly lid: Lid;
  readonly habit: Habit | null;
  readonly scooping: Scooping;
  readonly dryKg: number;
  readonly plates: number;
  readonly water:
    | { readonly kind: 'known'; readonly waterFraction: number; readonly sdLn: number }
    | { readonly kind: 'unknown'; readonly assumedWaterFraction: number }
    | { readonly kind: 'handover'; readonly handover: Handover };
}

/** What happened, each `atS`; at one instant in the order given. `id` names the event a handover belongs to. */
export type Action = { readonly atS: number } & (
  | { readonly kind: 'opened' }
  | { readonly kind: 'closed'; readonly closure: Closure }
  | { readonly kind: 'moved'; readonly room: string }
  /** Sorbent leaves (portion, loss, discard); the lid is off for `openSeconds` if it was on. */
  | { readonly kind: 'taken'; readonly id: string; readonly dryKg: number; readonly openSeconds: number }
  | { readonly kind: 'plates taken'; readonly id: string; readonly plates: number; readonly openSeconds: number }
  /** The book bends to the shelf: this much (these many plates) is there. */
  | { readonly kind: 'counted'; readonly dryKg: number; readonly plates: number }
  | { readonly kind: 'mixed' }
  /** Sets a level profile; `sd` is one sigma of the water fraction. */
  | {
      readonly kind: 'dried';
      readonly waterFraction: number;
      readonly sd: number;
      /** Where an oven did it. */
      readonly driedAtC?: number;
    }
  /** Out of the oven: what is left follows from the water it went in with. */
  | ({ readonly kind: 'in oven' } & InOven)
  /** Stood over a salt or in air of this relative humidity until nothing changed. */
  | { readonly kind: 'equilibrated'; readonly humidity: number; readonly temperatureC: number }
  | {
      readonly kind: 'observed';
      readonly of: 'whole' | 'scoop';
      readonly waterFraction: number;
      readonly sd: number;
      /** Nothing was known of the water before it: what is learned begins anew there. */
      readonly anew?: boolean;
    }
  /** Material joins and everything is mixed. */
  | { readonly kind: 'combined'; readonly parts: readonly { readonly dryKg: number; readonly handover: Handover }[] }
  | { readonly kind: 'habit'; readonly habit: Habit | null }
  | { readonly kind: 'scooping'; readonly scooping: Scooping }
  /** Mobile phase or solvent: takes no part until dried. */
  | { readonly kind: 'wetted' }
);

/** A number that is known only so well: `ln` its learned natural logarithm (0 when nothing was learned), `sd` one sigma of it. */
export interface Factor {
  /** `capacity`, `bed`, `open`, `closed:tight` (or another closure's name), `container`, `bias` (of φ, not a logarithm). */
  readonly factor: string;
  readonly ln: number;
  readonly sd: number;
}
/** Those that differ from the priors of `uncertainty.ts`. */
export type Factors = readonly Factor[];

/** What is held of all factors together after learning, by the names of `calibration/factors.ts`. */
export interface Held {
  readonly has: (name: string) => boolean;
  /** Of two factors that are held; of one and itself its variance. */
  readonly covariance: (one: string, other: string) => number;
}

/** What weighings taught about a container: its lot, what its lot shares with others, and how sure the factors are together. */
export interface Teaching {
  readonly lot: string;
  readonly pool: string;
  readonly held: Held;
}

/** The band the water should lie in; null where the band has no such end. */
export interface Target {
  readonly upper: number | null;
  readonly lower: number | null;
  /** `equilibrated`: the band is water at a humidity and moves with the sorbent's capacity, whose doubt therefore cancels. */
  readonly policy: 'dry' | 'as received' | 'set' | 'equilibrated';
}

/** The lab's four figures. */
export interface Thresholds {
  readonly redryChance: number;
  readonly useSoonChance: number;
  readonly useSoonHours: number;
  readonly tooDryChance: number;
}

export type State = 'GOOD' | 'USE_SOON' | 'REDRY' | 'TOO_DRY' | 'UNKNOWN';

export interface Answer {
  readonly asOfS: number;
  readonly state: State;
  /** kg water per kg dry sorbent; the range is the 90 % interval. All NaN never occurs: unknown stock shows the assumed course. */
  readonly meanWaterFraction: number;
  readonly low: number;
  readonly high: number;
  readonly scoopWaterFraction: number;
  readonly scoopLow: number;
  readonly scoopHigh: number;
  readonly topWaterFraction: number;
  /** P(next scoop past the upper end); for plates and columns P(mean past it). Null without an upper end. */
  readonly chancePastLimit: number | null;
  readonly chanceTooDry: number | null;
  /** To the crossing of the band by the median, as it stands, if open, if closed; 0 when past, null beyond 90 days. */
  readonly hoursToLimit: number | null;
  readonly hoursToLimitOpen: number | null;
  readonly hoursToLimitClosed: number | null;
  readonly reason: string;
  /** Activity grade I to V, null where no table exists for the class or none was asked for. */
  readonly grade: string | null;
  /** How deep the bed is past the upper end, from the top. */
  readonly pastLimitDepthM: number | null;
  /** Plates only: minutes in room air until within a twentieth of equilibrium. */
  readonly minutesToRoomEquilibrium: number | null;
  /** Some place holds more than 95 % RH would give: the number is a lower bound. */
  readonly condensing: boolean;
  readonly isOpen: boolean;
  readonly openedAtS: number | null;
  readonly dryKg: number;
  readonly plates: number;
  readonly profile: readonly { readonly depthM: number; readonly waterFraction: number }[];
}

/** Everything the fold needs to go on from `atS`, after all that happened at that instant; about 1.2 kB. */
export interface Checkpoint {
  readonly atS: number;
  readonly bytes: Uint8Array;
}

export interface FoldInput {
  readonly spec: BedSpec;
  readonly start: Start;
  /** In order of time, then of recording. Those up to a given checkpoint's instant may be left out. */
  readonly actions: readonly Action[];
  /** By room, at least every room the container was in since the checkpoint. */
  readonly airs: ReadonlyMap<string, RoomAir>;
  readonly checkpoint: Checkpoint | null;
  readonly asOfS: number;
  readonly target: Target;
  readonly thresholds: Thresholds;
  readonly factors: Factors;
  /** Where anything was learned: ranges then come from it, not from the factors' own sigmas. */
  readonly taught?: Teaching | null;
}

export interface FoldOutput {
  readonly answer: Answer;
  /** Those worth keeping at `asOfS`, oldest first, of the instants passed in this run. */
  readonly checkpoints: readonly Checkpoint[];
  /** What left in this run, by the id of its event. */
  readonly handovers: readonly { readonly id: string; readonly dryKg: number; readonly handover: Handover }[];
  readonly waterGainedKg: number;
  readonly steps: number;
}
