// What is bought and used up: a sorbent in bulk, counted in dry grams, or plates of it on one backing, counted in plates.
import type { Backing } from '../database/generated/sqlite/client.ts';

export interface Item {
  readonly sorbentId: string;
  /** Null: in bulk. */
  readonly backing: Backing | null;
}

export const unitOf = ({ backing }: Pick<Item, 'backing'>): 'g' | 'plates' => (backing === null ? 'g' : 'plates');

/** One word for an item, the same wherever it is kept. */
export const itemKey = ({ sorbentId, backing }: Item): string =>
  backing === null ? sorbentId : `${sorbentId}:${backing}`;

/** The item that a container holds. */
export const itemOf = (of: { kind: string; backing: Backing | null }, sorbentId: string): Item => ({
  sorbentId,
  backing: of.kind === 'PLATE_BOX' ? (of.backing ?? 'GLASS') : null,
});

const backingWord: Record<Backing, string> = { GLASS: 'glass', ALUMINIUM: 'aluminium', PLASTIC: 'plastic' };

/** `Silica 40–63 µm`, `Silica plates on glass`; a name that says already that it is plates stays as it is. */
export const itemName = (sorbentName: string, backing: Backing | null): string =>
  backing === null || /plate/i.test(sorbentName) ? sorbentName : `${sorbentName}, plates on ${backingWord[backing]}`;

const number = new Intl.NumberFormat('en', { maximumSignificantDigits: 4, useGrouping: false });

/** `2.5 kg`, `400 g`, `25 plates`. */
export function quantityText(quantity: number, backing: Backing | null): string {
  if (backing !== null) return quantity === 1 ? '1 plate' : `${number.format(quantity)} plates`;
  return Math.abs(quantity) >= 1000 ? `${number.format(quantity / 1000)} kg` : `${number.format(quantity)} g`;
}
