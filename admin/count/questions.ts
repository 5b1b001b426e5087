// What a shelf count asks: what the book has in a room, and what was found by its code.
import { question } from '../ask.ts';
import type { Kind } from '../say/words.ts';
import { flag, given, instant, many, maybe, number, text, word, type Answer } from '../shape.ts';

const shelfFields = {
  label: text,
  kind: word<Kind>(),
  isOpen: flag,
  finishedAt: maybe(instant),
  asReceivedGrams: number,
  sorbent: { name: text },
  lot: { lotNumber: text },
  room: { name: text },
  '... on PlateBox': { plates: number },
} as const;
export type OnShelf = Answer<typeof shelfFields>;

export const shelfQuestion = question<{ room: string; after: string | null }>(
  'Shelf',
  '$room: String!, $after: String',
)({
  containers: given('first: 200, after: $after, orderBy: LABEL, filter: { room: $room, inUse: true }', {
    nodes: many(shelfFields),
    pageInfo: { hasNextPage: flag, endCursor: maybe(text) },
  }),
});

export const foundQuestion = question<{ labels: string[] }>(
  'Found',
  '$labels: [String!]!',
)({ labelled: given('labels: $labels', many(shelfFields)) });
