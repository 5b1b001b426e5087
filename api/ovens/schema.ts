// What GraphQL knows of ovens: types, queries, and the mutations of their files.
import { builder } from '../builder.ts';
import { DayRef } from '../stock/refs.ts';
import './ended.ts';
import './oven-type.ts';
import './step-type.ts';
import './load-type.ts';
import './run-type.ts';
import './request-type.ts';
import './plan-type.ts';
import './oven-keep-type.ts';
import './plan-acts-type.ts';
import './run-steps-type.ts';
import { planningNow } from './planning.ts';
import { PlanningRef } from './plan-type.ts';
import { DryingRunRef, OvenPlanRef, OvenRef } from './refs.ts';
import { RunStateEnum } from './run-type.ts';
import { OvenStepRef } from './step-type.ts';
import { currentPlan, nextOvenStep, runsBetween } from './run-view.ts';

builder.queryFields((t) => ({
  ovens: t.field({
    type: [OvenRef],
    description: 'The ovens, by name.',
    args: { removed: t.arg.boolean({ description: 'With those taken out of use; without when not given.' }) },
    resolve: (_, { removed }, { database: { read }, lab }) =>
      read.oven.findMany({
        where: { labId: lab.id, ...(removed ? {} : { removedAt: null }) },
        orderBy: [{ name: 'asc' }, { id: 'asc' }],
      }),
  }),
  dryingRuns: t.field({
    type: [DryingRunRef],
    description: 'Runs that lie in a stretch of time, planned or as they happened, by their start.',
    args: {
      from: t.arg({ type: 'DateTime', description: 'From here on; a day ago when not given.' }),
      to: t.arg({ type: 'DateTime', description: 'Until here; eight days after `from` when not given.' }),
      state: t.arg({ type: [RunStateEnum], description: 'Only in these states; all when not given.' }),
    },
    resolve: (_, { from, to, state }, context) => runsBetween(context, from ?? null, to ?? null, state ?? null),
  }),
  ovenPlan: t.field({
    type: OvenPlanRef,
    nullable: true,
    description: 'The plan that counts; null before the first.',
    resolve: (_, __, context) => currentPlan(context),
  }),
  ovenPlanning: t.field({
    type: PlanningRef,
    nullable: true,
    description: 'How far the planning under way is; null while there is none.',
    resolve: (_, __, { database }) => planningNow(database),
  }),
}));

builder.objectField(DayRef, 'nextOvenStep', (t) =>
  t.field({
    type: OvenStepRef,
    nullable: true,
    description: 'What is to be done next at an oven; null when nothing is planned and nothing runs.',
    complexity: 5,
    resolve: (_, __, context) => nextOvenStep(context),
  }),
);
