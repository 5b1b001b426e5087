// The three things one does with a container that was just scanned, by how it stands. Somebody has it in the hand: what
// they came for, and what answers its state, lie under the thumb; everything else is on its page.
import type { Line } from '../fields.ts';
import type { EventName } from '../act/acts.ts';

export type ActName = EventName | 'dry';

/**
 * Open: the lid stops the water, so it comes first. Then what the state asks for: wet goes to dry, and what nobody knows
 * is weighed. What is good is taken from, or carried where it keeps.
 * Shut: one came to use it, so taking is first where it is good to use; where it is not, what makes it so is.
 * Plates are dried rather than weighed (common practice), and columns are capped, conditioned or used up.
 */
export function threeActs({
  kind,
  isOpen,
  finishedAt,
  exposure,
}: Pick<Line, 'kind' | 'isOpen' | 'finishedAt' | 'exposure'>): ActName[] {
  const lid: ActName = isOpen ? 'closeContainer' : 'openContainer';
  // By the book nothing is left in it, and yet it is in somebody's hand: how much is there.
  if (finishedAt) return ['recordCount'];
  if (kind === 'COLUMN') return [lid, 'conditionColumn', 'finishContainer'];
  const take: ActName = kind === 'PLATE_BOX' ? 'takePlates' : 'takePortion';
  const measure: ActName = kind === 'PLATE_BOX' ? 'recordCount' : 'recordWeighing';
  const state = exposure?.state ?? 'UNKNOWN';
  if (state === 'REDRY') return isOpen ? [lid, 'dry', measure] : ['dry', measure, lid];
  if (state === 'UNKNOWN') return isOpen ? [lid, measure, take] : [measure, take, lid];
  return isOpen ? [lid, take, 'moveContainer'] : [take, lid, 'moveContainer'];
}
