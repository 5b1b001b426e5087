// What one event carried from one container into another: dry mass, its water, and what that water depends on.
import type { Handover } from '../science/history.ts';

export interface Parcel {
  readonly dryKg: number;
  readonly handover: Handover;
}

const words = new TextEncoder();
const read = new TextDecoder();

/** As stored: JSON, which keeps every number to the last bit, so that equal parcels have equal bytes. */
export const parcelBytes = ({ dryKg, handover }: Parcel): Uint8Array =>
  words.encode(
    JSON.stringify({
      dryKg,
      handover: {
        waterFraction: handover.waterFraction,
        factors: handover.factors.map(({ factor, value }) => [factor, value]),
        startSdLn: handover.startSdLn,
        known: handover.known,
        fillS: handover.fillS,
        driedAtC: handover.driedAtC,
      },
    }),
  );

interface StoredParcel {
  dryKg: number;
  handover: Omit<Handover, 'factors'> & { factors: [factor: string, value: number][] };
}

export function parcelOf(bytes: Uint8Array): Parcel {
  const { dryKg, handover } = JSON.parse(read.decode(bytes)) as StoredParcel;
  return {
    dryKg,
    handover: { ...handover, factors: handover.factors.map(([factor, value]) => ({ factor, value })) },
  };
}

export const sameBytes = (one: Uint8Array, other: Uint8Array): boolean =>
  one.length === other.length && one.every((byte, index) => byte === other[index]);

/** Stands in where nothing is known of what arrived: the state is unknown until somebody weighs. */
export const unknownHandover = (assumedWaterFraction: number): Handover => ({
  waterFraction: assumedWaterFraction,
  factors: [],
  startSdLn: Math.LN2,
  known: false,
});
