// A plan in words: what moved and what is new, and what it was made for.
import { sentence } from '../say/words.ts';
import type { Plan } from './questions.ts';

/** What moved, each with its reason; and how many loads are new. */
export function movesOf({ changes }: Pick<Plan, 'changes'>): { moved: string[]; fresh: number } {
  const moved = changes.filter(({ from }) => from !== null).map((change) => `${sentence(change.sentence)}.`);
  return { moved, fresh: changes.length - moved.length };
}

/** ", because a run was fixed: 3 loads placed anew"; nothing where it was simply asked for. */
export function whenMade(plan: Pick<Plan, 'because' | 'changes'>): string {
  const because = plan.because === 'asked for' ? '' : `, since ${plan.because}`;
  const { moved, fresh } = movesOf(plan);
  const parts = [
    ...(fresh > 0 ? [`${fresh} ${fresh === 1 ? 'load' : 'loads'} new`] : []),
    ...(moved.length > 0 ? [`${moved.length} moved`] : []),
  ];
  if (parts.length > 0) return `${because}: ${parts.join(', ')}`;
  return plan.changes.length === 0 && because !== '' ? `${because}: nothing moved` : because;
}
