// What is asked of plans: the one that counts, the one under way, and what is due to be ordered.
import { builder } from '../builder.ts';
import { packsText } from './item-words.ts';
import { type Due, ordersDue } from './lines.ts';
import { money, MoneyRef } from './money-type.ts';
import { currentPlan } from './plan.ts';
import { type PlanningNow, planningNow } from './planning.ts';
import { OfferRef, PurchasePlanRef } from './refs.ts';

const PlanningRef = builder.objectRef<PlanningNow>('PurchasePlanning').implement({
  description: 'A planning under way.',
  fields: (t) => ({
    startedAt: t.expose('startedAt', { type: 'DateTime', description: 'When it began.' }),
    share: t.exposeFloat('share', { description: 'How much of it is done, 0 to 1.' }),
    items: t.exposeInt('items', { description: 'How many items it plans.' }),
  }),
});

const BasisEnum = builder.enumType('OrderDueBasis', {
  description: 'What says that an order is due.',
  values: {
    PLAN: { description: 'The plan that counts.' },
    REORDER_POINT: { description: 'The reorder point: there is no plan.' },
  },
});

const DueRef = builder.objectRef<Due>('OrderDue').implement({
  description: 'What to order, and by when.',
  fields: (t) => ({
    basis: t.field({ type: BasisEnum, description: 'What says so.', resolve: ({ basis }) => basis }),
    offer: t.field({ type: OfferRef, description: 'Of which offer.', resolve: ({ offer }) => offer }),
    packs: t.exposeInt('packs', { description: 'How many packs; what was asked for already is taken off.' }),
    amount: t.string({
      description: 'The same in words: `2 packs of 5 kg`.',
      resolve: ({ packs, offer }) => packsText(packs, offer),
    }),
    price: t.field({ type: MoneyRef, description: 'For one pack.', resolve: ({ priceMinor }) => money(priceMinor) }),
    total: t.field({
      type: MoneyRef,
      description: 'For all packs, without the delivery.',
      resolve: ({ priceMinor, packs }) => money(priceMinor * packs),
    }),
    orderBy: t.exposeString('orderBy', { description: 'The last day on which that is in time, such as 2027-03-12.' }),
    arrivesOn: t.exposeString('arrivesOn', { description: 'About when it is here.' }),
    sentence: t.exposeString('sentence', { description: 'What to order by when and why, in one sentence.' }),
  }),
});

builder.queryFields((t) => ({
  purchasePlan: t.field({
    type: PurchasePlanRef,
    nullable: true,
    description: 'The plan that counts: the newest that supposes nothing. Null before the first.',
    resolve: (_, __, context) => currentPlan(context),
  }),
  purchasePlanning: t.field({
    type: PlanningRef,
    nullable: true,
    description: 'How far the planning under way is; null while there is none.',
    resolve: (_, __, { database }) => planningNow(database),
  }),
  ordersDue: t.field({
    type: [DueRef],
    description: 'What to order this week and by when, by the plan that counts; by reorder points where there is none.',
    complexity: 100,
    args: { weeksAhead: t.arg.int({ description: 'So many weeks further too; 0 when not given.' }) },
    resolve: (_, { weeksAhead }, context) => ordersDue(context, Math.min(52, Math.max(0, weeksAhead ?? 0))),
  }),
}));
