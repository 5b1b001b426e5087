// What is learned from: containers with their histories, and what the balance said of them.
import type { FoldInput } from '../history.ts';

/**
 * What each way of weighing is worth, one sigma (exposure model, section 5). A loss on drying of a scoop or of a mixed
 * sample, kg/kg; the whole container on the balance, kg each time, so that a gain since receipt has √2 of it.
 */
export const weighingNoise = { sampleFraction: 0.0015, wholeKg: 0.05e-3 } as const;

/** What was found, dry basis, true water. */
export type Found =
  /** A sample of the next scoop, or of the whole (mixed, or a fair sample); `sd` is one sigma, kg/kg. */
  | { readonly of: 'scoop' | 'whole'; readonly waterFraction: number; readonly sd: number }
  /** The whole against its own mass at `sinceS`, with nothing put in or taken out between; `sdKg` of one weighing. */
  | { readonly of: 'gain'; readonly gainKg: number; readonly sinceS: number; readonly sdKg: number };

export interface Weighing {
  readonly id: string;
  /** `spec.key` of its container. */
  readonly container: string;
  readonly atS: number;
  readonly found: Found;
  /** Somebody says that it is right, however far it lies from what was expected. */
  readonly confirmed: boolean;
}

export interface Weighed {
  /** From its beginning, no checkpoint; `factors` are those under which a handover at its start was reckoned. */
  readonly input: FoldInput;
  readonly lot: string;
  /** What its lot shares with others: a class, or a sorbent with an isotherm of its own. One doubt about capacity each. */
  readonly pool: string;
}
