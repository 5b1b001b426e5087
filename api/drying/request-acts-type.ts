// Requests in GraphQL: made and changed.
import { builder } from '../builder.ts';
import { addMutation } from '../mutation.ts';
import { RequestRef } from './refs.ts';
import { changeSaid, requestSaid } from './request-said.ts';
import { dryingChanged } from './request-changed.ts';
import { dryingRequested } from './request-made.ts';
import { requestOf } from './requested-type.ts';

const planFields = (t: Parameters<Parameters<typeof builder.inputType>[1]['fields']>[0]) => ({
  priority: t.int({ description: 'The planner’s weight: 1, 2, 4 or 8; 1 when not given.' }),
  depthMm: t.float({ description: 'Depth of its trays, mm; the recipe’s when not given. None for plates.' }),
  readyAt: t.field({ type: 'DateTime', description: 'Not before this; at once when not given.' }),
});

addMutation('requestDrying', {
  description:
    'Puts a container, or some of it, on the list of what to dry. Sorbent that touched solvent or sample, solvent-wet plates, and recipes above what the material stands are refused.',
  check: requestSaid,
  success: RequestRef,
  run: (input, context) => requestOf(context, dryingRequested(context, input)),
  fields: (t) => ({
    label: t.string({ required: true, description: 'Label of the container.' }),
    dryGrams: t.float({ description: 'How much of it, dry g; all when not given.' }),
    plates: t.int({ description: 'How many plates of a box; all when not given.' }),
    why: t.string({ required: true, description: 'Why.' }),
    wantedBy: t.field({ type: 'DateTime', description: 'By when it is wanted.' }),
    temperatureC: t.float({ description: 'Temperature of the recipe it is meant for, °C.' }),
    minutes: t.float({ description: 'Minutes of the recipe it is meant for.' }),
    ...planFields(t),
  }),
});

addMutation('setDryingRequest', {
  description:
    'Changes when a request that waits is wanted, how much it counts, how deep its trays are. What is not given stays; null takes it away.',
  check: changeSaid,
  success: RequestRef,
  run: (input, context) => requestOf(context, dryingChanged(context, input)),
  fields: (t) => ({
    id: t.id({ required: true, description: 'Which request.' }),
    wantedBy: t.field({ type: 'DateTime', description: 'By when it is wanted.' }),
    temperatureC: t.float({ description: 'Temperature it is meant for, °C; null: the recipe’s.' }),
    minutes: t.float({ description: 'Minutes it is meant for; null: the recipe’s.' }),
    ...planFields(t),
  }),
});
