// Plates are activated and equilibrated, in GraphQL.
import { addMutation } from '../mutation.ts';
import { fresh, RecordedRef } from '../stock/schema.ts';
import { activated, activateSaid, equilibrated, equilibrateSaid } from './service.ts';
import { batchFields, closureField } from './given-type.ts';

addMutation('activatePlates', {
  description:
    'Plates were activated in an oven, and are dry until spotted. Refused while they are wet with solvent, and above what their backing or layer stands.',
  check: activateSaid,
  success: RecordedRef,
  run: (input, context) => fresh(context, activated(context, input)),
  fields: (t) => ({
    ...batchFields(t),
    ...closureField('How they stand from then on; as before, or for some of a box well closed, when not given.')(t),
    temperatureC: t.float({ required: true, description: 'Temperature of the oven, °C.' }),
    minutes: t.float({ required: true, description: 'Minutes at that temperature.' }),
    vacuum: t.boolean({ description: 'Under vacuum; not when not given.' }),
    oven: t.string({ description: 'Which oven, by name or id.' }),
    waterFraction: t.float({
      description: 'Water measured afterwards, kg per kg dry sorbent; left to the recipe when not given.',
    }),
  }),
});

addMutation('equilibratePlates', {
  description:
    'Plates stood over a saturated salt, or in a room, until they had its humidity: good from then on while the air stays there. Refused while they are wet with solvent.',
  check: equilibrateSaid,
  success: RecordedRef,
  run: (input, context) => fresh(context, equilibrated(context, input)),
  fields: (t) => ({
    ...batchFields(t),
    ...closureField('How they stand from then on; as before, or for some of a box well closed, when not given.')(t),
    salt: t.string({ description: 'Over which saturated salt, as `salts` names it.' }),
    inRoom: t.string({ description: 'Or in which room’s air.' }),
    humidityPercent: t.float({
      description: 'Or at which relative humidity, %; of a room: its air of now when not given.',
    }),
    temperatureC: t.float({ description: 'At what temperature, °C; 25, or the room’s, when not given.' }),
    hours: t.float({ required: true, description: 'For how long, h.' }),
  }),
});
