// What moved since the plan before, as GraphQL shows it.
import { builder } from '../builder.ts';
import type { Context } from '../context.ts';
import type { Offer, PurchasePlan } from '../database/generated/sqlite/client.ts';
import { packsText } from './item-words.ts';
import { orderedBy } from './lines.ts';
import { type Moved, movedBetween, movedSentence } from './moved.ts';
import { planBefore, planRead } from './plan.ts';
import { OfferRef, PurchasePlanRef } from './refs.ts';
import { dayOf } from './weeks.ts';

type Shown = Moved & { offer: Offer; sentence: string };

/** Nothing where there was no plan before. */
async function movedIn(context: Context, plan: PurchasePlan): Promise<Shown[]> {
  const last = await planBefore(context, plan);
  if (!last) return [];
  const [old, now] = [planRead(last), planRead(plan)];
  const moved = movedBetween(await orderedBy(context, old, plan.madeAt), await orderedBy(context, now, plan.madeAt));
  const ids = [...new Set(moved.map(({ offerId }) => offerId))];
  const offers = new Map(
    (await context.database.read.offer.findMany({ where: { id: { in: ids } } })).map((offer) => [offer.id, offer]),
  );
  /** An offer's item and supplier, as the plans name them. */
  const from = (id: string): string =>
    [now, old].flatMap(({ problem, names }) =>
      problem.offers.flatMap((of) => (names.offers[of.id] === id ? [`${of.item} from ${of.supplier}`] : [])),
    )[0] ?? '';
  const today = dayOf(context.now(), context.lab.timeZone);
  return moved.flatMap((one) => {
    const offer = offers.get(one.offerId);
    const text = (packs: number) => (offer ? packsText(packs, offer) : '');
    return offer ? [{ ...one, offer, sentence: movedSentence(one, text, from(offer.id), today) }] : [];
  });
}

const MovedEnum = builder.enumType('PurchaseMoveKind', {
  description: 'How an order is otherwise than in the plan before.',
  values: {
    CAME: { description: 'It is new.' },
    WENT: { description: 'It is not ordered any more.' },
    CHANGED: { description: 'It is of other packs, or for another week.' },
  },
});

const MovedRef = builder.objectRef<Shown>('PurchaseMove').implement({
  description: 'An order of a plan that is otherwise than in the plan before.',
  fields: (t) => ({
    what: t.field({ type: MovedEnum, description: 'How it is otherwise.', resolve: ({ what }) => what }),
    offer: t.field({ type: OfferRef, description: 'Of which offer.', resolve: ({ offer }) => offer }),
    packsBefore: t.int({
      nullable: true,
      description: 'Packs in the plan before, less what was asked for since; null of one that is new.',
      resolve: ({ before }) => before?.packs ?? null,
    }),
    packs: t.int({
      nullable: true,
      description: 'Packs in this plan; null of one that is not ordered any more.',
      resolve: ({ after }) => after?.packs ?? null,
    }),
    orderByBefore: t.string({
      nullable: true,
      description: 'The last day that was in time in the plan before, such as 2027-03-12; null of one that is new.',
      resolve: ({ before }) => before?.by ?? null,
    }),
    orderBy: t.string({
      nullable: true,
      description: 'The last day that is in time in this plan; null of one that is not ordered any more.',
      resolve: ({ after }) => after?.by ?? null,
    }),
    sentence: t.exposeString('sentence', { description: 'The same in one sentence.' }),
  }),
});

builder.objectField(PurchasePlanRef, 'moved', (t) =>
  t.field({
    type: [MovedRef],
    description:
      'What moved since the plan that counted when it was made, the soonest first: what was asked for in between has not moved. Empty where nothing did, or where there was no plan before.',
    complexity: 20,
    resolve: (plan, _, context) => movedIn(context, plan),
  }),
);
