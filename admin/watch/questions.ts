// What the list of open stock asks.
import { question } from '../ask.ts';
import { lineFields } from '../fields.ts';
import type { State } from '../say/state.ts';
import { flag, given, many, maybe, number, text } from '../shape.ts';

/** Every closure but that of a pack as it was received: its seal is broken, it is open stock. */
export const unsealed = ['OPEN', 'LOOSELY_COVERED', 'WELL_CLOSED', 'TIGHT'] as const;

export interface Filter {
  isOpen?: boolean;
  closure?: readonly (typeof unsealed)[number][];
  inUse?: boolean;
  state?: State[];
  sorbent?: string;
  lot?: string;
  room?: string;
  search?: string;
}

export const pageQuestion = question<{ filter: Filter; first: number; after: string | null }>(
  'OpenNow',
  '$filter: ContainerFilter, $first: Int, $after: String',
)({
  containers: given('first: $first, after: $after, filter: $filter, orderBy: MOST_URGENT', {
    totalCount: number,
    pageInfo: { hasNextPage: flag, endCursor: maybe(text) },
    nodes: many(lineFields),
  }),
});

const counted = (state: State) =>
  given(
    `filter: { closure: [${unsealed.join(', ')}], inUse: true, state: [${state}] }`,
    { totalCount: number },
    'containers',
  );

/** The day in figures: how many open ones stand in each state, and how many wait to be dried. */
export const dayQuestion = question<Record<string, never>>('Day')({
  redry: counted('REDRY'),
  useSoon: counted('USE_SOON'),
  weighFirst: counted('UNKNOWN'),
  tooDry: counted('TOO_DRY'),
  good: counted('GOOD'),
  inUse: given('filter: { inUse: true }', { totalCount: number }, 'containers'),
  waiting: given('state: WAITING', { totalCount: number }, 'dryingRequests'),
});
