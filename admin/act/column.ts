// Forms of a column: packed, conditioned, interrupted.
import { gramsField, powder, whyField } from './amount.ts';
import { wettingHeat } from './cautions.ts';
import { packingMethods } from './choices.ts';
import type { MaybeSpec, Shape } from './spec.ts';

export const columned = ({ isColumn, isBox }: Shape): MaybeSpec[] => [
  {
    name: 'packColumn',
    title: 'Column packed',
    record: 'Record column',
    fits: !isColumn && !isBox,
    caution: powder,
    fields: [
      { name: 'innerDiameterMm', label: 'Inner diameter', kind: 'number', unit: 'mm' },
      { name: 'bedLengthMm', label: 'Bed length', kind: 'number', unit: 'mm' },
      { ...gramsField('How much went in', 'Empty: worked out from the bed.'), optional: true },
      { name: 'method', label: 'Packed', kind: 'choice', choices: packingMethods, optional: true },
      { name: 'tapping', label: 'Tapping', kind: 'text', optional: true },
      { name: 'flowMlPerMin', label: 'Settled at a flow of', kind: 'number', unit: 'mL/min', optional: true },
      { name: 'pressureBar', label: 'Or a pressure of', kind: 'number', unit: 'bar', optional: true },
      { name: 'packer', label: 'Packer', kind: 'text', optional: true },
      { name: 'dyeTest', label: 'Dye test', kind: 'text', optional: true },
    ],
  },
  {
    name: 'conditionColumn',
    title: 'Column conditioned',
    record: 'Record it',
    fields: [
      { name: 'mobilePhase', label: 'Mobile phase', kind: 'text', optional: true },
      {
        ...{ name: 'columnVolumes', label: 'Column volumes', kind: 'number', optional: true },
        hint: '2 to 3 is usual. Empty: from flow and minutes.',
      },
      { name: 'flowMlPerMin', label: 'Flow', kind: 'number', unit: 'mL/min', optional: true },
      { name: 'minutes', label: 'For', kind: 'number', unit: 'min', optional: true },
    ],
    fits: isColumn,
    caution: wettingHeat,
  },
  {
    name: 'interrupt',
    title: 'Interrupted',
    record: 'Record it',
    fields: [{ ...whyField, optional: true }],
    fits: isColumn || isBox,
  },
];
