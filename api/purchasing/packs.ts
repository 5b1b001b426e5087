// What packs of an offer or order hold, as stock counts it: dry grams, or plates.
import { certificateWater } from '../stock/service.ts';
import { packAmount, type Packed } from './item-words.ts';

interface Certified {
  certificateWaterFraction: number | null;
  certificateMaxWaterFraction: number | null;
}

const nothingSaid: Certified = { certificateWaterFraction: null, certificateMaxWaterFraction: null };

/** Dry grams in a gram as received, by the certificate of the sorbent's last lot; as any lot without one where there is none. */
export const dryShareOf = (last: Certified | undefined): number =>
  1 / (1 + certificateWater(last ?? nothingSaid).waterFraction);

/** In one pack: dry grams, or plates. */
export const dryPerPack = (of: Packed, dryShare: number): number =>
  packAmount(of) * (of.packPlates === null ? dryShare : 1);
