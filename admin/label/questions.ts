// What printing labels asks.
import { question } from '../ask.ts';
import type { Kind } from '../say/words.ts';
import { flag, given, instant, many, maybe, number, text, word, type Answer } from '../shape.ts';

const labelFields = {
  label: text,
  kind: word<Kind>(),
  isOpen: flag,
  openedAt: maybe(instant),
  labelCautions: many(text),
  sorbent: { name: text },
  lot: { lotNumber: text },
  room: { name: text },
  exposure: maybe({ upperWaterFraction: maybe(number), lowerWaterFraction: maybe(number) }),
};
export type Labelled = Answer<typeof labelFields>;

export const labelledQuestion = question<{ labels: string[] }>(
  'Labelled',
  '$labels: [String!]!',
)({ labelled: given('labels: $labels', many(labelFields)) });

export const chooseQuestion = question<{ search: string | null; lot: string | null }>(
  'Choose',
  '$search: String, $lot: String',
)({
  containers: given('first: 100, orderBy: RECEIVED_AT, filter: { search: $search, lot: $lot, inUse: true }', {
    totalCount: number,
    nodes: many(labelFields),
  }),
});
