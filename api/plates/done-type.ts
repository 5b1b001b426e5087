// What was done to plates after the wash, as GraphQL shows it.
import { builder } from '../builder.ts';
import { type Step, writtenBy } from './writer-type.ts';

export const SolventGoneRef = builder.objectRef<Step<'solventGone'>>('SolventGone').implement({
  description: 'The solvent was recorded as gone.',
  fields: (t) => ({
    at: t.field({ type: 'DateTime', description: 'When.', resolve: ({ at }) => new Date(at) }),
    by: t.string({
      nullable: true,
      description: 'Who saw to it, or wrote it down; null when nobody said.',
      resolve: ({ eventId, seenBy }, _, context) => seenBy ?? writtenBy(eventId, context),
    }),
  }),
});

export const ActivationRef = builder.objectRef<Step<'activation'>>('PlateActivation').implement({
  description: 'Plates were activated in an oven.',
  fields: (t) => ({
    at: t.field({ type: 'DateTime', description: 'When they came out.', resolve: ({ at }) => new Date(at) }),
    by: t.string({
      nullable: true,
      description: 'Who wrote it down; null when nobody said.',
      resolve: ({ eventId }, _, context) => writtenBy(eventId, context),
    }),
    temperatureC: t.exposeFloat('temperatureC', { nullable: true, description: 'At what, °C; null when nobody said.' }),
    minutes: t.exposeFloat('minutes', { nullable: true, description: 'For how long, min; null when nobody said.' }),
    vacuum: t.exposeBoolean('vacuum', { description: 'Under vacuum.' }),
    oven: t.exposeString('oven', { nullable: true, description: 'In which oven; null when nobody said.' }),
  }),
});

export const EquilibrationRef = builder.objectRef<Step<'equilibration'>>('PlateEquilibration').implement({
  description: 'Plates were equilibrated at one humidity.',
  fields: (t) => ({
    at: t.field({ type: 'DateTime', description: 'When they were done.', resolve: ({ at }) => new Date(at) }),
    by: t.string({
      nullable: true,
      description: 'Who wrote it down; null when nobody said.',
      resolve: ({ eventId }, _, context) => writtenBy(eventId, context),
    }),
    humidityPercent: t.exposeFloat('humidityPercent', { description: 'At what relative humidity, %.' }),
    temperatureC: t.exposeFloat('temperatureC', { description: 'At what temperature, °C.' }),
    over: t.exposeString('over', {
      nullable: true,
      description: 'Over which saturated salt, or in which room; null when nobody said.',
    }),
    hours: t.exposeFloat('hours', { nullable: true, description: 'For how long, h; null when nobody said.' }),
  }),
});
