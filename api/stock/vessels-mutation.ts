// The common vessels onto the lab's list, so that nobody measures a jar before the first delivery.
import { z } from 'zod';
import { builder } from '../builder.ts';
import { addMutation } from '../mutation.ts';
import { commonVesselsAdded } from './catalogue.ts';
import { fresh } from './fresh.ts';
import { there, VesselRef } from './refs.ts';
import { said } from './said.ts';

const CommonVesselsAdded = builder.objectRef<{ vesselIds: string[] }>('CommonVesselsAdded').implement({
  description: 'The common vessels are listed.',
  fields: (t) => ({
    vessels: t.field({
      type: [VesselRef],
      description: 'Those that were not there yet.',
      resolve: async ({ vesselIds }, _, { load }) =>
        (await Promise.all(vesselIds.map((id) => load.vessel.load(id)))).map((row) => there(row, 'vessel')),
    }),
  }),
});

addMutation('addCommonVessels', {
  description:
    'Lists common jars, drums, beakers and dishes with sizes from memory, those that the lab does not list yet.',
  check: z.object({ clientKey: said.clientKey }),
  success: CommonVesselsAdded,
  run: (input, context) => fresh(context, commonVesselsAdded(context, input)),
  fields: () => ({}),
});
