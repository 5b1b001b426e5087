// The lab's own choices, and what another band would change, as GraphQL shows them.
import { builder } from '../builder.ts';
import { checked, Refused } from '../errors.ts';
import { addMutation } from '../mutation.ts';
import { bandFields, ExposureStateEnum, fresh, LabRef, TargetPolicyEnum } from '../stock/schema.ts';
import { bandChange, bandChangeSaid, type BandChange, type Changed } from './settings-band.ts';
import { type LabSettings, labSettingsOf, labSettingsSaid, labSettingsSet } from './settings-lab.ts';

const LabSettingsRef = builder.objectRef<LabSettings>('LabSettings').implement({
  description: 'What the lab can set about its estimates; what it has not set has an invented default.',
  fields: (t) => ({
    redryChance: t.exposeFloat('redryChance', {
      description: 'Redry from this chance on that the next scoop is past its upper end, 0 to 1.',
    }),
    useSoonChance: t.exposeFloat('useSoonChance', { description: 'Use soon from this chance on, 0 to 1.' }),
    useSoonHours: t.exposeFloat('useSoonHours', {
      description: 'Use soon as well when the band is left within so many hours.',
    }),
    tooDryChance: t.exposeFloat('tooDryChance', {
      description: 'Too dry from this chance on that the next scoop is below its lower end, 0 to 1.',
    }),
    scoopGrams: t.exposeFloat('scoopGrams', { description: 'The scoop that is judged, g off the top.' }),
    topMm: t.exposeFloat('topMm', { description: 'Depth of the reported top layer, mm.' }),
    filmMmPerS: t.exposeFloat('filmMmPerS', {
      description: 'Mass transfer at an open mouth, mm/s: 3 in still room air, 8 to 15 in the draught of a hood.',
    }),
    pressurePa: t.exposeFloat('pressurePa', { description: 'Air pressure at the lab’s height, Pa.' }),
    workingFrom: t.exposeString('workingFrom', { description: 'Working hours begin, on the lab’s clock.' }),
    workingTo: t.exposeString('workingTo', { description: 'Working hours end, on the lab’s clock.' }),
    workingDays: t.exposeIntList('workingDays', {
      description: 'Days on which habits count, Monday 1 to Sunday 7.',
    }),
    desiccantDays: t.exposeInt('desiccantDays', { description: 'A desiccant is due for renewal after so many days.' }),
    leastHoodHours: t.exposeFloat('leastHoodHours', {
      description:
        'Solvent may be called gone after so many hours in the hood at the earliest, h; overnight is common practice.',
    }),
    equilibratedBandPercent: t.exposeFloat('equilibratedBandPercent', {
      description: 'Equilibrated plates are good while the air stays within so much of theirs, % RH either side.',
    }),
    own: t.exposeStringList('own', { description: 'Which of these the lab has set itself, by name.' }),
  }),
});

builder.objectField(LabRef, 'settings', (t) =>
  t.field({
    type: LabSettingsRef,
    description: 'What it has set about its estimates.',
    resolve: ({ settings }) => labSettingsOf(settings),
  }),
);

const LabKept = builder.objectRef<{ labId: string }>('LabKept').implement({
  description: 'The lab’s choices were written.',
  fields: (t) => ({
    lab: t.field({ type: LabRef, description: 'The lab.', resolve: (_, __, { lab }) => lab }),
  }),
});

const back = 'not given: stays; null: its default';

addMutation('setLabSettings', {
  description:
    'Sets what decides a state and what estimates rest on. Whatever rests on it is estimated anew: at once in a small lab, within minutes in a large one.',
  check: labSettingsSaid,
  success: LabKept,
  run: (input, context) => fresh(context, labSettingsSet(context, input)),
  fields: (t) => ({
    name: t.string({ description: 'Name of the lab.' }),
    redryChance: t.float({ description: `Redry from this chance on, 0.01 to 0.99; ${back} (0.5).` }),
    useSoonChance: t.float({ description: `Use soon from this chance on, 0.01 to 0.99; ${back} (0.2).` }),
    useSoonHours: t.float({ description: `Use soon when the band is left within so many hours; ${back} (48).` }),
    tooDryChance: t.float({ description: `Too dry from this chance on, 0.01 to 0.99; ${back} (0.5).` }),
    scoopGrams: t.float({ description: `The scoop that is judged, g; ${back} (50).` }),
    topMm: t.float({ description: `Depth of the reported top layer, mm; ${back} (10).` }),
    filmMmPerS: t.float({ description: `Mass transfer at an open mouth, mm/s; ${back} (3).` }),
    pressurePa: t.float({ description: `Air pressure, Pa; ${back} (101325).` }),
    workingFrom: t.string({ description: `Working hours begin, such as \`08:00\`; ${back}.` }),
    workingTo: t.string({ description: `Working hours end, such as \`18:00\`; ${back}.` }),
    workingDays: t.intList({
      description: `Days on which habits count, Monday 1 to Sunday 7; ${back} (all of them).`,
    }),
    desiccantDays: t.int({ description: `A desiccant is due after so many days; ${back} (30).` }),
    leastHoodHours: t.float({ description: `Least hours in the hood, 1 to 168; ${back} (12, overnight).` }),
    equilibratedBandPercent: t.float({
      description: `How far the air of equilibrated plates may go either side, % RH; ${back} (5).`,
    }),
  }),
});

const ChangedRef = builder.objectRef<Changed>('StateChange').implement({
  description: 'A container whose answer would be another.',
  fields: (t) => ({
    label: t.exposeString('label', { description: 'Its label.' }),
    before: t.field({ type: ExposureStateEnum, description: 'Its state now.', resolve: ({ before }) => before }),
    after: t.field({ type: ExposureStateEnum, description: 'What it would be.', resolve: ({ after }) => after }),
  }),
});

const BandChangeRef = builder.objectRef<BandChange>('TargetChange').implement({
  description: 'What another target would change; nothing is written.',
  fields: (t) => ({
    containers: t.exposeInt('containers', { description: 'Containers in use that the target is for.' }),
    judged: t.exposeInt('judged', { description: 'Of these, how many were judged: at most 200.' }),
    changed: t.field({
      type: [ChangedRef],
      description: 'Those whose answer would be another.',
      resolve: ({ changed }) => changed,
    }),
    upperWaterFraction: t.exposeFloat('upperWaterFraction', {
      nullable: true,
      description: 'Its upper end, kg water per kg dry sorbent; null without one.',
    }),
    lowerWaterFraction: t.exposeFloat('lowerWaterFraction', {
      nullable: true,
      description: 'Its lower end, kg water per kg dry sorbent; null without one.',
    }),
  }),
});

const BandChangeInput = builder.inputType('TargetChangeInput', {
  description: 'A target that is only supposed.',
  fields: (t) => ({
    sorbent: t.string({ required: true, description: 'Name of the sorbent.' }),
    lotNumber: t.string({ description: 'One lot of it; not given: all that have no target of their own.' }),
    policy: t.field({ type: TargetPolicyEnum, required: true, description: 'Dry, as received, or set to a value.' }),
    ...bandFields(t),
  }),
});

builder.queryField('targetChange', (t) =>
  t.field({
    type: BandChangeRef,
    description: 'What another target would change.',
    complexity: 100,
    args: { input: t.arg({ type: BandChangeInput, required: true, description: 'The target.' }) },
    errors: {
      types: [Refused],
      union: { name: 'TargetChangeResult', description: 'What would change, or what is wrong with the target.' },
    },
    resolve: (_, { input }, context) => bandChange(context, checked(bandChangeSaid, input)),
  }),
);
