// A pre-wash of plates as GraphQL shows it.
import { builder } from '../builder.ts';
import { FrontEdgeEnum, PrewashDirectionEnum } from '../stock/schema.ts';
import { type Step, writtenBy } from './writer-type.ts';

export const PreWashRef = builder.objectRef<Step<'preWash'>>('PreWash').implement({
  description: 'A pre-wash of plates.',
  fields: (t) => ({
    at: t.field({ type: 'DateTime', description: 'When.', resolve: ({ at }) => new Date(at) }),
    by: t.string({
      nullable: true,
      description: 'Who wrote it down, by short name; null when nobody said.',
      resolve: ({ eventId }, _, context) => writtenBy(eventId, context),
    }),
    solvent: t.exposeString('solvent', { nullable: true, description: 'Which solvent; null when nobody said.' }),
    direction: t.field({
      type: PrewashDirectionEnum,
      nullable: true,
      description: 'Which way it ran; null when nobody said.',
      resolve: ({ direction }) => direction,
    }),
    fullLength: t.exposeBoolean('fullLength', {
      nullable: true,
      description: 'It ran the full length of the plate; null when nobody said.',
    }),
    frontEdge: t.field({
      type: FrontEdgeEnum,
      nullable: true,
      description: 'What became of the dirty edge at its front; null when nobody said.',
      resolve: ({ frontEdge }) => frontEdge,
    }),
    isMobilePhase: t.exposeBoolean('isMobilePhase', {
      description: 'It was the mobile phase of the extraction that they are for.',
    }),
    tankLoads: t.exposeInt('tankLoads', { nullable: true, description: 'Tank loads; null when nobody said.' }),
    mlPerLoad: t.exposeFloat('mlPerLoad', {
      nullable: true,
      description: 'Solvent of each load, mL; null when nobody said.',
    }),
  }),
});
