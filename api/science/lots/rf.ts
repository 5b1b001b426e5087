// What a retention factor may be: how far a spot ran, of how far the solvent ran.

export type RfWrong = 'not a number' | 'below 0' | 'above 1' | 'front not above the start' | 'front below the spot';

/** Null when it can be; column retention may exceed 1 and is not asked here. */
export function rfWrong(rf: number): RfWrong | null {
  if (!Number.isFinite(rf)) return 'not a number';
  return rf < 0 ? 'below 0' : rf > 1 ? 'above 1' : null;
}

export interface Distances {
  /** From the start line, mm. */
  readonly spotMm: number;
  readonly frontMm: number;
}

/** The Rf, or why there is none. */
export function rfOf({ spotMm, frontMm }: Distances): number | RfWrong {
  if (!Number.isFinite(spotMm) || !Number.isFinite(frontMm)) return 'not a number';
  if (frontMm <= 0) return 'front not above the start';
  if (spotMm < 0) return 'below 0';
  return spotMm > frontMm ? 'front below the spot' : spotMm / frontMm;
}
