// Needs asked for and told, as GraphQL takes them.
import { z } from 'zod';
import { builder } from '../builder.ts';
import { checked } from '../errors.ts';
import { addMutation } from '../mutation.ts';
import { BackingEnum, fresh, PlateRegimeEnum } from '../stock/schema.ts';
import { NeedKindEnum } from './enums.ts';
import { needAdded, type NeedsKept } from './need.ts';
import { needDropped, needRestored } from './need-drop.ts';
import { needsCopied } from './need-copy.ts';
import { needSet } from './need-set.ts';
import { needsBetween } from './listed.ts';
import { NeedRef } from './refs.ts';
import { needsAdded } from './need-file.ts';
import { addNeedSaid, copyNeedsSaid, dropNeedSaid, needFileSaid, setNeedSaid, whichNeedSaid } from './said.ts';

const NeedsKeptRef = builder.objectRef<NeedsKept>('NeedsKept').implement({
  description: 'Needs were added, changed, dropped or brought back; each says at once whether it can be met.',
  fields: (t) => ({
    need: t.field({
      type: NeedRef,
      description: 'The need, or the first of them.',
      resolve: async ({ needIds }, _, { load }) => {
        const need = await load.need.load(needIds[0] ?? '');
        if (!need) throw new Error('need is gone');
        return need;
      },
    }),
    needs: t.field({
      type: [NeedRef],
      description: 'All of them.',
      resolve: async ({ needIds }, _, { load }) => {
        const all = await load.need.loadMany(needIds);
        return all.flatMap((one) => (one && !(one instanceof Error) ? [one] : []));
      },
    }),
    notes: t.exposeStringList('notes', { description: 'What was changed beside it.' }),
  }),
});

const between = z.object({
  from: z.date('an instant').nullish(),
  to: z.date('an instant').nullish(),
  dropped: z.boolean().nullish(),
});

builder.queryField('needs', (t) =>
  t.field({
    type: [NeedRef],
    description: 'Needs in the order of their times, with whether they can be met.',
    complexity: { field: 20, multiplier: 50 },
    args: {
      from: t.arg({ type: 'DateTime', description: 'From this time on; from the beginning of today when not given.' }),
      to: t.arg({
        type: 'DateTime',
        description: 'Before this time; without an end when not given. At most 500 are told.',
      }),
      dropped: t.arg.boolean({ description: 'Dropped ones too; not when not given.' }),
    },
    resolve: (_, args, context) => needsBetween(context, checked(between, args, 'needs')),
  }),
);

type T = Parameters<Parameters<typeof builder.inputType>[1]['fields']>[0];

/** What is said of a need; `stays` is added where leaving out changes nothing. */
export const needInput = (t: T, isNew: boolean) => {
  const stays = isNew ? '' : '; not given: stays';
  return {
    sorbent: t.string({ required: isNew, description: `Name of the sorbent; of plates, that of their layer${stays}.` }),
    campaign: t.id({
      description: `The campaign it belongs to: it is given of that campaign’s lot, of what is kept for it${isNew ? '' : '; null: none'}.`,
    }),
    lotNumber: t.string({ description: `Only of this lot; any when not given${isNew ? '' : '; null: any'}.` }),
    at: t.field({ type: 'DateTime', required: isNew, description: `When it must be ready${stays}.` }),
    room: t.string({ description: `Name of the room it is needed in${stays}.` }),
    forWhom: t.string({ required: isNew, description: `For whom, or for what${stays}.` }),
    note: t.string({ description: `A note${stays}.` }),
    priority: t.int({ description: `1, 2, 4 or 8: heavier needs choose first; 1 when not given${stays}.` }),
    plates: t.int({ description: `How many plates${stays}.` }),
    backing: t.field({ type: BackingEnum, description: `Backing of the plates; any when not given${stays}.` }),
    isForExtraction: t.boolean({ description: `Plates: for extraction, so pre-washed in its mobile phase${stays}.` }),
    isPreWashed: t.boolean({ description: `Plates: pre-washed; yes when not given${stays}.` }),
    mobilePhase: t.string({ description: `Mobile phase, such as \`hexane:ethyl acetate 4:1\`${stays}.` }),
    regime: t.field({ type: PlateRegimeEnum, description: `Plates: dry until spotted when not given${stays}.` }),
    regimeHumidityPercent: t.float({
      description: `Plates: equilibrated with this air, % RH; the room’s when not given${stays}.`,
    }),
    dryGrams: t.float({ description: `Sorbent: dry g${stays}.` }),
    limitWaterFraction: t.float({ description: `Most water, kg per kg dry sorbent; its band when not given${stays}.` }),
    diameterMm: t.float({ description: `Column: inner diameter, mm${stays}.` }),
    bedLengthMm: t.float({ description: `Column: length of the bed, mm${stays}.` }),
    sampleMg: t.float({ description: `Column: mass of the sample, mg, where the flash table shall size it${stays}.` }),
    deltaRf: t.float({ description: `Column: ΔRf of what is to be parted${stays}.` }),
    columnVolumes: t.float({
      description: `Column: column volumes to condition with; the lab’s usual when not given${stays}.`,
    }),
    flowMlPerMin: t.float({ description: `Column: flow, mL/min; that of the flash method when not given${stays}.` }),
  };
};

addMutation('addNeed', {
  description:
    'Something must be ready at a time. Stock is chosen and kept, steps are planned; what cannot be met is kept all the same and says what stands in the way and the first time it could be.',
  check: addNeedSaid,
  success: NeedsKeptRef,
  run: (input, context) => fresh(context, needAdded(context, input)),
  fields: (t) => ({
    kind: t.field({ type: NeedKindEnum, required: true, description: 'What is needed.' }),
    ...needInput(t, true),
    weekdays: t.intList({ description: 'Comes again on these weekdays, Monday 1 to Sunday 7; once when not given.' }),
    untilDay: t.string({
      description: 'Comes again until this day, such as 2026-12-18; without an end when not given.',
    }),
  }),
});

addMutation('setNeed', {
  description: 'Changes a need. Of one that was begun, only when, where, for whom and how much it counts.',
  check: setNeedSaid,
  success: NeedsKeptRef,
  run: (input, context) => fresh(context, needSet(context, input)),
  fields: (t) => ({ id: t.id({ required: true, description: 'Which need.' }), ...needInput(t, false) }),
});

addMutation('dropNeed', {
  description: 'It is needed no longer: what was kept for it is free again.',
  check: dropNeedSaid,
  success: NeedsKeptRef,
  run: (input, context) => fresh(context, needDropped(context, input)),
  fields: (t) => ({
    id: t.id({ required: true, description: 'Which need.' }),
    isSeries: t.boolean({
      description: 'With all that come after it on the same weekdays; only this one when not given.',
    }),
  }),
});

addMutation('restoreNeed', {
  description: 'Brings back a need that was dropped; its stock is chosen anew.',
  check: whichNeedSaid,
  success: NeedsKeptRef,
  run: (input, context) => fresh(context, needRestored(context, input)),
  fields: (t) => ({ id: t.id({ required: true, description: 'Which need.' }) }),
});

addMutation('copyNeeds', {
  description: 'The needs of one day again on another, at the same times of the clock: “same as last Friday”.',
  check: copyNeedsSaid,
  success: NeedsKeptRef,
  run: (input, context) => fresh(context, needsCopied(context, input)),
  fields: (t) => ({
    fromDay: t.string({ required: true, description: 'The day that is copied, such as 2026-11-20.' }),
    toDay: t.string({ required: true, description: 'The day it is copied to.' }),
    ids: t.idList({ description: 'Only these needs of that day; all when not given.' }),
  }),
});

const FileFormatEnum = builder.enumType('NeedFileFormat', {
  description: 'How a file of needs is written.',
  values: {
    JSON: { description: 'A list of objects with the fields of `addNeed`.' },
    CSV: { description: 'A line of headings, the fields of `addNeed`, then a line each.' },
  },
});

addMutation('addNeeds', {
  description:
    'Adds the needs of a file, all of them or none: every problem is told by its line. A time without offset is the lab’s.',
  check: needFileSaid,
  success: NeedsKeptRef,
  run: (input, context) => fresh(context, needsAdded(context, input)),
  fields: (t) => ({
    text: t.string({ required: true, description: 'The text of the file.' }),
    format: t.field({
      type: FileFormatEnum,
      description: 'How it is written; seen from its first sign when not given.',
    }),
  }),
});
