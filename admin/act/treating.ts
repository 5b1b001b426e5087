// Forms of what changes the water in a container: mixed, dried, equilibrated.
import { dryingCaution } from './cautions.ts';
import { inOvenFields } from './in-oven.ts';
import type { MaybeSpec, Shape } from './spec.ts';

export const treating = ({ isColumn, isBox }: Shape): MaybeSpec[] => [
  { name: 'mixContainer', title: 'Mixed or rolled', record: 'Record it', fields: [], fits: !isColumn && !isBox },
  {
    name: 'recordDrying',
    title: 'Dried',
    record: 'Record drying',
    fields: [
      { name: 'temperatureC', label: 'Oven', kind: 'number', unit: '°C' },
      { name: 'minutes', label: 'For', kind: 'number', unit: 'min' },
      {
        name: 'waterFraction',
        label: 'Water found afterwards, dry basis',
        kind: 'number',
        unit: '%',
        scale: 0.01,
        optional: true,
      },
      { name: 'vacuum', label: 'under vacuum', kind: 'tick', optional: true },
      ...inOvenFields(isBox),
    ],
    forecast: true,
    fits: !isBox,
    caution: dryingCaution(null),
  },
  {
    name: 'recordEquilibration',
    title: 'Equilibrated',
    record: 'Record it',
    fields: [
      { name: 'humidityPercent', label: 'At', kind: 'number', unit: '% RH' },
      { name: 'temperatureC', label: 'Temperature', kind: 'number', unit: '°C', initial: '22' },
    ],
    fits: !isBox,
  },
];
