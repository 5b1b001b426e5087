// What the ledger's page asks: every lot with what became of it; of one lot, its weeks and the events behind them.
import { question } from '../ask.ts';
import { given, instant, many, maybe, number, text, word, type Answer } from '../shape.ts';

export type Account =
  | 'CAME_IN'
  | 'TAKEN'
  | 'FILLED'
  | 'PACKED'
  | 'COMBINED'
  | 'USED_UP'
  | 'WRITTEN_OFF'
  | 'LOST'
  | 'SPENT_ON_CHECKS'
  | 'COUNTED';

const figures = {
  opening: number,
  cameIn: number,
  used: number,
  writtenOff: number,
  lost: number,
  spentOnChecks: number,
  counted: number,
  onHand: number,
};
export type Figures = Answer<typeof figures>;

export const tallyQuestion = question<{ item: string | null; from: string | null; after: string | null }>(
  'Tally',
  '$item: String, $from: String, $after: String',
)({
  ledger: given('item: $item, from: $from, first: 40, after: $after', {
    totalCount: number,
    pageInfo: { endCursor: maybe(text) },
    nodes: many({
      kind: word<'SORBENT' | 'PLATES'>(),
      asReceivedPerDry: maybe(number),
      sorbent: { name: text },
      lot: { id: text, lotNumber: text, supplier: maybe({ name: text }) },
      shelf: figures,
      takenOut: figures,
      reasons: many({ account: word<Account>(), why: maybe(text), amount: number }),
      weeks: many({ week: text, shelf: { used: number } }),
    }),
  }),
});
export type Stock = Answer<typeof tallyQuestion.shape>['ledger']['nodes'][number];

interface OfLot {
  item: string;
  lot: string;
  kind: 'SORBENT' | 'PLATES';
  from: string | null;
}

export const weeksQuestion = question<OfLot>(
  'TallyWeeks',
  '$item: String, $lot: String, $kind: LedgerKind, $from: String',
)({
  ledger: given('item: $item, lot: $lot, kind: $kind, from: $from', {
    nodes: many({ weeks: many({ week: text, shelf: figures }) }),
  }),
});
export type Week = Answer<typeof weeksQuestion.shape>['ledger']['nodes'][number]['weeks'][number];

export const linesQuestion = question<Omit<OfLot, 'from'> & { week: string }>(
  'TallyLines',
  '$item: String, $lot: String, $kind: LedgerKind, $week: String',
)({
  ledger: given('item: $item, lot: $lot, kind: $kind', {
    nodes: many({
      lines: given('week: $week, first: 200', {
        totalCount: number,
        nodes: many({
          account: word<Account>(),
          place: word<'SHELF' | 'TAKEN_OUT' | 'WHOLE'>(),
          at: instant,
          dryGrams: number,
          plates: maybe(number),
          why: maybe(text),
          container: { label: text },
          event: { id: text, sentence: text, by: maybe({ shortName: text }) },
        }),
      }),
    }),
  }),
});
export type Line = Answer<typeof linesQuestion.shape>['ledger']['nodes'][number]['lines']['nodes'][number];
