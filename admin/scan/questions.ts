// What is asked of a container that was scanned.
import { question } from '../ask.ts';
import { lineFields } from '../fields.ts';
import { given, maybe } from '../shape.ts';

export const scannedQuestion = question<{ label: string }>(
  'Scanned',
  '$label: String!',
)({ container: maybe(given('label: $label', lineFields)) });
