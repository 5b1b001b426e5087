// The enums of needs and the prep sheet.
import { builder } from '../builder.ts';

export const NeedKindEnum = builder.enumType('NeedKind', {
  description: 'What is needed.',
  values: {
    PLATES: { description: 'Plates.' },
    SORBENT: { description: 'Dry sorbent.' },
    COLUMN: { description: 'A packed and conditioned column.' },
  },
});

export const NeedStateEnum = builder.enumType('NeedState', {
  description: 'How a need stands.',
  values: {
    PLANNED: { description: 'It can be met, and nothing was begun.' },
    BEGUN: { description: 'Something was done for it.' },
    CANNOT_BE_MET: { description: 'Something stands in the way.' },
    MET: { description: 'It was handed over.' },
    OVERDUE: { description: 'Its time is over and nobody said that it was handed over.' },
    DROPPED: { description: 'It was dropped.' },
  },
});

export const PrepStepKindEnum = builder.enumType('PrepStepKind', {
  description: 'A kind of step on the way to a need.',
  values: {
    PRE_WASH: { description: 'Plates run their full length in the pre-wash, one tank load.' },
    AIR_DRY: { description: 'In the hood until the solvent is gone, by time. Ticked when somebody takes them out.' },
    OVEN: { description: 'In an oven, one load.' },
    COOL: { description: 'Cools in the desiccator.' },
    KEEP: { description: 'Waits in the desiccator.' },
    EQUILIBRATE: { description: 'Stands over a salt or in the room.' },
    PACK: { description: 'A column is packed.' },
    CONDITION: { description: 'A column is wetted with its mobile phase.' },
    REST: { description: 'Rests until heat and bubbles are gone.' },
    HAND_OVER: { description: 'Is handed over.' },
  },
});

export const PrepPartEnum = builder.enumType('PrepPart', {
  description: 'A part of a day.',
  values: {
    MORNING: { description: 'Until the evening begins.' },
    EVENING: { description: 'From then on.' },
  },
});

export const SinceEnum = builder.enumType('SincePrinted', {
  description: 'What became of a step since the sheet was printed.',
  values: {
    NEW: { description: 'It is not on the printed sheet.' },
    CHANGED: { description: 'The printed sheet says something else.' },
  },
});

export const WasteStreamEnum = builder.enumType('WasteStream', {
  description: 'Where used solvent goes.',
  values: {
    HALOGENATED: { description: 'Halogenated waste, apart.' },
    NON_HALOGENATED: { description: 'Other solvent waste.' },
  },
});
