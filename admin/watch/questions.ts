// What the list of open stock asks.
import { question } from '../ask.ts';
import { lineFields } from '../fields.ts';
import type { State } from '../say/state.ts';
import type { Kind } from '../say/words.ts';
import { given, instant, many, maybe, number, text, word, type Answer } from '../shape.ts';

/** Every closure but that of a pack as it was received: its seal is broken, it is open stock. */
export const unsealed = ['OPEN', 'LOOSELY_COVERED', 'WELL_CLOSED', 'TIGHT'] as const;

export interface Filter {
  isOpen?: boolean;
  closure?: readonly (typeof unsealed)[number][];
  inUse?: boolean;
  state?: State[];
  kind?: Kind[];
  sorbent?: string;
  lot?: string;
  room?: string;
  search?: string;
}

/** The whole list in its order, as labels. */
const groups = given('filter: $filter', many({ state: word<State>(), labels: many(text) }), 'containersByState');
export type Group = Answer<typeof groups>[number];

/** The day in figures, and by what one sees that something was written or estimated since. */
const pulse = {
  day: {
    inUse: number,
    open: number,
    redry: number,
    useSoon: number,
    weighFirst: number,
    tooDry: number,
    good: number,
    platesReady: number,
    platesReadyUntil: maybe(instant),
    platesToRedry: number,
    platesWet: number,
    platesByRegime: many({
      regime: maybe(word<'DRY_UNTIL_SPOTTED' | 'EQUILIBRATED'>()),
      plates: number,
      until: maybe(instant),
    }),
    waiting: number,
  },
  lab: { lastChange: number },
  estimates: { finishedAt: maybe(instant) },
} as const;
export type Pulse = Answer<typeof pulse>;

export const pulseQuestion = question<Record<string, never>>('Pulse')(pulse);

/** The list with its first lines. */
export const openNowQuestion = question<{ filter: Filter; first: number }>(
  'OpenNow',
  '$filter: ContainerFilter, $first: Int',
)({
  ...pulse,
  groups,
  containers: given('first: $first, filter: $filter', { nodes: many(lineFields) }),
});

/** The list again, with the lines that are in sight. */
export const againQuestion = question<{ filter: Filter; labels: string[] }>(
  'OpenNowAgain',
  '$filter: ContainerFilter, $labels: [String!]',
)({
  ...pulse,
  groups,
  containers: given('first: 100, filter: { labels: $labels }', { nodes: many(lineFields) }),
});

export const linesQuestion = question<{ labels: string[] }>(
  'Lines',
  '$labels: [String!]',
)({
  containers: given('first: 100, filter: { labels: $labels }', { nodes: many(lineFields) }),
});

/** Everything in stock, as labels. */
export const stockQuestion = question<Record<string, never>>('Stock')({
  groups: given('filter: { inUse: true }', many({ state: word<State>(), labels: many(text) }), 'containersByState'),
});

const prepStep = { id: text, kind: text, name: text, startAt: instant, endAt: instant, need: { forWhom: text } };

/** What comes next, and what to do before going home. */
export const aheadQuestion = question<Record<string, never>>('Ahead')({
  day: {
    nextOvenStep: maybe({ sentence: text, at: instant }),
    nextPrepStep: maybe(prepStep),
    beforeLeaving: many(prepStep),
  },
});
export type Ahead = Answer<typeof aheadQuestion.shape>['day'];
