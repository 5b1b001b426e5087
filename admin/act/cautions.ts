// What to mind at a step, one short sentence beside it. Common practice or from memory; the lab's rules come first.
import type { Line } from '../fields.ts';

const rules = 'Follow your lab’s rules and the safety data sheet.';

type Of = Pick<Line, 'kind'> & { touchedSolventAt?: string | null };

/** Why it never goes to an oven, or null. */
export function ovenCaution({ kind, touchedSolventAt }: Of): string | null {
  if (kind === 'COLUMN') return 'a packed column is not dried';
  // Plates may go again once their solvent is gone, which the API knows and says.
  if (!touchedSolventAt || kind === 'PLATE_BOX') return null;
  return 'it touched solvent or sample, and such sorbent never goes to the oven';
}

/** Cold sorbent opened in a warm room draws water. */
export const warmUp = `Out of the cold store: let it warm up unopened, a large drum for a day or more, or water condenses in it. ${rules}`;

/** Freshly dried sorbent that meets a liquid. */
export const wettingHeat = `Freshly dried sorbent warms when wetted: the weakest eluent first, slowly, then wait until heat and bubbles are gone. ${rules}`;

/** What is said of an oven beside the form that records it. */
export function dryingCaution(sorbentClass: string | null): string {
  const grade =
    sorbentClass === 'alumina' ? ' At 130 to 160 °C alumina gets dry, but not grade I: that takes 300 to 400 °C.' : '';
  return `Solvent-wet plates and sorbent that touched solvent or sample never go to a hot or vacuum oven.${grade} ${rules}`;
}
