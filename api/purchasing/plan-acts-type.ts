// Mutations on purchase plans: made, supposed, cancelled while they are made, taken back.
import { z } from 'zod';
import { builder } from '../builder.ts';
import { addMutation } from '../mutation.ts';
import { fresh } from '../stock/schema.ts';
import { there } from '../stock/refs.ts';
import { said } from '../stock/service.ts';
import { ordersPlanned, type Planned, purchasePlanTakenBack } from './plan.ts';
import { planningCancelled } from './planning.ts';
import { PurchasePlanRef } from './refs.ts';
import { planOrdersSaid, whichSaid } from './said.ts';

const PlannedRef = builder.objectRef<Planned>('OrdersPlanned').implement({
  description: 'What to buy was planned, or a plan was taken back.',
  fields: (t) => ({
    plan: t.field({
      type: PurchasePlanRef,
      description: 'The plan.',
      resolve: async ({ planId }, _, { load }) => there(await load.purchasePlan.load(planId), 'purchase plan'),
    }),
  }),
});

const WhatIfInput = builder.inputType('PurchaseWhatIf', {
  description: 'What is supposed. The plan stands beside the one that counts, and orders nothing.',
  fields: (t) => ({
    supplier: t.string({ description: 'Name of the supplier it is supposed of; every supplier when not given.' }),
    lateWeeks: t.int({ description: 'It is so many weeks late, with what is bought already too.' }),
    pricePercent: t.float({ description: 'Its prices are up by so many %, or down below 0.' }),
    rejectedLot: t.string({ description: 'The number of a lot that is rejected by its check.' }),
    rejectedSorbent: t.string({
      description: 'Name of the sorbent of that lot, where lots of several sorbents have that number.',
    }),
  }),
});

addMutation('planOrders', {
  description:
    'Plans what to order from whom and when, and which lot covers which campaign. Answers when the plan is made; `purchasePlanning` says how far it is.',
  check: planOrdersSaid,
  success: PlannedRef,
  run: (input, context) => fresh(context, ordersPlanned(context, input)),
  fields: (t) => ({
    weeks: t.int({ description: 'How far it looks, 4 to 52 weeks; what the lab has set when not given.' }),
    seconds: t.float({ description: 'How long it may take, s; what the lab has set when not given.' }),
    whatIf: t.field({ type: WhatIfInput, description: 'What is supposed; nothing when not given.' }),
  }),
});

addMutation('takePurchasePlanBack', {
  description: 'Takes a plan back: the one before counts again. Orders stay.',
  check: whichSaid,
  success: PlannedRef,
  run: (input, context) => fresh(context, purchasePlanTakenBack(context, input)),
  fields: (t) => ({ id: t.id({ required: true, description: 'Which plan.' }) }),
});

const CancelledRef = builder.objectRef<{ wasPlanning: boolean }>('PurchasePlanningCancelled').implement({
  description: 'A planning was cancelled.',
  fields: (t) => ({
    wasPlanning: t.exposeBoolean('wasPlanning', { description: 'One was under way; else nothing was done.' }),
  }),
});

addMutation('cancelOrderPlanning', {
  description: 'Ends a planning that is under way. Nothing is written, unless the best plan so far is to be kept.',
  check: z.object({ keepBest: z.boolean().nullish(), clientKey: said.clientKey }),
  success: CancelledRef,
  run: (input, context) =>
    Promise.resolve({ wasPlanning: planningCancelled(context.database, input.keepBest ?? false) }),
  fields: (t) => ({ keepBest: t.boolean({ description: 'Keep the best plan found so far; not when not given.' }) }),
});
