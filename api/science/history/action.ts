// How a history begins and what happens in it.
import type { InOven } from '../oven-dried.ts';
import type { Lid, Habit, Scooping, Closure } from './vessel.ts';

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
