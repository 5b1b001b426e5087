// How much stock lets a wanted share of lead times pass without running out.
import { countQuantile } from '../distributions/counts.ts';
import type { LeadDemand } from './lead.ts';

export interface Reorder {
  /** Order when stock and what is on its way come down to this. */
  readonly point: number;
  /** The part of the point above what a lead time uses on average. */
  readonly safetyStock: number;
}

/** `service`: the share of lead times that should not run out, 0 to 1. */
export function reorderFor({ mean, counts }: LeadDemand, service: number): Reorder {
  const point = countQuantile(counts, service);
  return { point, safetyStock: Math.max(0, point - mean) };
}
