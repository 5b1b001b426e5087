// What the lab sets for its prep, and its bottles of solvent, as GraphQL shows them.
import { z } from 'zod';
import { builder } from '../builder.ts';
import { addMutation } from '../mutation.ts';
import { said } from '../stock/service.ts';
import { fresh, LabRef } from '../stock/schema.ts';
import { calendarRenewed, calendarTokenOf } from './calendar.ts';
import { SolventBatchRef } from './refs.ts';
import { batchNoted, batchSaid } from './solvent-batch.ts';
import { prepSettingsOf, prepSettingsSaid, prepSettingsSet, usualPrep, type PrepSettings } from './settings.ts';

const PrepSettingsRef = builder.objectRef<PrepSettings & { own: string[] }>('PrepSettings').implement({
  description:
    'What the lab sets for its prep; what it has not set has a default. Working hours and least hours in the hood stand in `settings` of the lab.',
  fields: (t) => ({
    preWash: t.exposeString('preWash', {
      description: 'What plates are pre-washed in, unless they are for extraction.',
    }),
    tanks: t.exposeInt('tanks', { description: 'Tanks that can run at once.' }),
    tankPlates: t.exposeInt('tankPlates', { description: 'Plates in one tank load.' }),
    tankMl: t.exposeFloat('tankMl', { description: 'Solvent in one tank load, mL.' }),
    preWashMinutes: t.exposeFloat('preWashMinutes', { description: 'A tank load takes so long, min.' }),
    hoodPlaces: t.exposeInt('hoodPlaces', { description: 'Plates that can air-dry at once.' }),
    people: t.exposeInt('people', { description: 'People who prepare at once.' }),
    ovenPlates: t.exposeInt('ovenPlates', { description: 'Plates in one oven load, where no oven is described.' }),
    packMinutes: t.exposeFloat('packMinutes', { description: 'Packing a column takes so long, min.' }),
    equilibrateMinutes: t.exposeFloat('equilibrateMinutes', {
      description: 'Plates equilibrate so long over a salt, or where the model says nothing, min.',
    }),
    conditioningVolumes: t.exposeFloat('conditioningVolumes', { description: 'Column volumes to condition with.' }),
    eveningFrom: t.exposeString('eveningFrom', { description: 'The evening sheet begins, on the lab’s clock.' }),
    daysOff: t.exposeStringList('daysOff', { description: 'Days on which nobody works, such as 2026-12-24.' }),
    tankName: t.exposeString('tankName', { description: 'What the tank is called.' }),
    hoodName: t.exposeString('hoodName', { description: 'What the hood is called.' }),
    desiccatorName: t.exposeString('desiccatorName', { description: 'What the desiccator is called.' }),
    own: t.exposeStringList('own', { description: 'Which of these the lab has set itself, by name.' }),
  }),
});

builder.objectField(LabRef, 'prep', (t) =>
  t.field({
    type: PrepSettingsRef,
    description: 'What it has set for its prep.',
    resolve: ({ settings }) => prepSettingsOf(settings),
  }),
);

builder.objectField(LabRef, 'calendarPath', (t) =>
  t.string({
    nullable: true,
    description:
      'Path of the calendar for programs that cannot say the pass phrase; whoever knows it reads the calendar. Null until `renewCalendarAddress`; with the pass phrase it is at `/calendar.ics` in any case.',
    resolve: ({ settings }) => {
      const token = calendarTokenOf(settings);
      return token && `/calendar/${token}.ics`;
    },
  }),
);

const PrepKept = builder.objectRef<{ labId: string }>('PrepSettingsKept').implement({
  description: 'The lab’s choices for its prep were written.',
  fields: (t) => ({ lab: t.field({ type: LabRef, description: 'The lab.', resolve: (_, __, { lab }) => lab }) }),
});

const back = (of: keyof PrepSettings): string =>
  `not given: stays; null: its default (${String(usualPrep[of]) || 'none'})`;

addMutation('setPrepSettings', {
  description: 'Sets what the prep is planned with; everything is planned anew.',
  check: prepSettingsSaid,
  success: PrepKept,
  run: (input, context) => prepSettingsSet(context, input),
  fields: (t) => ({
    preWash: t.string({ description: `What plates are pre-washed in, such as \`methanol\`; ${back('preWash')}.` }),
    tanks: t.int({ description: `Tanks that can run at once; ${back('tanks')}.` }),
    tankPlates: t.int({ description: `Plates in one tank load; ${back('tankPlates')}.` }),
    tankMl: t.float({ description: `Solvent in one tank load, mL; ${back('tankMl')}.` }),
    preWashMinutes: t.float({ description: `A tank load takes so long, min; ${back('preWashMinutes')}.` }),
    hoodPlaces: t.int({ description: `Plates that can air-dry at once; ${back('hoodPlaces')}.` }),
    people: t.int({ description: `People who prepare at once; ${back('people')}.` }),
    ovenPlates: t.int({ description: `Plates in one oven load; ${back('ovenPlates')}.` }),
    packMinutes: t.float({ description: `Packing a column takes so long, min; ${back('packMinutes')}.` }),
    equilibrateMinutes: t.float({ description: `Plates equilibrate so long, min; ${back('equilibrateMinutes')}.` }),
    conditioningVolumes: t.float({ description: `Column volumes to condition with; ${back('conditioningVolumes')}.` }),
    eveningFrom: t.string({ description: `The evening sheet begins, such as \`15:00\`; ${back('eveningFrom')}.` }),
    daysOff: t.stringList({ description: `All days on which nobody works; ${back('daysOff')}.` }),
    tankName: t.string({ description: `What the tank is called; ${back('tankName')}.` }),
    hoodName: t.string({ description: `What the hood is called; ${back('hoodName')}.` }),
    desiccatorName: t.string({ description: `What the desiccator is called; ${back('desiccatorName')}.` }),
  }),
});

builder.node(SolventBatchRef, {
  name: 'SolventBatch',
  description: 'A bottle of solvent in use.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { database }) => database.read.solventBatch.findUnique({ where: { id } }),
  fields: (t) => ({
    solvent: t.exposeString('solvent', { description: 'The solvent.' }),
    batch: t.exposeString('batch', { description: 'Its batch, as printed.' }),
    openedOn: t.exposeString('openedOn', { description: 'The day it was opened, such as 2026-11-02.' }),
    peroxideTestedOn: t.exposeString('peroxideTestedOn', {
      nullable: true,
      description: 'The day peroxides were tested for last; null when nobody said.',
    }),
    finishedAt: t.expose('finishedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was finished; null while it is in use.',
    }),
  }),
});

addMutation('renewCalendarAddress', {
  description: 'Gives the calendar a new secret address; an old one answers no longer.',
  check: z.object({ clientKey: said.clientKey }),
  success: PrepKept,
  run: (input, context) => fresh(context, calendarRenewed(context, input)),
  fields: () => ({}),
});

const BatchKept = builder.objectRef<{ batchId: string }>('SolventBatchKept').implement({
  description: 'A bottle of solvent was noted.',
  fields: (t) => ({
    batch: t.field({
      type: SolventBatchRef,
      description: 'The bottle.',
      resolve: ({ batchId }, _, { database }) =>
        database.read.solventBatch.findUniqueOrThrow({ where: { id: batchId } }),
    }),
  }),
});

addMutation('noteSolventBatch', {
  description: 'A bottle of solvent is in use, was tested for peroxides, or is finished.',
  check: batchSaid,
  success: BatchKept,
  run: (input, context) => fresh(context, batchNoted(context, input)),
  fields: (t) => ({
    solvent: t.string({ required: true, description: 'The solvent.' }),
    batch: t.string({ required: true, description: 'Its batch, as printed; noted again, it is the same bottle.' }),
    openedOn: t.string({ description: 'The day it was opened, such as 2026-11-02; today when not given.' }),
    peroxideTestedOn: t.string({ description: 'The day peroxides were tested for last.' }),
    isFinished: t.boolean({ description: 'It is finished.' }),
  }),
});

builder.queryField('solventBatches', (t) =>
  t.field({
    type: [SolventBatchRef],
    description: 'Bottles of solvent in use, by solvent, the newest first.',
    complexity: { field: 5, multiplier: 20 },
    resolve: (_, __, { database, lab }) =>
      database.read.solventBatch.findMany({
        where: { labId: lab.id, finishedAt: null },
        orderBy: [{ solvent: 'asc' }, { openedOn: 'desc' }, { id: 'asc' }],
        take: 500,
      }),
  }),
);
