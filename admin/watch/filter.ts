// The view as the address names it: `/?show=lid-off&state=redry&kind=plates&room=wet+bench&q=alumina`.
import type { Line } from '../fields.ts';
import { stateWord, states, type State } from '../say/state.ts';
import { unsealed, type Filter } from './questions.ts';

/** What is open (its seal is broken, whatever its lid does now), what has its lid off, or everything in stock. */
export type Show = 'open' | 'lid-off' | 'all';

export interface View {
  filter: Filter;
  show: Show;
  state: State | null;
}

export function viewOf(search: URLSearchParams): View {
  const asked = search.get('show');
  const show: Show = asked === 'all' || asked === 'lid-off' ? asked : 'open';
  const state = states.find((one) => stateWord[one] === search.get('state')) ?? null;
  const filter: Filter = { inUse: true };
  if (show === 'open') filter.closure = unsealed;
  if (show === 'lid-off') filter.isOpen = true;
  if (state) filter.state = [state];
  if (search.get('kind') === 'plates') filter.kind = ['PLATE_BOX'];
  for (const [name, key] of [
    ['sorbent', 'sorbent'],
    ['lot', 'lot'],
    ['room', 'room'],
    ['q', 'search'],
  ] as const) {
    const value = search.get(name);
    if (value) filter[key] = value;
  }
  return { filter, show, state };
}

/** Whether the view leaves anything out beyond "open now". */
export const isNarrowed = ({ filter, state }: View): boolean =>
  Boolean(state ?? filter.kind ?? filter.sorbent ?? filter.lot ?? filter.room ?? filter.search);

const has = (text: string, part: string | undefined): boolean =>
  part === undefined || text.toLowerCase().includes(part.trim().toLowerCase());
const is = (text: string, other: string | undefined): boolean =>
  other === undefined || text.toLowerCase() === other.trim().toLowerCase();

/** Whether a line that was seen belongs to a view, for when nobody can be asked. */
export function fits(line: Line, { filter }: View): boolean {
  const { isOpen, closure, inUse, state, kind, sorbent, lot, room, search } = filter;
  return (
    (isOpen === undefined || line.isOpen === isOpen) &&
    (closure === undefined || closure.some((one) => one === line.closure)) &&
    (inUse === undefined || (line.finishedAt === null) === inUse) &&
    (state === undefined || state.includes(line.exposure?.state ?? 'UNKNOWN')) &&
    (kind === undefined || kind.includes(line.kind)) &&
    has(line.sorbent.name, sorbent) &&
    is(line.lot.lotNumber, lot) &&
    is(line.room.name, room) &&
    has(`${line.label} ${line.label.replace('-', '')} ${line.lot.lotNumber} ${line.sorbent.name}`, search)
  );
}
