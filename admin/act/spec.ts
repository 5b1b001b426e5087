// What a form is: which fields it asks, and what it says.
import type { EventName } from './acts.ts';
import type { Choice, FieldSpec } from './field.ts';

export interface Names {
  rooms: readonly Choice[];
  vessels: readonly Choice[];
}

export interface ActSpec {
  name: EventName;
  /** On the button that opens the form, and above it. */
  title: string;
  /** On the button that records it. */
  record: string;
  fields: readonly FieldSpec[];
  /** Told at once, without a form, unless it was at another time. */
  atOnce?: boolean;
  caution?: string;
  /** What to do instead when it is refused. */
  otherwise?: EventName;
  /** Its water can be had from the weighings of a loss on drying. */
  fromWeighings?: boolean;
  /** What an oven would leave is said beside its fields. */
  forecast?: boolean;
}

/** A form that fits some containers only. */
export type MaybeSpec = ActSpec & { fits?: boolean };

/** What tells whom it fits. */
export interface Shape {
  isColumn: boolean;
  isBox: boolean;
}
