// The query `learned`: every factor that weighings bear on, before and after, with the weighings.
import { builder } from '../builder.ts';
import { ContainerRef, LotRef } from '../stock/schema.ts';
import type { LearnedWeighing } from '../database/generated/sqlite/client.ts';
import { learnedFacts, type LearnedFact, type WeighingSeen } from './learned.ts';
import { LearnedFactorRef, SaysRef, WeighingRef } from './refs.ts';
import { sentenceOf, titleOf } from './words.ts';

const KindEnum = builder.enumType('LearnedKind', {
  description: 'What a factor is about.',
  values: {
    CLASS: {
      description: 'Water that a sorbent’s class (or a sorbent with numbers of its own) holds, times the table’s.',
    },
    LOT: { description: 'Water that a lot holds, times the table’s.' },
    CLOSURE: { description: 'Air that a kind of closure lets in, times what its class lets in.' },
    CONTAINER: { description: 'Air that the closure of one container lets in, times what its kind does.' },
    OPEN_MOUTH: { description: 'Air that open mouths let in, times what still air would.' },
    BED: { description: 'Speed at which water goes down through a bed, times the model’s.' },
    HUMIDITY: { description: 'What the loggers read too low, as a share of relative humidity; not a factor.' },
  },
});

const stand = ({ ln, sd, weighingCount }: LearnedFact) => ({ ln, sd, weighings: weighingCount });
const seen = (learned: LearnedWeighing): WeighingSeen => ({
  eventId: learned.eventId,
  containerId: learned.containerId,
  at: learned.at,
  learned,
  isRight: learned.counts === 'CONFIRMED' ? true : null,
});
/** A factor; of the humidity, what is added to it. */
const valueOf = ({ kind }: Pick<LearnedFact, 'kind'>, ln: number): number => (kind === 'HUMIDITY' ? ln : Math.exp(ln));
const ninety = 1.645;
/** What a wild weighing says alone is a straight line drawn much too far: a millionfold either way is as good as any more, ln. */
const farthest = Math.log(1e6);
const saidValue = (of: Pick<LearnedFact, 'kind'>, ln: number): number =>
  valueOf(of, Math.max(-farthest, Math.min(farthest, ln)));

SaysRef.implement({
  description: 'What one weighing alone says of a factor, all others as they were learned.',
  fields: (t) => ({
    weighing: t.field({ type: WeighingRef, description: 'The weighing.', resolve: ({ weighing }) => seen(weighing) }),
    value: t.float({ description: 'What it says.', resolve: (one) => saidValue(one, one.ln) }),
    low: t.float({ description: '5 % of its range.', resolve: (one) => saidValue(one, one.ln - ninety * one.sd) }),
    high: t.float({ description: '95 % of its range.', resolve: (one) => saidValue(one, one.ln + ninety * one.sd) }),
  }),
});

LearnedFactorRef.implement({
  description:
    'A factor by which this lab differs from what the model takes for granted. Values are times what was assumed (1: as assumed); of HUMIDITY, relative humidity added to what the loggers read (0: as read).',
  fields: (t) => ({
    name: t.exposeString('name', { description: 'Its name, which stays the same.' }),
    kind: t.field({ type: KindEnum, description: 'What it is about.', resolve: ({ kind }) => kind }),
    title: t.string({ description: 'What it is about, in a few words.', resolve: titleOf }),
    sentence: t.string({
      description: 'What was learned, in one sentence.',
      resolve: (fact) => sentenceOf(fact, stand(fact)),
    }),
    lot: t.field({
      type: LotRef,
      nullable: true,
      description: 'The lot, where it is about one.',
      resolve: ({ lotId }, _, { load }) => (lotId ? load.lot.load(lotId) : null),
    }),
    container: t.field({
      type: ContainerRef,
      nullable: true,
      description: 'The container, where it is about one.',
      resolve: ({ containerId }, _, { load }) => (containerId ? load.container.load(containerId) : null),
    }),
    priorValue: t.float({ description: 'What was assumed: 1, of HUMIDITY 0.', resolve: (fact) => valueOf(fact, 0) }),
    priorSd: t.exposeFloat('priorSd', {
      description: 'One sigma of that, of the logarithm; of HUMIDITY, of relative humidity.',
    }),
    priorLow: t.float({ description: '5 % of its range.', resolve: (fact) => valueOf(fact, -ninety * fact.priorSd) }),
    priorHigh: t.float({ description: '95 % of its range.', resolve: (fact) => valueOf(fact, ninety * fact.priorSd) }),
    value: t.float({ description: 'What was learned.', resolve: (fact) => valueOf(fact, fact.ln) }),
    sd: t.exposeFloat('sd', { description: 'One sigma of that, as of `priorSd`.' }),
    low: t.float({ description: '5 % of its range.', resolve: (fact) => valueOf(fact, fact.ln - ninety * fact.sd) }),
    high: t.float({ description: '95 % of its range.', resolve: (fact) => valueOf(fact, fact.ln + ninety * fact.sd) }),
    weighingCount: t.exposeInt('weighingCount', { description: 'Weighings that it rests on.' }),
    leftOutCount: t.exposeInt('leftOut', {
      description: 'Weighings that would bear on it, but lie beyond 4 sigmas and wait to be confirmed.',
    }),
    weighings: t.field({
      type: [WeighingRef],
      description: 'Those weighings, oldest first, with how far each lies from what all others make one expect.',
      resolve: ({ says }) => says.map(({ weighing }) => seen(weighing)),
    }),
    says: t.field({
      type: [SaysRef],
      description: 'The same with what each of them alone says of this factor.',
      resolve: ({ says, kind }) => says.map((one) => ({ ...one, kind })),
    }),
  }),
});

builder.queryField('learned', (t) =>
  t.field({
    type: [LearnedFactorRef],
    description:
      'What this lab’s weighings taught: each factor that they bear on, before and after. Empty while nothing was weighed. The estimates stand on it.',
    resolve: (_, __, context) => learnedFacts(context),
  }),
);
