// Which buttons stand on a line before one asks for more: the one that answers its state, then the lid.
import type { Line } from '../fields.ts';

export type ButtonName = 'dry' | 'lid' | 'weigh';

export function suggested({ exposure, isOpen, kind }: Pick<Line, 'exposure' | 'isOpen' | 'kind'>): ButtonName[] {
  const state = exposure?.state ?? 'UNKNOWN';
  const canBeDried = kind !== 'COLUMN';
  if (state === 'REDRY' && canBeDried) return isOpen ? ['dry', 'lid'] : ['dry'];
  if (state === 'UNKNOWN') return isOpen ? ['weigh', 'lid'] : ['weigh'];
  return ['lid'];
}
