// The ledger as GraphQL shows it.
import { builder } from '../builder.ts';
import { checked } from '../errors.ts';
import { connectionOf, pageAmong, pageOf } from '../page.ts';
import { LotRef, SorbentRef, there, totalCount } from '../stock/schema.ts';
import {
  asReceivedPerDry,
  ledgerKinds,
  ledgerSaid,
  stockFigures,
  stockReasons,
  stocksMeant,
  stockWeeks,
  weekFigures,
  withSums,
  type Reason,
  type Stock,
  type StockWeek,
} from './ledger.ts';
import { AccountEnum, LedgerLineRef, LedgerPlaceEnum, linesAsked } from './line-type.ts';
import { inOrder } from './order.ts';
import type { Figures } from './rules.ts';

const KindEnum = builder.enumType('LedgerKind', {
  description: 'What is counted: grams or plates.',
  values: {
    SORBENT: { description: 'Loose sorbent, in dry grams.' },
    PLATES: { description: 'Plates, one by one.' },
  } satisfies Record<(typeof ledgerKinds)[number], { description: string }>,
});

const FiguresRef = builder.objectRef<Figures>('LedgerFigures').implement({
  description:
    'What became of a stock over a time, in dry g or in plates (the `kind` of its lot): ' +
    '`opening + cameIn + filled - used - writtenOff - lost - spentOnChecks + counted = onHand`.',
  fields: (t) => ({
    opening: t.exposeFloat('opening', { description: 'What was there when the time began.' }),
    cameIn: t.exposeFloat('cameIn', { description: 'What came into the lab.' }),
    filled: t.exposeFloat('filled', { description: 'What was poured or laid into it out of other containers.' }),
    taken: t.exposeFloat('taken', { description: 'What was taken out; over all, what was taken and not kept.' }),
    packed: t.exposeFloat('packed', { description: 'What was packed into columns.' }),
    usedUp: t.exposeFloat('usedUp', { description: 'What was left in what was said to be used up.' }),
    putBack: t.exposeFloat('putBack', { description: 'What was poured back into it, less what was poured out of it.' }),
    used: t.exposeFloat('used', {
      description: 'All that left it for use, less what came back: taken + packed + used up - put back.',
    }),
    writtenOff: t.exposeFloat('writtenOff', { description: 'What was discarded.' }),
    lost: t.exposeFloat('lost', { description: 'What was spilled, lost in drying or left behind.' }),
    spentOnChecks: t.exposeFloat('spentOnChecks', { description: 'What was spent on checks.' }),
    counted: t.exposeFloat('counted', { description: 'What counts found more (less: below 0) than the book said.' }),
    onHand: t.exposeFloat('onHand', { description: 'What was there when the time ended.' }),
  }),
});

const places = {
  SHELF: 'Drums and boxes as they came in.',
  TAKEN_OUT: 'What was taken out of them into jars, trays and boxes of its own; columns are used.',
  WHOLE: 'Both together: what was only moved is no use.',
} as const;

const WeekRef = builder.objectRef<StockWeek>('LedgerWeek').implement({
  description: 'A week on the lab’s clock, Monday to Sunday, in which something happened to a lot.',
  fields: (t) => ({
    week: t.exposeString('week', { description: 'The day of its Monday, such as 2026-03-02.' }),
    shelf: t.field({ type: FiguresRef, description: places.SHELF, resolve: (week) => weekFigures(week, 'SHELF') }),
    takenOut: t.field({
      type: FiguresRef,
      description: places.TAKEN_OUT,
      resolve: (week) => weekFigures(week, 'TAKEN_OUT'),
    }),
    whole: t.field({ type: FiguresRef, description: places.WHOLE, resolve: (week) => weekFigures(week, 'WHOLE') }),
  }),
});

const ReasonRef = builder.objectRef<Reason>('LedgerReason').implement({
  description: 'Why some of a lot was written off, lost or spent on checks.',
  fields: (t) => ({
    account: t.field({ type: AccountEnum, description: 'What became of it.', resolve: ({ account }) => account }),
    why: t.exposeString('why', { nullable: true, description: 'What somebody said; null when nobody did.' }),
    amount: t.exposeFloat('amount', { description: 'How much, dry g or plates.' }),
    events: t.exposeInt('events', { description: 'In how many events.' }),
  }),
});

const StockRef = builder.objectRef<Stock>('LedgerLot').implement({
  description: 'What became of a lot: of its loose sorbent, or of its plates.',
  fields: (t) => ({
    sorbent: t.field({
      type: SorbentRef,
      description: 'The sorbent it is of.',
      resolve: async ({ sorbentId }, _, { load }) => there(await load.sorbent.load(sorbentId), 'sorbent'),
    }),
    lot: t.field({
      type: LotRef,
      description: 'The lot.',
      resolve: async ({ lotId }, _, { load }) => there(await load.lot.load(lotId), 'lot'),
    }),
    kind: t.field({
      type: KindEnum,
      description: 'What its figures count.',
      resolve: ({ isPlates }) => (isPlates ? ('PLATES' as const) : ('SORBENT' as const)),
    }),
    asReceivedPerDry: t.float({
      nullable: true,
      description: 'Grams as received of one dry gram, with the water it came in with; null for plates.',
      resolve: asReceivedPerDry,
    }),
    shelf: t.field({ type: FiguresRef, description: places.SHELF, resolve: (of) => stockFigures(of, 'SHELF') }),
    takenOut: t.field({
      type: FiguresRef,
      description: places.TAKEN_OUT,
      resolve: (of) => stockFigures(of, 'TAKEN_OUT'),
    }),
    whole: t.field({ type: FiguresRef, description: places.WHOLE, resolve: (of) => stockFigures(of, 'WHOLE') }),
    weeks: t.field({
      type: [WeekRef],
      description: 'The weeks of the span in which anything happened to it, oldest first.',
      resolve: stockWeeks,
    }),
    reasons: t.field({
      type: [ReasonRef],
      description: 'Why it was written off, lost and spent on checks, most first.',
      resolve: stockReasons,
    }),
    lines: t.connection(
      {
        type: LedgerLineRef,
        description: 'The events behind its figures, the last first.',
        args: {
          week: t.arg.string({ description: 'Only of the week of this day, such as 2026-03-02.' }),
          account: t.arg({ type: AccountEnum, description: 'Only of this account.' }),
          place: t.arg({ type: LedgerPlaceEnum, description: 'Only of what stands there; over all when not given.' }),
        },
        resolve: linesAsked,
      },
      {
        name: 'LedgerLinesConnection',
        description: 'A page of the ledger’s lines.',
        fields: (f) => ({ totalCount: f.int(totalCount) }),
      },
      { name: 'LedgerLinesEdge', description: 'A line with its place in the list.' },
    ),
  }),
});

builder.queryFields((t) => ({
  ledger: t.connection(
    {
      type: StockRef,
      description:
        'What came in, was used, written off, lost and is left, by lot: by sorbent, last received first. ' +
        'It follows from the timelines, corrections included.',
      args: {
        item: t.arg.string({ description: 'Only lots of the sorbent of this name.' }),
        lot: t.arg.string({ description: 'Only this lot number.' }),
        kind: t.arg({ type: KindEnum, description: 'Only loose sorbent, or only plates.' }),
        from: t.arg.string({
          description: 'From the week of this day on, such as 2026-03-02; from the beginning if not given.',
        }),
        until: t.arg.string({ description: 'Up to the week of this day, with it; up to now when not given.' }),
      },
      resolve: async (_, { item, lot, kind, from, until, ...args }, context) => {
        const page = pageOf(args, inOrder);
        const asked = checked(ledgerSaid, { item, lot, kind, from, until }, '');
        const all = await stocksMeant(context, asked);
        const shown = withSums(context, asked, pageAmong(inOrder, page, all));
        return connectionOf(inOrder, page, shown, () => Promise.resolve(all.length));
      },
    },
    {
      name: 'LedgerConnection',
      description: 'A page of the ledger’s lots.',
      fields: (f) => ({ totalCount: f.int(totalCount) }),
    },
    { name: 'LedgerEdge', description: 'A lot with its place in the ledger.' },
  ),
}));
