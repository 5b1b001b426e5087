// The sorbent and the pack of an offer or order in words.
import type { Backing } from '../database/generated/sqlite/client.ts';
import { quantityText } from './item.ts';

export interface Packed {
  backing: Backing | null;
  packGrams: number | null;
  packPlates: number | null;
}

/** Grams as received or plates in one pack. */
export const packAmount = ({ packGrams, packPlates }: Packed): number => packPlates ?? packGrams ?? 0;

/** `2 packs of 5 kg`, `1 box of 25 plates`. */
export function packsText(packs: number, of: Packed): string {
  const [one, many] = of.packPlates === null ? ['pack', 'packs'] : ['box', 'boxes'];
  return `${packs} ${packs === 1 ? one : many} of ${quantityText(packAmount(of), of.packPlates === null ? null : (of.backing ?? 'GLASS'))}`;
}
