// A ledger in a dozen lines, kept apart from the product: what each container holds after a list of acts, or that
// the list cannot be true. Dry grams; times are whole minutes.

export interface Act {
  at: number;
  /** Order of writing down; decides at one instant. */
  place: number;
  kind: 'came' | 'poured' | 'used' | 'lost' | 'combined' | 'counted' | 'discarded';
  of: string;
  into?: string;
  grams: number;
  isVoid?: boolean;
}

interface Held {
  grams: number;
  over: boolean;
}

export type Shelf = Map<string, number>;

/** What every container holds in the end; null when something could not have happened. */
export function shelfAfter(acts: readonly Act[]): Shelf | null {
  const held = new Map<string, Held>();
  const ordered = acts.filter(({ isVoid }) => !isVoid).sort((a, b) => a.at - b.at || a.place - b.place);
  for (const { kind, of, into, grams } of ordered) {
    if (kind === 'came') {
      held.set(of, { grams, over: false });
      continue;
    }
    const from = held.get(of);
    if (!from || from.over) return null;
    if (kind === 'counted') from.grams = grams;
    else if (kind === 'discarded') Object.assign(from, { grams: 0, over: true });
    else {
      if (from.grams === 0 || grams > from.grams) return null;
      from.grams -= grams;
    }
    if (kind === 'poured' && into) held.set(into, { grams, over: false });
    if (kind === 'combined') {
      const to = held.get(into ?? '');
      if (!to || to.over) return null;
      to.grams += grams;
      Object.assign(from, { grams: 0, over: true });
    }
  }
  return new Map([...held].map(([name, { grams }]) => [name, grams]));
}

/** What came into and left the shelf as a whole; its containers together hold the difference, less what counts changed. */
export function across(acts: readonly Act[]): number {
  const sign: Record<Act['kind'], number> = {
    came: 1,
    poured: 0,
    used: -1,
    lost: -1,
    combined: 0,
    counted: 0,
    discarded: 0,
  };
  return acts.filter(({ isVoid }) => !isVoid).reduce((sum, { kind, grams }) => sum + sign[kind] * grams, 0);
}
