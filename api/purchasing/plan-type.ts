// The purchase plan as GraphQL shows it: its lines with their reasons, what it costs and saves, what it could not do.
import { builder } from '../builder.ts';
import type { Context } from '../context.ts';
import type { PurchaseCosts } from '../science/purchase/types.ts';
import { LotRef } from '../stock/refs.ts';
import { packsText } from './item-words.ts';
import { linesOf, planDue, type PlanLine } from './lines.ts';
import { money, MoneyRef } from './money-type.ts';
import { planRead, type PlanRead, supposedOf } from './plan.ts';
import { type Calendar, lotSaid, said } from './plan-words.ts';
import { CampaignRef, OfferRef, OrderRef, PurchasePlanRef } from './refs.ts';
import { dayOf, mondayOfWeek } from './weeks.ts';

const LineRef = builder.objectRef<PlanLine>('PurchaseLine').implement({
  description: 'One order of a plan.',
  fields: (t) => ({
    offer: t.field({ type: OfferRef, description: 'Of which offer.', resolve: ({ offer }) => offer }),
    packs: t.exposeInt('packs', { description: 'How many packs.' }),
    asked: t.exposeInt('asked', { description: 'Of those, asked for or bought since the plan was made.' }),
    amount: t.string({
      description: 'The packs in words: `2 packs of 5 kg`.',
      resolve: ({ packs, offer }) => packsText(packs, offer),
    }),
    price: t.field({ type: MoneyRef, description: 'For one pack.', resolve: ({ priceMinor }) => money(priceMinor) }),
    total: t.field({
      type: MoneyRef,
      description: 'For all packs, without the delivery.',
      resolve: ({ priceMinor, packs }) => money(priceMinor * packs),
    }),
    orderWeek: t.exposeInt('orderWeek', { description: 'The week of the plan to order in, counted from 1.' }),
    orderBy: t.exposeString('orderBy', {
      description: 'The last day on which that is in time, such as 2027-03-12.',
    }),
    arrivesOn: t.exposeString('arrivesOn', { description: 'The Monday of the week it is here in.' }),
    releasedOn: t.exposeString('releasedOn', { description: 'The Monday of the week it is checked by.' }),
    sentence: t.exposeString('sentence', { description: 'What to order by when and why, in one sentence.' }),
    campaigns: t.field({
      type: [CampaignRef],
      description: 'The campaigns that its lot covers.',
      resolve: async ({ campaignIds }, _, { load }) =>
        (await load.campaign.loadMany([...campaignIds])).flatMap((one) =>
          one && !(one instanceof Error) ? [one] : [],
        ),
    }),
  }),
});

type CostKey = keyof PurchaseCosts;

const costWords: Record<CostKey, string> = {
  goods: 'Goods.',
  fees: 'Deliveries.',
  checks: 'Checks of new lots.',
  withoutOld: 'Checks without enough of the old lot.',
  holding: 'What goods cost while they stand there.',
  waste: 'What is written off.',
  shortage: 'What is missing.',
  belowSafety: 'Stock below its safety.',
  uncovered: 'Campaigns that no lot covers.',
  overflow: 'What stands above the room there is.',
  endValue: 'What is left at the end is worth this: it is taken off.',
};

const CostsRef = builder.objectRef<PurchaseCosts>('PurchaseCosts').implement({
  description: 'What a plan costs, by what for; some of it is a price put on what one would rather not have.',
  fields: (t) =>
    Object.fromEntries(
      (Object.keys(costWords) as CostKey[]).map((key) => [
        key,
        t.field({ type: MoneyRef, description: costWords[key], resolve: (costs) => money(costs[key]) }),
      ]),
    ),
});

interface LotOfPlan {
  name: string;
  lotId: string | null;
  orderId: string | null;
  lastUse: string | null;
  waste: number;
}

const LotOfPlanRef = builder.objectRef<LotOfPlan>('PurchaseLot').implement({
  description: 'A lot in a plan: in the house, on its way, or ordered by the plan.',
  fields: (t) => ({
    name: t.exposeString('name', { description: 'Its number; or the order or line it comes of.' }),
    lot: t.field({
      type: LotRef,
      nullable: true,
      description: 'The lot, when it is there already.',
      resolve: ({ lotId }, _, { load }) => (lotId ? load.lot.load(lotId) : null),
    }),
    order: t.field({
      type: OrderRef,
      nullable: true,
      description: 'The order it comes of, when it is on its way.',
      resolve: ({ orderId }, _, { load }) => (orderId ? load.order.load(orderId) : null),
    }),
    lastUse: t.exposeString('lastUse', {
      nullable: true,
      description: 'The Monday of the last week it is used in; null when it is not.',
    }),
    waste: t.exposeFloat('waste', { description: 'What of it will be written off: dry sorbent, g; or plates.' }),
  }),
});

interface CampaignOfPlan {
  campaignId: string;
  lotName: string | null;
  lotId: string | null;
  orderId: string | null;
  isNew: boolean;
}

const CampaignOfPlanRef = builder.objectRef<CampaignOfPlan>('PurchaseCampaign').implement({
  description: 'Which lot a plan gives a campaign that has none yet.',
  fields: (t) => ({
    campaign: t.field({
      type: CampaignRef,
      nullable: true,
      description: 'The campaign; null when it is gone.',
      resolve: ({ campaignId }, _, { load }) => load.campaign.load(campaignId),
    }),
    lotName: t.exposeString('lotName', {
      nullable: true,
      description: 'The lot; null when none covers it.',
    }),
    lot: t.field({
      type: LotRef,
      nullable: true,
      description: 'The lot, when it is there already.',
      resolve: ({ lotId }, _, { load }) => (lotId ? load.lot.load(lotId) : null),
    }),
    order: t.field({
      type: OrderRef,
      nullable: true,
      description: 'The order that the lot comes of, when it is on its way.',
      resolve: ({ orderId }, _, { load }) => (orderId ? load.order.load(orderId) : null),
    }),
    isNew: t.exposeBoolean('isNew', { description: 'The lot is one that the plan orders.' }),
  }),
});

interface NextLot {
  item: string;
  arriveBy: string;
  releasedBy: string;
}

const NextLotRef = builder.objectRef<NextLot>('NextLotBy').implement({
  description: 'By when the next lot of an item must be there, so that its check is done before the old one ends.',
  fields: (t) => ({
    item: t.exposeString('item', { description: 'The item, in words.' }),
    arriveBy: t.exposeString('arriveBy', { description: 'The Monday of the week it must be in the house by.' }),
    releasedBy: t.exposeString('releasedBy', { description: 'The Monday of the week it must be checked by.' }),
  }),
});

interface Simple {
  item: string;
  point: number;
  safety: number;
  unit: string;
}

const SimpleRef = builder.objectRef<Simple>('ReorderPoint').implement({
  description: 'The simple answer: order again when what is free and on its way comes down to a point.',
  fields: (t) => ({
    item: t.exposeString('item', { description: 'The item, in words.' }),
    point: t.exposeFloat('point', { description: 'Order at this, in its unit.' }),
    safety: t.exposeFloat('safety', { description: 'Of that, safety stock, in its unit.' }),
    unit: t.exposeString('unit', { description: 'Dry `g`, or `plates`.' }),
  }),
});

/** What a lot of a plan is: one that is there, or one that an order brings; neither of one that the plan orders. */
const keysOf = ({ names }: PlanRead, id: string) => ({
  lotId: id in names.orders ? null : (names.lots[id] ?? null),
  orderId: names.orders[id] ?? null,
});

const lotsOf = (read: PlanRead, calendar: Calendar): LotOfPlan[] => {
  const { answer, plan, problem } = read;
  return answer.lots.map(({ id, lastUse, waste }) => ({
    name: lotSaid(id, problem.offers, calendar),
    ...keysOf(read, id),
    lastUse: lastUse === null ? null : mondayOfWeek(plan.fromDay, lastUse),
    waste,
  }));
};

const calendarOf = ({ plan }: PlanRead, { lab, now }: Context) => ({
  monday: plan.fromDay,
  today: dayOf(now(), lab.timeZone),
});

const ended: Record<PlanRead['answer']['status'], string> = {
  optimal: 'no plan costs less, proven',
  gap: 'as near to the least cost as was asked',
  time: 'the best found in its time',
  cancelled: 'the best found until it was cancelled',
};

/** How good it is, in words. */
function goodness({ answer }: PlanRead): string {
  const { status, gap } = answer;
  if (status === 'optimal' || gap === null) return ended[status];
  return `${ended[status]}: no plan costs ${gap < 0.0005 ? '0.1' : (100 * gap).toFixed(1)} % less`;
}

builder.node(PurchasePlanRef, {
  name: 'PurchasePlan',
  description: 'A plan of what to order from whom and when, as it was made.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.purchasePlan.load(id),
  fields: (t) => ({
    madeAt: t.expose('madeAt', { type: 'DateTime', description: 'When it was made.' }),
    fromDay: t.exposeString('fromDay', { description: 'The Monday of its week 1, such as 2026-11-23.' }),
    weeks: t.exposeInt('weeks', { description: 'How far it looks, weeks.' }),
    seconds: t.exposeFloat('seconds', { description: 'How long the planning took, s.' }),
    whatIf: t.string({
      nullable: true,
      description: 'What it supposes, in words; null of one that counts.',
      resolve: (plan) => supposedOf(plan)?.words ?? null,
    }),
    status: t.string({
      description: '`optimal`, `gap`, `time` or `cancelled`: what ended the planning.',
      resolve: (plan) => planRead(plan).answer.status,
    }),
    words: t.string({ description: 'How good it is, in words.', resolve: (plan) => goodness(planRead(plan)) }),
    gap: t.float({
      nullable: true,
      description: 'What any plan could save at most, a share of the cost, 0 to 1; null where nothing is proven.',
      resolve: (plan) => planRead(plan).answer.gap,
    }),
    cost: t.field({
      type: MoneyRef,
      description:
        'What it costs in all: what is to be paid, what standing there and running out cost, less what is left at the end. Below 0 where more is left than is bought.',
      resolve: (plan) => money(planRead(plan).answer.cost),
    }),
    spend: t.field({
      type: MoneyRef,
      description: 'What is to be paid for it: goods and deliveries.',
      resolve: (plan) => {
        const { goods, fees } = planRead(plan).answer.costs;
        return money(goods + fees);
      },
    }),
    costs: t.field({
      type: CostsRef,
      description: 'The same by what for.',
      resolve: (plan) => planRead(plan).answer.costs,
    }),
    lines: t.field({
      type: [LineRef],
      description: 'Its orders, by week.',
      complexity: 20,
      resolve: (plan, _, context) => linesOf(context, planRead(plan)),
    }),
    campaigns: t.field({
      type: [CampaignOfPlanRef],
      description: 'Which lot covers each campaign that has none yet.',
      resolve: (plan, _, context) => {
        const read = planRead(plan);
        const { answer, names, problem } = read;
        return answer.campaigns.map(({ id, lot }) => ({
          campaignId: names.campaigns[id] ?? '',
          lotName: lot && lotSaid(lot, problem.offers, calendarOf(read, context)),
          ...(lot === null ? { lotId: null, orderId: null } : keysOf(read, lot)),
          isNew: lot !== null && !(lot in names.lots),
        }));
      },
    }),
    lots: t.field({
      type: [LotOfPlanRef],
      description: 'Every lot of it, with the last week it is used in.',
      resolve: (plan, _, context) => {
        const read = planRead(plan);
        return lotsOf(read, calendarOf(read, context));
      },
    }),
    nextLotBy: t.field({
      type: [NextLotRef],
      description: 'By when the next lot of each item must be there; items that need none are left out.',
      resolve: (plan) =>
        planRead(plan).answer.nextLotBy.map(({ item, arriveBy, releasedBy }) => ({
          item,
          arriveBy: mondayOfWeek(plan.fromDay, arriveBy),
          releasedBy: mondayOfWeek(plan.fromDay, releasedBy),
        })),
    }),
    warnings: t.stringList({
      description: 'What it cannot do, and what was left out or taken for granted, one sentence each.',
      resolve: (plan, _, context) => {
        const read = planRead(plan);
        const calendar = calendarOf(read, context);
        const named = { offers: read.problem.offers, orders: read.names.orders };
        return [...read.answer.warningParts.map((one) => said(one, named, calendar)), ...read.notes];
      },
    }),
    simplifications: t.stringList({
      description: 'What it takes more simply than it is.',
      resolve: () => [
        'A delivery takes as long as nine in ten do.',
        'What is missing is lost, not made up for later.',
        'Safety stock is a floor with a price.',
        'What is ordered of one offer in one week is one lot.',
        'The days of a check are rounded up to weeks.',
      ],
    }),
    reorderPoints: t.field({
      type: [SimpleRef],
      description: 'The simple answer beside it, by item.',
      resolve: (plan) => {
        const { points, safety, problem } = planRead(plan);
        return Object.entries(points).map(([item, point]) => ({
          item,
          point,
          safety: safety[item] ?? 0,
          unit: problem.items.find(({ id }) => id === item)?.unit ?? '',
        }));
      },
    }),
    simpleCost: t.field({
      type: MoneyRef,
      description: 'What ordering at those points would cost in the same weeks, reckoned alike.',
      resolve: (plan) => money(planRead(plan).simple.cost),
    }),
    saves: t.field({
      type: MoneyRef,
      description: 'What the plan saves against that.',
      resolve: (plan) => {
        const { answer, simple } = planRead(plan);
        return money(simple.cost - answer.cost);
      },
    }),
    due: t.stringList({
      description: 'Why it should be made anew, in sentences; empty while it holds.',
      complexity: 10,
      resolve: (plan, _, context) => planDue(context, plan),
    }),
    takenBackAt: t.expose('takenBackAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was taken back; null while it counts.',
    }),
  }),
});
