// What plates of a need are pre-washed in, and whether they are already.
import type { Need } from '../database/generated/sqlite/client.ts';
import type { Prepared } from '../stock/service.ts';
import type { PrepSettings } from './settings.ts';

/** The mobile phase of an extraction; else the lab's pre-wash. */
export const preWashOf = (
  { isForExtraction, mobilePhase }: Pick<Need, 'isForExtraction' | 'mobilePhase'>,
  { preWash }: Pick<PrepSettings, 'preWash'>,
): string => (isForExtraction && mobilePhase ? mobilePhase : preWash);

const same = (one: string | null, other: string): boolean => one?.trim().toLowerCase() === other.trim().toLowerCase();

/** Washed with what this need wants: for extraction in just that, else in anything. */
export function isWashedFor(
  need: Pick<Need, 'isPreWashed' | 'isForExtraction' | 'mobilePhase'>,
  prepared: Prepared | null,
): boolean {
  if (!need.isPreWashed) return true;
  if (!prepared?.preWash) return false;
  return !need.isForExtraction || same(prepared.preWash.solvent, need.mobilePhase ?? '');
}
