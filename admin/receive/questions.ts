// What coming in asks: how the same sorbent came last time.
import { question } from '../ask.ts';
import type { Closure, Kind } from '../say/words.ts';
import { given, many, maybe, number, text, word, type Answer } from '../shape.ts';

export const lastLotQuestion = question<{ sorbent: string }>(
  'LastLot',
  '$sorbent: String!',
)({
  lots: given('sorbent: $sorbent, first: 1', {
    nodes: many({
      lotNumber: text,
      supplier: maybe({ name: text }),
      containers: many({
        kind: word<Kind>(),
        closure: word<Closure>(),
        takenFrom: maybe({ label: text }),
        asReceivedGrams: number,
        vessel: maybe({ name: text }),
        room: { name: text },
        '... on PlateBox': { plates: number, backing: word<'GLASS' | 'ALUMINIUM' | 'PLASTIC'>() },
      }),
    }),
  }),
});
export type LastLot = Answer<typeof lastLotQuestion.shape>['lots']['nodes'][number];
