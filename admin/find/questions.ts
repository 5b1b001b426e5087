// What finding asks.
import { question } from '../ask.ts';
import type { Closure, Kind } from '../say/words.ts';
import { flag, given, many, maybe, number, text, word } from '../shape.ts';

export const whichQuestion = question<{ label: string }>(
  'Which',
  '$label: String!',
)({
  which: maybe(given('label: $label', { label: text }, 'container')),
});

/** What a supplier's barcode says, and what was learned of it. */
export const barcodeQuestion = question<{ code: string }>(
  'Barcode',
  '$code: String!',
)({
  barcode: given('code: $code', {
    code: text,
    gtin: maybe(text),
    lotNumber: maybe(text),
    expiresOn: maybe(text),
    learned: maybe({
      sorbent: { name: text },
      supplier: maybe({ name: text }),
      kind: word<Kind>(),
      grams: maybe(number),
      plates: maybe(number),
      vessel: maybe({ name: text }),
      backing: maybe(word<'GLASS' | 'ALUMINIUM' | 'PLASTIC'>()),
      closure: maybe(word<Closure>()),
    }),
  }),
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
