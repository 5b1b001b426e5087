// A step that went otherwise than planned: when, and what only the one at the oven or the salt can say.
import type { Choice, FieldSpec } from '../act/field.ts';
import type { SheetLine } from './questions.ts';

export function otherFields({ step, need }: SheetLine, vessels: readonly Choice[]): FieldSpec[] {
  const optional = true;
  const planned = (value: number | null): { hint?: string } =>
    value === null ? {} : { hint: `Empty: ${value}, as planned.` };
  const oven: FieldSpec[] = [
    { name: 'temperatureC', label: 'Oven', kind: 'number', unit: '°C', optional, ...planned(step.temperatureC) },
    { name: 'minutes', label: 'For', kind: 'number', unit: 'min', optional, ...planned(step.minutes) },
    {
      name: 'waterFraction',
      label: 'Water found afterwards, dry basis',
      kind: 'number',
      unit: '%',
      scale: 0.01,
      optional,
      hint: 'Empty: the model’s figure.',
    },
    ...(need.kind === 'PLATES'
      ? []
      : ([
          {
            name: 'vessel',
            label: 'Poured into',
            kind: 'choice',
            choices: vessels,
            optional,
            hint: 'Empty: a jar of its size, or all stays where it is.',
          },
        ] as const)),
  ];
  return [
    { name: 'at', label: 'When it was done', kind: 'time', optional, hint: 'Empty: now.' },
    ...(step.kind === 'OVEN' ? oven : []),
    ...(step.kind === 'EQUILIBRATE'
      ? ([{ name: 'temperatureC', label: 'Air', kind: 'number', unit: '°C', optional, hint: 'Empty: 22.' }] as const)
      : []),
    { name: 'note', label: 'Note', kind: 'text', optional },
  ];
}
