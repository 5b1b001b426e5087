// Mutations on plans: made, cancelled while they are made, taken back.
import { z } from 'zod';
import { builder } from '../builder.ts';
import { addMutation } from '../mutation.ts';
import { fresh, there } from '../stock/schema.ts';
import { said } from '../stock/service.ts';
import { planBackSaid, planTakenBack } from './plan-back.ts';
import { ovensPlanned } from './plan.ts';
import { planningCancelled } from './planning.ts';
import { DryingRunRef, OvenPlanRef } from './refs.ts';

const PlannedRef = builder.objectRef<{ planId: string }>('OvensPlanned').implement({
  description: 'The ovens were planned, or a plan was taken back.',
  fields: (t) => ({
    plan: t.field({
      type: OvenPlanRef,
      description: 'The plan.',
      resolve: async ({ planId }, _, { load }) => there(await load.ovenPlan.load(planId), 'oven plan'),
    }),
    runs: t.field({
      type: [DryingRunRef],
      description: 'All runs that are planned or in an oven, by time.',
      resolve: (_, __, { database: { read }, lab }) =>
        read.dryingRun.findMany({
          where: { labId: lab.id, state: { in: ['PLANNED', 'IN_OVEN'] } },
          orderBy: [{ plannedStart: 'asc' }, { id: 'asc' }],
        }),
    }),
  }),
});

const CancelledRef = builder.objectRef<{ wasPlanning: boolean }>('OvenPlanningCancelled').implement({
  description: 'A planning was cancelled.',
  fields: (t) => ({
    wasPlanning: t.exposeBoolean('wasPlanning', { description: 'One was under way; else nothing was done.' }),
  }),
});

const planSaid = z.object({
  seconds: z.number('seconds').min(0.1, '0.1 s or more').max(120, 'at most 120 s').nullish(),
  clientKey: said.clientKey,
});

addMutation('planOvens', {
  description:
    'Plans all that waits: which loads go together, into which oven and when. What has begun or was fixed stays; the rest moves as little as it can. Answers when the plan is made; `ovenPlanning` says how far it is.',
  check: planSaid,
  success: PlannedRef,
  run: (input, context) => fresh(context, ovensPlanned(context, input)),
  fields: (t) => ({
    seconds: t.float({ description: 'How long it may take, s; 2 for 60 loads, 15 for 200, when not given.' }),
  }),
});

addMutation('takeOvenPlanBack', {
  description: 'Takes back the newest plan while nothing of it has begun: runs stand as they stood before.',
  check: planBackSaid,
  success: PlannedRef,
  run: (input, context) => fresh(context, planTakenBack(context, input)),
  fields: (t) => ({ plan: t.id({ required: true, description: 'Which plan.' }) }),
});

addMutation('cancelOvenPlanning', {
  description: 'Ends a planning that is under way. Nothing is changed, unless the best plan so far is to be kept.',
  check: z.object({ keepBest: z.boolean().nullish(), clientKey: said.clientKey }),
  success: CancelledRef,
  run: (input, context) =>
    Promise.resolve({ wasPlanning: planningCancelled(context.database, input.keepBest ?? false) }),
  fields: (t) => ({ keepBest: t.boolean({ description: 'Keep the best plan found so far; not when not given.' }) }),
});
