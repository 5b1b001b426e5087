// Plates are pre-washed, in GraphQL.
import { addMutation } from '../mutation.ts';
import { fresh, FrontEdgeEnum, PrewashDirectionEnum, RecordedRef } from '../stock/schema.ts';
import { prewashed, prewashSaid } from './service.ts';
import { batchFields, closureField } from './given-type.ts';

addMutation('prewashPlates', {
  description:
    'Plates were pre-washed: wet with solvent from then on, and kept out of every oven until recordSolventGone. Some of a box become a batch with a label of its own.',
  check: prewashSaid,
  success: RecordedRef,
  run: (input, context) => fresh(context, prewashed(context, input)),
  fields: (t) => ({
    ...batchFields(t),
    ...closureField('How they stand from then on; open when not given.')(t),
    solvent: t.string({ required: true, description: 'Which solvent, such as `methanol and chloroform, 1:1 v/v`.' }),
    direction: t.field({ type: PrewashDirectionEnum, description: 'Which way it ran.' }),
    fullLength: t.boolean({ description: 'It ran the full length of the plate; yes when not given.' }),
    frontEdge: t.field({ type: FrontEdgeEnum, description: 'What became of the dirty edge at its front.' }),
    isMobilePhase: t.boolean({
      description: 'It is the mobile phase of the extraction that they are for; no when not given.',
    }),
    tankLoads: t.int({ description: 'How many tank loads.' }),
    mlPerLoad: t.float({ description: 'Solvent of each load, mL.' }),
    tankMinutes: t.float({
      description: 'How long it runs, min: after that they hang in the hood. At once when not given.',
    }),
  }),
});
