// The view as the address names it: `/?show=all&state=redry&room=wet+bench&q=alumina`.
import { stateWord, states, type State } from '../say/state.ts';
import type { Filter } from './questions.ts';

export interface View {
  filter: Filter;
  /** Everything in stock, not only what is open. */
  all: boolean;
  state: State | null;
}

export function viewOf(search: URLSearchParams): View {
  const all = search.get('show') === 'all';
  const state = states.find((one) => stateWord[one] === search.get('state')) ?? null;
  const filter: Filter = { inUse: true };
  if (!all) filter.isOpen = true;
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
  return { filter, all, state };
}

/** Whether the view leaves anything out beyond "open now". */
export const isNarrowed = ({ filter, state }: View): boolean =>
  Boolean(state ?? filter.sorbent ?? filter.lot ?? filter.room ?? filter.search);
