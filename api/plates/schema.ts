// What GraphQL knows of prepared plates: the batches on the shelf, and the acts that prepare them.
import { builder } from '../builder.ts';
import { addMutation } from '../mutation.ts';
import {
  ClosureEnum,
  ContainerRef,
  fresh,
  FrontEdgeEnum,
  PlateRegimeEnum,
  PrewashDirectionEnum,
  RecordedRef,
} from '../stock/schema.ts';
import { BatchStateEnum, PlateBatchRef, UseWithinRef } from './batch-type.ts';
import { NeededRef, neededOf, neededSaid } from './needed.ts';
import {
  activated,
  activateSaid,
  batchOf,
  equilibrated,
  equilibrateSaid,
  plateBatches,
  prewashed,
  prewashSaid,
  useWithin,
} from './service.ts';
import { checked, Refused } from '../errors.ts';

builder.queryField('plateBatches', (t) =>
  t.field({
    type: [PlateBatchRef],
    description:
      'Prepared plates on the shelf: wet first, then drying, dry and ready; among the ready what ends first.',
    complexity: 50,
    args: {
      state: t.arg({ type: [BatchStateEnum], description: 'Only in these states.' }),
      regime: t.arg({ type: PlateRegimeEnum, description: 'Only in this regime.' }),
      room: t.arg.string({ description: 'Only in this room, by name.' }),
      ready: t.arg.boolean({ description: 'Only those that can be spotted now; or, false, only the others.' }),
    },
    resolve: (_, args, context) => plateBatches(context, args),
  }),
);

builder.interfaceFields(ContainerRef, (t) => ({
  plateBatch: t.field({
    type: PlateBatchRef,
    nullable: true,
    description: 'Of prepared plates: how they were prepared and what they are good for; null of everything else.',
    resolve: async (container, _, context) => {
      if (container.kind !== 'PLATE_BOX') return null;
      return batchOf(context, container, await context.load.exposure.load(container.id));
    },
  }),
  useWithin: t.field({
    type: [UseWithinRef],
    complexity: 30,
    args: { room: t.arg.string({ description: 'Name of a room; each room that people work in when not given.' }) },
    description:
      'Plates: how long they last once taken out, by the model; empty where nothing can be said, and of sorbent.',
    resolve: (container, { room }, context) =>
      container.kind === 'PLATE_BOX' ? useWithin(context, container.id, room) : [],
  }),
}));

builder.queryField('equilibrationNeeded', (t) =>
  t.field({
    type: NeededRef,
    description: 'How long plates need over a salt, in a room or at a humidity, by the model. Nothing is written.',
    complexity: 30,
    args: {
      label: t.arg.string({ required: true, description: 'Label of the plate box.' }),
      salt: t.arg.string({ description: 'Name of a saturated salt, as `salts` names it.' }),
      inRoom: t.arg.string({ description: 'Name of a room whose air it is.' }),
      humidityPercent: t.arg.float({ description: 'Relative humidity, %; of the salt or the room when not given.' }),
      temperatureC: t.arg.float({ description: 'Temperature, °C; 25 when not given.' }),
    },
    errors: {
      types: [Refused],
      union: { name: 'EquilibrationNeededResult', description: 'How long it takes, or what is wrong.' },
    },
    resolve: (_, args, context) => neededOf(context, checked(neededSaid, args)),
  }),
);

type Fields = Parameters<typeof addMutation>[1]['fields'];

const batchFields: Fields = (t) => ({
  label: t.string({ required: true, description: 'Label of the plate box, such as `4M7-2XK`.' }),
  plates: t.int({
    description:
      'How many of its plates: they become a batch with a label of its own. All, where they are, when not given.',
  }),
  room: t.string({ description: 'Room in which they stand from then on; as before when not given.' }),
  at: t.field({
    type: 'DateTime',
    description: 'When it happened; now when not given. Earlier is normal, later than five minutes ahead is refused.',
  }),
  note: t.string({ description: 'A note beside it.' }),
});

const closureField =
  (description: string): Fields =>
  (t) => ({ closure: t.field({ type: ClosureEnum, description }) });

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
