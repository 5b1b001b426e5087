// What finding asks.
import { question } from '../ask.ts';
import type { Kind } from '../say/words.ts';
import { flag, given, many, maybe, number, text, word } from '../shape.ts';

export const whichQuestion = question<{ label: string }>(
  'Which',
  '$label: String!',
)({
  which: maybe(given('label: $label', { label: text }, 'container')),
});

export const alikeQuestion = question<{ search: string }>(
  'Alike',
  '$search: String!',
)({
  containers: given('first: 8, filter: { search: $search, inUse: true }', {
    totalCount: number,
    nodes: many({
      label: text,
      kind: word<Kind>(),
      isOpen: flag,
      sorbent: { name: text },
      lot: { lotNumber: text },
      room: { name: text },
    }),
  }),
});
