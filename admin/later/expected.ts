// How a container stands by what was done but is not in the book yet: its lid, its room, whether it is used up.
import type { Line } from '../fields.ts';
import type { Closure } from '../say/words.ts';
import type { Waiting } from './queue.ts';

type Stands = Pick<Line, 'isOpen' | 'openedAt' | 'closure' | 'usualClosure' | 'finishedAt' | 'room'>;

function after<L extends Stands>(of: L, { act, input, at }: Waiting): L {
  if (act === 'openContainer') return { ...of, isOpen: true, openedAt: of.isOpen ? of.openedAt : at, closure: 'OPEN' };
  if (act === 'closeContainer') {
    const usual = of.usualClosure === 'OPEN' ? 'WELL_CLOSED' : of.usualClosure;
    return { ...of, isOpen: false, openedAt: null, closure: (input['closure'] as Closure | undefined) ?? usual };
  }
  if (act === 'moveContainer') return { ...of, room: { ...of.room, name: String(input['room']) } };
  return act === 'finishContainer' ? { ...of, finishedAt: at } : of;
}

/** The container as it should stand once all that waits is written; what is asked about does not count. */
export const expectedOf = <L extends Stands>(of: L, waiting: readonly Waiting[]): L =>
  waiting
    .filter(({ question, afterwards }) => question === null && !(afterwards && 'void' in afterwards))
    .reduce((stands, one) => after(stands, one), of);
