// Verdict and spread of a check, as GraphQL shows them.
import { builder } from '../builder.ts';
import { withinPlate, type Source } from '../science/lots/spread.ts';
import { there } from '../stock/schema.ts';
import type { CheckRead } from './compared.ts';
import { EstimateRef, ToldEnum, toldNames, VerdictEnum, verdictNames } from './estimate-type.ts';
import { RetentionRunRef } from './refs.ts';
import type { Compared, CompoundSpread } from './rules.ts';
import { comparedWords, quantityWords, verdictWords } from './words.ts';

interface Judged extends Compared {
  readonly of: CheckRead;
}

const PlateValueRef = builder
  .objectRef<{ of: CheckRead; runId: string; isNew: boolean; value: number }>('CheckedPlate')
  .implement({
    description: 'What one plate or column says.',
    fields: (t) => ({
      isNew: t.exposeBoolean('isNew', { description: 'It is of the new lot.' }),
      value: t.exposeFloat('value', { description: 'The mean of its spots, or the difference of two compounds.' }),
      run: t.field({
        type: RetentionRunRef,
        description: 'The run behind it.',
        resolve: ({ of, runId }) =>
          there(
            of.rows.find(({ id }) => id === runId),
            'run',
          ),
      }),
    }),
  });

const JudgedRef = builder.objectRef<Judged>('CheckedQuantity').implement({
  description: 'A compound, or how far two compounds stand apart, compared between the lots.',
  fields: (t) => ({
    compounds: t.stringList({ description: 'The compound, or the two.', resolve: ({ compounds }) => [...compounds] }),
    name: t.string({ description: 'Both in words.', resolve: ({ compounds }) => quantityWords(compounds) }),
    outcome: t.field({
      type: VerdictEnum,
      description: 'What the tests say.',
      resolve: ({ outcome }) => verdictNames[outcome],
    }),
    difference: t.exposeFloat('difference', {
      nullable: true,
      description: 'New less old, each tank and day for itself; null where no tank had both.',
    }),
    low: t.exposeFloat('low', { nullable: true, description: 'The low end of its 90 % interval.' }),
    high: t.exposeFloat('high', { nullable: true, description: 'The high end of its 90 % interval.' }),
    p: t.exposeFloat('p', {
      nullable: true,
      description: 'Of the two one-sided tests the larger p; accepted below 0.05.',
    }),
    sd: t.exposeFloat('sd', { nullable: true, description: 'Standard deviation of a plate within its tank and lot.' }),
    oldPlates: t.int({ description: 'Plates of the old lot.', resolve: ({ plates }) => plates.old }),
    newPlates: t.int({ description: 'Plates of the new lot.', resolve: ({ plates }) => plates.new }),
    more: t.exposeInt('more', {
      nullable: true,
      description: 'Further plates of each lot for a chance of 80 %, were they as far apart as they look.',
    }),
    moreIfSame: t.exposeInt('moreIfSame', { nullable: true, description: 'The same, were the lots the same.' }),
    sentence: t.string({ description: 'In words.', resolve: (one) => comparedWords(one, one.of.named) }),
    values: t.field({
      type: [PlateValueRef],
      description: 'What each plate says.',
      resolve: ({ values, of }) => values.map((value) => ({ ...value, of })),
    }),
  }),
});

export const CheckVerdictRef = builder.objectRef<CheckRead>('LotVerdict').implement({
  description:
    'What a check says of the new lot: two one-sided tests against the margin, each at 5 %. Accepted when every quantity is, rejected when one is, else too few.',
  fields: (t) => ({
    outcome: t.field({
      type: VerdictEnum,
      description: 'The verdict.',
      resolve: ({ comparison }) => verdictNames[comparison.outcome],
    }),
    sentence: t.string({
      description: 'In words.',
      resolve: ({ comparison, named }) => verdictWords(comparison, named),
    }),
    margin: t.float({ description: 'Both count as the same within this.', resolve: ({ named }) => named.margin }),
    isMarginDefault: t.boolean({
      description: 'Nobody has set the margin: it is an invented default.',
      resolve: ({ named }) => named.isDefault,
    }),
    more: t.int({
      nullable: true,
      description:
        'Further plates of each lot for a chance of 80 % of a verdict, were they as far apart as they look; null when there is one, or none would do.',
      resolve: ({ comparison }) => comparison.more,
    }),
    moreIfSame: t.int({
      nullable: true,
      description: 'The same, were the lots the same.',
      resolve: ({ comparison }) => comparison.moreIfSame,
    }),
    quantities: t.field({
      type: [JudgedRef],
      description: 'Compound by compound, and each two of them.',
      resolve: (of) => of.comparison.quantities.map((one) => ({ ...one, of })),
    }),
  }),
});

const words: Readonly<Record<string, string>> = {
  user: 'between people',
  lot: 'between lots',
  box: 'between boxes',
  plate: 'between plates',
  [withinPlate]: 'within a plate',
};

const SourceRef = builder.objectRef<Source>('SpreadSource').implement({
  description: 'How much values differ by one thing: between plates, say.',
  fields: (t) => ({
    name: t.string({ description: 'Between what.', resolve: ({ factor }) => words[factor] ?? factor }),
    told: t.field({ type: ToldEnum, description: 'What can be told.', resolve: ({ told }) => toldNames[told] }),
    sameAs: t.string({
      nullable: true,
      description: 'What it went together with.',
      resolve: ({ sameAs }) => (sameAs === null ? null : (words[sameAs] ?? sameAs)),
    }),
    sd: t.field({
      type: EstimateRef,
      nullable: true,
      description: 'Standard deviation, in the unit of the values.',
      resolve: ({ sd }) => sd,
    }),
    relative: t.field({
      type: EstimateRef,
      nullable: true,
      description: 'Relative standard deviation.',
      resolve: ({ relative }) => relative,
    }),
    share: t.field({
      type: EstimateRef,
      nullable: true,
      description: 'Share of the whole variance; null below 20 plates.',
      resolve: ({ share }) => share,
    }),
  }),
});

export const SpreadRef = builder.objectRef<CompoundSpread>('RetentionSpread').implement({
  description: 'Where the spread of a compound comes from: a random-effects analysis with 90 % intervals.',
  fields: (t) => ({
    compound: t.exposeString('compound', { description: 'The compound.' }),
    mean: t.exposeFloat('mean', { description: 'Mean of all.' }),
    plates: t.exposeInt('plates', { description: 'Plates.' }),
    sources: t.field({
      type: [SourceRef],
      description: 'Between people, lots, boxes and plates, and within a plate.',
      resolve: ({ sources }) => [...sources],
    }),
  }),
});
