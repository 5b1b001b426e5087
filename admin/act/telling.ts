// Forms of what only people can tell: joined with another, solvent, a habit.
import { gramsField, powder } from './amount.ts';
import type { MaybeSpec, Shape } from './spec.ts';

export const telling = ({ isColumn, isBox }: Shape): MaybeSpec[] => [
  {
    name: 'combineContainers',
    title: 'Emptied into another',
    record: 'Record it',
    fits: !isColumn,
    caution: powder,
    fields: [
      { name: 'into', label: 'Into, its code', kind: 'text', hint: 'Of the same lot: lots are not mixed.' },
      ...(isBox ? [] : [{ ...gramsField('How much', 'Empty: all that the book says is in it.'), optional: true }]),
    ],
  },
  {
    name: 'recordSolvent',
    title: 'Touched solvent',
    record: 'Record it',
    fields: [{ name: 'what', label: 'Which solvent or sample', kind: 'text', optional: true }],
    caution: 'From then on it is kept out of the oven.',
  },
  {
    name: 'setHabit',
    title: 'Opened by habit',
    record: 'Keep habit',
    fields: [
      { name: 'timesADay', label: 'Times a working day', kind: 'number' },
      { name: 'minutes', label: 'Each for', kind: 'number', unit: 'min' },
    ],
  },
];
