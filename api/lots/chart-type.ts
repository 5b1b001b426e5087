// Daily checks, charts, and what explains a retention, as GraphQL shows them.
import { z } from 'zod';
import { builder } from '../builder.ts';
import type { RetentionRun } from '../database/generated/sqlite/client.ts';
import { checked } from '../errors.ts';
import type { ChartPoint } from '../science/charts/chart.ts';
import { LotRef, SorbentRef, there } from '../stock/schema.ts';
import { charted, fewestForLimits, type Charted } from './charted.ts';
import { referencesOf, type Reference } from './references.ts';
import { dailyChecksOf } from './daily.ts';
import { ChartLimitsRef, EstimateRef, RetentionEnum, ToldEnum, toldNames } from './estimate-type.ts';
import { explained, type Answered } from './explained.ts';
import { RetentionRunRef } from './refs.ts';
import { retentions } from './said.ts';
import { SpreadRef } from './verdict-type.ts';

type Point = { run: RetentionRun; value: number; of: ChartPoint | null };

const ChartPointRef = builder.objectRef<Point>('ChartPoint').implement({
  description: 'One value of a chart, with the run behind it.',
  fields: (t) => ({
    run: t.field({ type: RetentionRunRef, description: 'The run.', resolve: ({ run }) => run }),
    at: t.field({ type: 'DateTime', description: 'When.', resolve: ({ run }) => run.at }),
    value: t.exposeFloat('value', { description: 'The mean of its spots.' }),
    range: t.float({
      nullable: true,
      description: 'How far from the value before; null of the first.',
      resolve: ({ of }) => of?.range ?? null,
    }),
    average: t.float({
      nullable: true,
      description: 'Exponentially weighted moving average, weight 0.3.',
      resolve: ({ of }) => of?.average ?? null,
    }),
    isValueOutside: t.boolean({ description: 'It lies outside.', resolve: ({ of }) => of?.valueOutside ?? false }),
    isRangeOutside: t.boolean({ description: 'Its range does.', resolve: ({ of }) => of?.rangeOutside ?? false }),
    isAverageOutside: t.boolean({
      description: 'The average does: a drift.',
      resolve: ({ of }) => of?.averageOutside ?? false,
    }),
  }),
});

type Stretch = { lotId: string; from: number; to: number };
const StretchRef = builder.objectRef<Stretch>('ChartLot').implement({
  description: 'A stretch of values of one lot.',
  fields: (t) => ({
    lot: t.field({
      type: LotRef,
      description: 'The lot.',
      resolve: async ({ lotId }, _, { load }) => there(await load.lot.load(lotId), 'lot'),
    }),
    from: t.exposeInt('from', { description: 'Its first value, counted from 0.' }),
    to: t.exposeInt('to', { description: 'Its last.' }),
  }),
});

const ChartRef = builder.objectRef<Charted>('Chart').implement({
  description: 'Individuals, moving range and weighted average of one sorbent and compound, with lots marked.',
  fields: (t) => ({
    sorbent: t.field({ type: SorbentRef, description: 'The sorbent.', resolve: ({ sorbent }) => sorbent }),
    compound: t.exposeString('compound', { description: 'The compound.' }),
    retention: t.field({ type: RetentionEnum, description: 'What is shown.', resolve: (of) => of.retention }),
    points: t.field({
      type: [ChartPointRef],
      description: 'The values, by time.',
      complexity: { field: 5, multiplier: 120 },
      resolve: ({ points, chart }) => points.map((point, i) => ({ ...point, of: chart?.points[i] ?? null })),
    }),
    values: t.field({
      type: ChartLimitsRef,
      nullable: true,
      description: 'Limits of the values; null of fewer than two.',
      resolve: ({ chart }) => chart?.values ?? null,
    }),
    ranges: t.field({
      type: ChartLimitsRef,
      nullable: true,
      description: 'Limits of the moving range.',
      resolve: ({ chart }) => chart?.ranges ?? null,
    }),
    averages: t.field({
      type: ChartLimitsRef,
      nullable: true,
      description: 'Limits of the weighted average.',
      resolve: ({ chart }) => chart?.averages ?? null,
    }),
    restsOn: t.int({
      description: 'The limits rest on so many of the first values.',
      resolve: ({ chart }) => chart?.rests ?? 0,
    }),
    tooFewForLimits: t.exposeBoolean('tooFew', {
      description: 'The limits rest on too few values to say whether one is usual: they will still move.',
    }),
    fewestForLimits: t.int({
      description: 'So many values are enough for limits; an invented default.',
      resolve: () => fewestForLimits,
    }),
    lots: t.field({
      type: [StretchRef],
      description: 'Which lot from where to where.',
      resolve: ({ chart }) => (chart?.lots ?? []).map(({ lot, from, to }) => ({ lotId: lot, from, to })),
    }),
    sentence: t.exposeString('sentence', { description: 'What the chart says, in words.' }),
  }),
});

const ReferenceRef = builder.objectRef<Reference>('ReferenceCompound').implement({
  description: 'A compound that was run on a sorbent, with how often and when last.',
  fields: (t) => ({
    sorbent: t.field({ type: SorbentRef, description: 'The sorbent.', resolve: ({ sorbent }) => sorbent }),
    compound: t.exposeString('compound', { description: 'The compound.' }),
    retention: t.field({ type: RetentionEnum, description: 'What was read.', resolve: (of) => of.retention }),
    runs: t.exposeInt('runs', { description: 'On how many plates or columns.' }),
    lastAt: t.expose('lastAt', { type: 'DateTime', description: 'When last.' }),
  }),
});

type Share = Answered['each'][number];
const ShareRef = builder.objectRef<Share>('ExplainedShare').implement({
  description: 'How much of the spread of a retention goes with one explanation, were all others held still.',
  fields: (t) => ({
    name: t.exposeString('name', { description: '`water`, `humidity`, `activation`, `lot` or `user`.' }),
    told: t.field({ type: ToldEnum, description: 'What can be told.', resolve: ({ told }) => toldNames[told] }),
    share: t.field({
      type: EstimateRef,
      description: 'Share of the whole variance, with its interval.',
      resolve: ({ share }) => share,
    }),
    alone: t.exposeFloat('alone', { description: 'Share when nothing else is asked.' }),
    p: t.exposeFloat('p', { description: 'Chance of as much from nothing.' }),
    togetherWith: t.stringList({
      description: 'What it went together with, when the data cannot tell.',
      resolve: ({ togetherWith }) => [...togetherWith],
    }),
    sentence: t.exposeString('sentence', { description: 'In words.' }),
  }),
});

const ExplainedRef = builder.objectRef<Answered>('Explained').implement({
  description: 'Is it the lot, the plate, the person or the air? What the values of a compound go with.',
  fields: (t) => ({
    sorbent: t.field({ type: SorbentRef, description: 'The sorbent.', resolve: ({ sorbent }) => sorbent }),
    compound: t.exposeString('compound', { description: 'The compound.' }),
    retention: t.field({ type: RetentionEnum, description: 'What is asked.', resolve: (of) => of.retention }),
    sentence: t.exposeString('sentence', { description: 'The answer, or that the data cannot tell.' }),
    plates: t.exposeInt('plates', { description: 'Plates that tell all that is asked about.' }),
    each: t.field({
      type: [ShareRef],
      description: 'Each explanation; empty below 20 plates.',
      resolve: ({ each }) => [...each],
    }),
    shared: t.exposeFloat('shared', {
      nullable: true,
      description: 'Share explained, but by no single one alone: the data cannot tell by which.',
    }),
    unexplained: t.exposeFloat('unexplained', {
      nullable: true,
      description: 'Share that none explains: from plate to plate.',
    }),
    leftOut: t.stringList({ description: 'What could not be asked about, and why.', resolve: (of) => [...of.leftOut] }),
    points: t.field({
      type: [ChartPointRef],
      description: 'The values and the runs behind them.',
      complexity: { field: 5, multiplier: 150 },
      resolve: ({ points }) => points.map((point) => ({ ...point, of: null })),
    }),
    spread: t.field({
      type: SpreadRef,
      nullable: true,
      description: 'How much lies between people, lots, boxes and plates; null below 20 plates.',
      resolve: ({ spread }) => spread,
    }),
  }),
});

const name = z.string('a name').trim().min(1, 'a name');
const kind = z.enum(retentions, retentions.join(', ')).nullish();
const count = z.int('a whole number').min(1, '1 or more').max(1000, 'at most 1000').nullish();
const few = z.int('a whole number').min(0, '0 or more').max(1000, 'at most 1000').nullish();
const chartSaid = z.object({ sorbent: name, compound: name, retention: kind, last: count, restsOn: count });
const dailySaid = z.object({ sorbent: name.nullish(), first: few });

builder.queryFields((t) => ({
  dailyChecks: t.field({
    type: [RetentionRunRef],
    description: 'Daily checks, the newest first.',
    complexity: { field: 5, multiplier: 30 },
    args: {
      sorbent: t.arg.string({ description: 'Only of this sorbent; all when not given.' }),
      first: t.arg.int({ description: 'How many at most; 30 when not given.' }),
    },
    resolve: (_, args, context) => dailyChecksOf(context, checked(dailySaid, args, 'dailyChecks')),
  }),
  referenceCompounds: t.field({
    type: [ReferenceRef],
    description: 'Which compounds were run on which sorbents, the latest first.',
    complexity: { field: 5, multiplier: 20 },
    resolve: (_, __, context) => referencesOf(context),
  }),
  chart: t.field({
    type: ChartRef,
    description: 'The chart of a sorbent and compound: daily checks and lot checks over time.',
    complexity: 20,
    args: {
      sorbent: t.arg.string({ required: true, description: 'Name of the sorbent or plate kind.' }),
      compound: t.arg.string({ required: true, description: 'The compound.' }),
      retention: t.arg({ type: RetentionEnum, description: 'What is shown; Rf when not given.' }),
      last: t.arg.int({ description: 'So many of the newest values; 120 when not given.' }),
      restsOn: t.arg.int({ description: 'Limits rest on so many of the first of them; 20 when not given.' }),
    },
    resolve: (_, args, context) => charted(context, checked(chartSaid, args, 'chart')),
  }),
  explained: t.field({
    type: ExplainedRef,
    description: 'What of a retention goes with water at use, humidity, activation, lot and user.',
    complexity: 100,
    args: {
      sorbent: t.arg.string({ required: true, description: 'Name of the sorbent or plate kind.' }),
      compound: t.arg.string({ required: true, description: 'The compound.' }),
      retention: t.arg({ type: RetentionEnum, description: 'What is asked; Rf when not given.' }),
    },
    resolve: (_, args, context) => explained(context, checked(chartSaid, args, 'explained')),
  }),
}));
