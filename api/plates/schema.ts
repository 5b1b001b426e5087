// What GraphQL knows of prepared plates: their batches, what a box is good for, and beside it the acts.
import './acts-type.ts';
import './prewash-type.ts';
import { builder } from '../builder.ts';
import { ContainerRef, PlateRegimeEnum } from '../stock/schema.ts';
import { checked, Refused } from '../errors.ts';
import { BatchStateEnum, PlateBatchRef } from './batch-type.ts';
import { UseWithinRef } from './within-type.ts';
import { NeededRef, neededOf, neededSaid } from './needed.ts';
import { batchOf, plateBatches, useWithin } from './service.ts';

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
