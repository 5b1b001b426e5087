// The view as the address names it: `/?show=lid-off&state=redry&room=wet+bench&q=alumina`.
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
  Boolean(state ?? filter.sorbent ?? filter.lot ?? filter.room ?? filter.search);
