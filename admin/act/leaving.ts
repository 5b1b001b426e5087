// Forms of how sorbent leaves without being used: lost, spent on a check, used up, discarded.
import type { Line } from '../fields.ts';
import { amountOf, gramsField, whyField } from './amount.ts';
import type { MaybeSpec, Shape } from './spec.ts';

export const leaving = (of: Line, { isBox }: Shape): MaybeSpec[] => [
  {
    name: 'recordLoss',
    title: 'Lost some',
    record: 'Record loss',
    fields: [gramsField('How much'), whyField],
    fits: !isBox,
  },
  { name: 'spendOnCheck', title: 'Spent on a check', record: 'Record it', fields: [amountOf(of)] },
  { name: 'finishContainer', title: 'Used up', record: 'It is used up', fields: [] },
  {
    name: 'discardContainer',
    title: 'Discarded',
    record: 'Record it',
    fields: [{ ...amountOf(of), optional: true, hint: 'Empty: all of it.' }, whyField],
  },
];
