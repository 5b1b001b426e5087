// The form of taking some.
import type { Line } from '../fields.ts';
import { lids, open } from './choices.ts';
import type { FieldSpec } from './field.ts';
import type { Names, ActSpec } from './spec.ts';
import { platesField, gramsField, powder } from './amount.ts';

export function taking(of: Line, { rooms, vessels }: Names): ActSpec {
  const room: FieldSpec = {
    name: 'room',
    label: 'Where to',
    kind: 'choice',
    choices: rooms,
    optional: true,
    hint: 'Empty: stays in the same room.',
  };
  if (of.kind === 'PLATE_BOX')
    return {
      name: 'takePlates',
      title: 'Take',
      record: 'Take them',
      fields: [platesField, room],
      otherwise: 'recordCount',
    };
  const into: FieldSpec = {
    name: 'vessel',
    label: 'Into',
    kind: 'choice',
    choices: vessels,
    optional: true,
    hint: 'Empty: used at once, nothing is kept of it.',
  };
  const stands: FieldSpec = {
    name: 'closure',
    label: 'The new one stands',
    kind: 'choice',
    choices: [...lids, open],
    optional: true,
    hint: 'Empty: well closed.',
  };
  const fields = [gramsField('How much, as the balance shows it'), into, stands, room];
  return { name: 'takePortion', title: 'Take', record: 'Take it', fields, caution: powder, otherwise: 'recordCount' };
}
