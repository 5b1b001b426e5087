// The oven plan as GraphQL shows it: its words, its gap, what moved and why, what could not be placed.
import { z } from 'zod';
import { builder } from '../builder.ts';
import { RequestRef } from '../drying/refs.ts';
import { LabRef } from '../stock/schema.ts';
import { apartOf, familyWords, isOwnApart } from './apart.ts';
import { dueReasons } from './due.ts';
import type { PlanChange } from './plan-changes.ts';
import type { PlanLeftOut } from './plan-left.ts';
import type { PlanningNow } from './planning.ts';
import { OvenPlanRef } from './refs.ts';
import { families, type FamilyPair } from './rules.ts';

const PlaceRef = builder.objectRef<{ oven: string; start: string }>('OvenPlace').implement({
  description: 'An oven and a time.',
  fields: (t) => ({
    oven: t.exposeString('oven', { description: 'Name of the oven.' }),
    start: t.field({ type: 'DateTime', description: 'When.', resolve: ({ start }) => new Date(start) }),
  }),
});

const ChangeRef = builder.objectRef<PlanChange>('OvenPlanChange').implement({
  description: 'A load that is not where and when the plan before had it.',
  fields: (t) => ({
    label: t.exposeString('label', { description: 'Label of the container, with the part of its request.' }),
    from: t.field({
      type: PlaceRef,
      nullable: true,
      description: 'Where it was; null when it is new.',
      resolve: ({ from }) => from,
    }),
    to: t.field({ type: PlaceRef, description: 'Where it is now.', resolve: ({ to }) => to }),
    why: t.exposeString('why', { description: 'Why it moved.' }),
    sentence: t.exposeString('sentence', { description: 'The same in one sentence, on the lab’s clock.' }),
  }),
});

const LeftOutRef = builder.objectRef<PlanLeftOut>('OvenPlanLeftOut').implement({
  description: 'A request that could not be placed.',
  fields: (t) => ({
    label: t.exposeString('label', { description: 'Label of the container.' }),
    why: t.exposeString('why', { description: 'What stands in the way.' }),
    request: t.field({
      type: RequestRef,
      nullable: true,
      description: 'The request.',
      resolve: ({ requestId }, _, { load }) => load.dryingRequest.load(requestId),
    }),
  }),
});

const place = z.object({ oven: z.string(), start: z.string() });
const changes = z.array(
  z.object({
    loadId: z.string(),
    label: z.string(),
    from: place.nullable(),
    to: place,
    why: z.string(),
    sentence: z.string(),
  }),
);
const leftOut = z.array(z.object({ requestId: z.string(), label: z.string(), why: z.string() }));

builder.node(OvenPlanRef, {
  name: 'OvenPlan',
  description: 'A plan of the ovens as it was made: how good it is, and what it changed.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.ovenPlan.load(id),
  fields: (t) => ({
    madeAt: t.expose('madeAt', { type: 'DateTime', description: 'When it was made.' }),
    because: t.exposeString('because', { description: 'What it was made for.' }),
    words: t.exposeString('words', {
      description: 'How good it is: “on time, proven”, “no plan saves more than 3 minutes per job”.',
    }),
    isProven: t.exposeBoolean('isProven', { description: 'No plan is better, proven.' }),
    gapMinutes: t.exposeFloat('gapMinutes', {
      description: 'What any plan could save at most for each unit of priority, min; 0: nothing.',
    }),
    gapRelative: t.exposeFloat('gapRelative', { description: 'The same as a share of its lateness, 0 to 1.' }),
    gapOvenHours: t.exposeFloat('gapOvenHours', {
      nullable: true,
      description: 'Share of the oven hours that any plan on time could save at most, 0 to 1; null when it is late.',
    }),
    weightedLatenessHours: t.exposeFloat('weightedLatenessHours', {
      description: 'Lateness of all loads, each times its priority, h.',
    }),
    ovenHours: t.exposeFloat('ovenHours', { description: 'Hours of ovens, heating up and cooling down included.' }),
    runs: t.exposeInt('runs', { description: 'How many runs.' }),
    seconds: t.exposeFloat('seconds', { description: 'How long the planning took, s.' }),
    changes: t.field({
      type: [ChangeRef],
      description: 'What is not where and when it was, and why. What is new comes from nowhere.',
      resolve: (plan) => changes.parse(plan.changes),
    }),
    leftOut: t.field({
      type: [LeftOutRef],
      description: 'What could not be placed, and what stands in the way.',
      resolve: (plan) => leftOut.parse(plan.leftOut),
    }),
    takenBackAt: t.expose('takenBackAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was taken back; null while it counts.',
    }),
    due: t.stringList({
      description: 'Why it should be made anew, in sentences; empty while it holds.',
      complexity: 5,
      resolve: (plan, _, context) => dueReasons(context, plan),
    }),
  }),
});

export const PlanningRef = builder.objectRef<PlanningNow>('OvenPlanning').implement({
  description: 'A planning under way.',
  fields: (t) => ({
    startedAt: t.expose('startedAt', { type: 'DateTime', description: 'When it began.' }),
    share: t.exposeFloat('share', { description: 'How much of it is done, 0 to 1.' }),
    jobs: t.exposeInt('jobs', { description: 'How many loads it places.' }),
  }),
});

export const FamilyEnum = builder.enumType('OvenFamily', {
  description: 'What may share an oven is said by family.',
  values: Object.fromEntries(families.map((family) => [family, { description: `${familyWords[family]}.` }])) as Record<
    (typeof families)[number],
    { description: string }
  >,
});

const PairRef = builder.objectRef<FamilyPair>('OvenFamilyPair').implement({
  description: 'Two families that may not share an oven.',
  fields: (t) => ({
    families: t.field({ type: [FamilyEnum], description: 'The two.', resolve: (pair) => [...pair] }),
    sentence: t.string({
      description: 'The same in one sentence.',
      resolve: ([one, other]) => `${familyWords[one]} never share an oven with ${familyWords[other]}`,
    }),
  }),
});

builder.objectFields(LabRef, (t) => ({
  ovensApart: t.field({
    type: [PairRef],
    description: 'What may not share an oven.',
    resolve: ({ settings }) => [...apartOf(settings)],
  }),
  hasOwnOvensApart: t.boolean({
    description: 'The lab has set that itself; else it is common practice.',
    resolve: ({ settings }) => isOwnApart(settings),
  }),
}));
