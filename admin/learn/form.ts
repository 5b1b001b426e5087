// The form of "what is this?": what comes in under a barcode, so that next time only lot and number are left to say.
import type { FieldSpec } from '../act/field.ts';
import { containerFields, lotFields, otherSupplier, type Known } from '../receive/form.ts';

/** Of the form of what came in, what a barcode says each time anew, and where it goes. */
const notLearned = new Set(['lotNumber', 'newSupplier', 'count', 'room']);

export function learnFields(known: Known): FieldSpec[] {
  return [...lotFields(known), ...containerFields(known)]
    .filter(({ name }) => !notLearned.has(name))
    .map((field) => {
      const choices = field.choices?.filter(({ value }) => value !== otherSupplier);
      const isLeft = field.name === 'vessel' || field.name === 'closure';
      return {
        ...field,
        ...(choices && { choices }),
        ...(isLeft && { optional: true, hint: 'Empty: said each time.' }),
      };
    });
}
