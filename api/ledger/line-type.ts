// The lines behind the ledger's figures: one event, one container, one account each.
import { builder } from '../builder.ts';
import type { Context } from '../context.ts';
import type { LedgerLine, Prisma } from '../database/generated/sqlite/client.ts';
import { invalid } from '../errors.ts';
import { connectionOf, pageOf, pageQuery, type Column, type PageArgs } from '../page.ts';
import { ContainerRef, EventRef, there } from '../stock/schema.ts';
import type { Stock } from './ledger.ts';
import type { Account, Place } from './rules.ts';
import { mondayIn } from './week.ts';

export const AccountEnum = builder.enumType('LedgerAccount', {
  description: 'What an event did to what a container holds.',
  values: {
    CAME_IN: { description: 'It came into the lab.' },
    TAKEN: { description: 'A portion or plates were taken out.' },
    FILLED: { description: 'They were poured or laid into it.' },
    PACKED: { description: 'It was packed into a column.' },
    COMBINED: { description: 'It was poured together with another: out of it, or into it.' },
    USED_UP: { description: 'It was said to be used up.' },
    WRITTEN_OFF: { description: 'It was discarded.' },
    LOST: { description: 'It was spilled, lost in drying or left behind.' },
    SPENT_ON_CHECKS: { description: 'It was spent on a check.' },
    COUNTED: { description: 'A count found more or less.' },
  } satisfies Record<Account, { description: string }>,
});

export const LedgerPlaceEnum = builder.enumType('LedgerPlace', {
  description: 'Which containers are meant.',
  values: {
    SHELF: { description: 'Drums and boxes as they came in.' },
    TAKEN_OUT: { description: 'What was taken out of them and stands in the lab still.' },
    WHOLE: { description: 'Both together.' },
  } satisfies Record<Place, { description: string }>,
});

export const LedgerLineRef = builder.objectRef<LedgerLine>('LedgerLine').implement({
  description: 'What one event did to one container.',
  fields: (t) => ({
    event: t.field({
      type: EventRef,
      description: 'The event.',
      resolve: async ({ eventId }, _, { load }) => there(await load.event.load(eventId), 'event'),
    }),
    container: t.field({
      type: ContainerRef,
      description: 'The container.',
      resolve: async ({ containerId }, _, { load }) => there(await load.container.load(containerId), 'container'),
    }),
    at: t.expose('at', { type: 'DateTime', description: 'When it happened.' }),
    account: t.field({
      type: AccountEnum,
      description: 'What became of it.',
      resolve: ({ account }) => account as Account,
    }),
    place: t.field({
      type: LedgerPlaceEnum,
      description: 'Whether the container came in so, or was filled from another.',
      resolve: ({ isStock }) => (isStock ? ('SHELF' as const) : ('TAKEN_OUT' as const)),
    }),
    dryGrams: t.exposeFloat('dryGrams', { description: 'Dry sorbent more (less: below 0) in it, g.' }),
    plates: t.exposeInt('plates', {
      nullable: true,
      description: 'Plates more (less: below 0) in it; null for sorbent.',
    }),
    why: t.exposeString('why', { nullable: true, description: 'What somebody said of it; null when nobody did.' }),
  }),
});

const lastFirst: Column<LedgerLine>[] = [
  { path: ['at'], direction: 'desc', isTime: true, value: ({ at }) => at.getTime() },
  { path: ['eventId'], direction: 'desc', value: ({ eventId }) => eventId },
  { path: ['containerId'], direction: 'desc', value: ({ containerId }) => containerId },
  { path: ['part'], direction: 'desc', value: ({ part }) => part },
];

interface Asked extends PageArgs {
  week?: string | null | undefined;
  account?: Account | null | undefined;
  place?: Place | null | undefined;
}

/** The lines of a stock within its span, last first. */
export async function linesAsked(
  stock: Stock,
  { week, account, place, ...args }: Asked,
  { database: { read } }: Context,
) {
  const monday = week ? mondayIn(week) : null;
  if (week && monday === null) throw invalid('week', week, 'a day such as 2026-03-02');
  const of: Prisma.LedgerLineWhereInput = {
    ...{ lotId: stock.lotId, isPlates: stock.isPlates },
    AND: [
      ...(monday ? [{ week: monday }] : []),
      ...(stock.from ? [{ week: { gte: stock.from } }] : []),
      ...(stock.until ? [{ week: { lt: stock.until } }] : []),
      ...(account ? [{ account }] : []),
      ...(place && place !== 'WHOLE' ? [{ isStock: place === 'SHELF' }] : []),
    ],
  };
  const page = pageOf(args, lastFirst);
  const { where, ...rest } = pageQuery(lastFirst, page);
  const rows = await read.ledgerLine.findMany({ where: { AND: [of, where] }, ...rest });
  return connectionOf(lastFirst, page, rows, () => read.ledgerLine.count({ where: of }));
}
