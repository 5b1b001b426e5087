// Where things stand on the water strip, which runs from 0 to twice the limit.

export interface StripInput {
  /** Water fractions, dry basis; null where nobody knows. */
  mean: number | null;
  scoop: number | null;
  scoopLow: number | null;
  scoopHigh: number | null;
  /** Ends of the target band; null where the band has no such end. */
  upper: number | null;
  lower: number | null;
}

/** The same of an estimate as the API answers it. */
export const stripInputOf = (of: {
  meanWaterFraction: number | null;
  scoopWaterFraction: number | null;
  scoopLow: number | null;
  scoopHigh: number | null;
  upperWaterFraction: number | null;
  lowerWaterFraction: number | null;
}): StripInput => ({
  mean: of.meanWaterFraction,
  scoop: of.scoopWaterFraction,
  scoopLow: of.scoopLow,
  scoopHigh: of.scoopHigh,
  upper: of.upperWaterFraction,
  lower: of.lowerWaterFraction,
});

/** Positions in percent of the strip's length. */
export interface Strip {
  /** The water fraction at the right end. */
  end: number;
  limit: number | null;
  lower: number | null;
  bar: { from: number; to: number; beyond: boolean } | null;
  scoop: { at: number; beyond: boolean } | null;
  mean: { at: number; beyond: boolean } | null;
}

/** Without an upper end the strip runs to the next round share above what it must show. */
function endOf({ upper, scoopHigh, scoop, mean }: StripInput): number {
  if (upper !== null && upper > 0) return 2 * upper;
  const most = Math.max(scoopHigh ?? 0, scoop ?? 0, mean ?? 0, 0.005);
  return [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1].find((round) => round >= most * 1.1) ?? most * 1.1;
}

export function stripOf(input: StripInput): Strip {
  const end = endOf(input);
  const place = (fraction: number): number => Math.min(100, Math.max(0, (fraction / end) * 100));
  const dot = (fraction: number | null) => (fraction === null ? null : { at: place(fraction), beyond: fraction > end });
  const { scoopLow, scoopHigh, upper, lower } = input;
  return {
    end,
    limit: upper === null ? null : place(upper),
    lower: lower === null || lower <= 0 ? null : place(lower),
    bar:
      scoopLow === null || scoopHigh === null
        ? null
        : { from: place(scoopLow), to: place(scoopHigh), beyond: scoopHigh > end },
    scoop: dot(input.scoop),
    mean: dot(input.mean),
  };
}
