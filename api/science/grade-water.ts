// How much water brings a batch to a grade, and what to mind. Water fractions here are of the total, as the tables have them.

/** Common practice; a reference deactivation of alumina rests 12 h or longer (EU regulation on olive oil). */
export const deactivationCautions: readonly string[] = [
  'Add the water in portions and shake until no lumps are left.',
  'Let it stand closed for 12 hours or longer before use: the water needs that time to spread.',
];

/**
 * Grams of water to add to `grams` that hold `now` of their total, so that they hold `wanted`: m (w − w₀)/(1 − w).
 * Null when it is wetter already: dry it instead.
 */
export function waterToAddG(grams: number, now: number, wanted: number): number | null {
  return wanted < now ? null : (grams * (wanted - now)) / (1 - wanted);
}
