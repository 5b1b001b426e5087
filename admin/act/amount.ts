// Fields for how much and why, and what is said of dry powder.
import type { Line } from '../fields.ts';
import type { FieldSpec } from './field.ts';

const rules = 'Follow your lab’s rules and the safety data sheet.';
export const powder = `Pour and tap dry powder in a hood or with the mask your lab prescribes. ${rules}`;

export const gramsField = (label: string, hint?: string): FieldSpec => {
  return { name: 'grams', label, kind: 'number', unit: 'g', ...(hint ? { hint } : {}) };
};

export const platesField: FieldSpec = { name: 'plates', label: 'How many plates', kind: 'number' };
export const whyField: FieldSpec = { name: 'why', label: 'Why', kind: 'text' };

export function amountOf(of: Line): FieldSpec {
  return of.kind === 'PLATE_BOX' ? platesField : gramsField('How much, as the balance shows it');
}
