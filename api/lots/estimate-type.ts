// A figure with its interval, limits of a chart, and the words that come from fixed lists, as GraphQL shows them.
import { builder } from '../builder.ts';
import type { Limits } from '../science/charts/individuals.ts';
import type { Estimate } from '../science/lots/one-way.ts';
import type { Told } from '../science/lots/spread.ts';

export const EstimateRef = builder.objectRef<Estimate>('Estimate').implement({
  description: 'A figure with its 90 % interval.',
  fields: (t) => ({
    value: t.exposeFloat('value', { description: 'The figure.' }),
    low: t.exposeFloat('low', { description: 'The low end of its interval.' }),
    high: t.float({
      nullable: true,
      description: 'The high end of its interval; null where the data set no end to it.',
      resolve: ({ high }) => (Number.isFinite(high) ? high : null),
    }),
  }),
});

export const ChartLimitsRef = builder.objectRef<Limits>('ChartLimits').implement({
  description: 'Centre line and limits of a chart, three standard deviations either side.',
  fields: (t) => ({
    low: t.exposeFloat('low', { description: 'The low limit.' }),
    centre: t.exposeFloat('centre', { description: 'The centre line.' }),
    high: t.exposeFloat('high', { description: 'The high limit.' }),
  }),
});

export const RetentionEnum = builder.enumType('Retention', {
  description: 'What the values of a run are.',
  values: {
    RF: { description: 'Rf on a plate, 0 to 1.' },
    RETENTION_FACTOR: { description: 'Retention factor k on a column; may exceed 1.' },
    COLUMN_VOLUMES: { description: 'Column volumes until the compound comes; may exceed 1.' },
  },
});

export const ChamberEnum = builder.enumType('Chamber', {
  description: 'What plates are developed in.',
  values: {
    TWIN_TROUGH: { description: 'A twin-trough chamber.' },
    FLAT_BOTTOM: { description: 'A flat-bottomed chamber.' },
    SANDWICH: { description: 'A sandwich or horizontal chamber.' },
    AUTOMATIC: { description: 'An automatic developing chamber.' },
    JAR: { description: 'A jar with a lid.' },
  },
});

export const LotOutcomeEnum = builder.enumType('LotOutcome', {
  description: 'What a person decided of a lot.',
  values: {
    ACCEPTED: { description: 'It may be used like the last.' },
    REJECTED: { description: 'It is never offered for a need.' },
  },
});

export const VerdictEnum = builder.enumType('CheckVerdict', {
  description: 'What the two one-sided tests say.',
  values: {
    ACCEPTED: { description: 'Surely within the margin.' },
    REJECTED: { description: 'Surely beyond the margin.' },
    TOO_FEW: { description: 'Too few runs to say either.' },
  },
});
export const verdictNames = { accepted: 'ACCEPTED', rejected: 'REJECTED', 'too few': 'TOO_FEW' } as const;

export const ToldEnum = builder.enumType('CanTell', {
  description: 'What the data can tell of a source of spread.',
  values: {
    SEEN: { description: 'Surely there.' },
    LITTLE: { description: 'Surely a tenth of the spread at most.' },
    CANNOT_TELL: { description: 'Anything between: the data cannot tell.' },
    TOO_FEW: { description: 'Fewer than 20 plates.' },
    ONE_LEVEL: { description: 'It was the same on all plates.' },
    SAME_AS_ANOTHER: { description: 'It went together with another in these data.' },
  },
});
export const toldNames = {
  seen: 'SEEN',
  little: 'LITTLE',
  'cannot tell': 'CANNOT_TELL',
  'too few': 'TOO_FEW',
  'one level': 'ONE_LEVEL',
  'same as another': 'SAME_AS_ANOTHER',
} as const satisfies Record<Told, string>;
