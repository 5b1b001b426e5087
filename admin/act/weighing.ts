// The form of a weighing of its water.
import { bases, weighedParts, weighingMethods } from './choices.ts';
import type { ActSpec } from './spec.ts';

export const weighing: ActSpec = {
  name: 'recordWeighing',
  title: 'Weigh',
  record: 'Record weighing',
  fromWeighings: true,
  fields: [
    { name: 'waterFraction', label: 'Water found', kind: 'number', unit: '%', scale: 0.01 },
    {
      name: 'basis',
      label: 'Counted on',
      kind: 'choice',
      hint: 'As received: of what was weighed in. Dry: of what was left.',
      choices: bases,
    },
    { name: 'of', label: 'Of', kind: 'choice', choices: weighedParts },
    { name: 'method', label: 'How', kind: 'choice', choices: weighingMethods },
    {
      name: 'temperatureC',
      label: 'Dried at',
      kind: 'number',
      unit: '°C',
      initial: '150',
      hint: 'Loss on drying counts solvent too: has it touched any?',
      when: { field: 'method', is: 'LOSS_ON_DRYING' },
    },
  ],
};
