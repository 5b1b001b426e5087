// The water by which grams as received are booked as dry.
import type { Container } from '../database/generated/sqlite/client.ts';
import type { Transaction } from '../work.ts';

export interface Water {
  /** kg water per kg dry sorbent. */
  waterFraction: number;
  /** It is taken for granted, not estimated or measured. */
  assumed: boolean;
}

/** Taken for granted where neither estimate nor certificate says anything (product paper: 3 %). */
export const assumedWaterFraction = 0.03;

/** Water as a fraction of the mass as received, on dry basis: x / (1 − x). */
export const dryBasis = (ofTotal: number): number => ofTotal / (1 - ofTotal);

export const asReceivedBasis = (waterFraction: number): number => waterFraction / (1 + waterFraction);

/** Dry grams in grams as received. */
export const dryGramsIn = (grams: number, waterFraction: number): number => grams / (1 + waterFraction);

/** What the lot's certificate says of new stock; its maximum, or 3 %, is an assumption. */
export function certificateWater(lot: {
  certificateWaterFraction: number | null;
  certificateMaxWaterFraction: number | null;
}): Water {
  if (lot.certificateWaterFraction !== null) return { waterFraction: lot.certificateWaterFraction, assumed: false };
  return { waterFraction: lot.certificateMaxWaterFraction ?? assumedWaterFraction, assumed: true };
}

/** The estimated water of a container at an instant; null where it is unknown. */
export type WaterEstimate = (tx: Transaction, containerId: string, at: Date) => Promise<Water | null>;

let estimate: WaterEstimate = async (tx, containerId) => {
  const stored = await tx.exposure.findUnique({ where: { containerId } });
  if (!stored || stored.state === 'UNKNOWN' || stored.meanWaterFraction === null) return null;
  return { waterFraction: stored.meanWaterFraction, assumed: false };
};

/** Set once by the exposure room, which knows the water at any instant. */
export const onWater = (by: WaterEstimate): void => {
  estimate = by;
};

/** The water in a container at an instant: estimated, else its lot's certificate, else 3 %. */
export async function waterAt(tx: Transaction, container: Pick<Container, 'id' | 'lotId'>, at: Date): Promise<Water> {
  const estimated = await estimate(tx, container.id, at);
  // The estimate's arithmetic may end a rounding below nothing.
  if (estimated) return { ...estimated, waterFraction: Math.max(0, estimated.waterFraction) };
  const lot = await tx.lot.findUniqueOrThrow({ where: { id: container.lotId } });
  return { waterFraction: certificateWater(lot).waterFraction, assumed: true };
}
