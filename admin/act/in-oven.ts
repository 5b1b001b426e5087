// What is asked of a drying besides temperature and minutes, so that the tray model can say what it left.
import type { FieldSpec } from './field.ts';

const depth: FieldSpec = {
  name: 'depthMm',
  label: 'Depth in the tray',
  kind: 'number',
  unit: 'mm',
  optional: true,
  hint: 'With it what is left is reckoned, not only what the heat leaves.',
};
const toClosed: FieldSpec = {
  name: 'minutesToClosed',
  label: 'Cooled in the open for',
  kind: 'number',
  unit: 'min',
  optional: true,
  hint: 'Empty: shut away at once.',
};
const fan: FieldSpec = {
  name: 'fan',
  label: 'a fan moved the air',
  kind: 'tick',
  optional: true,
  when: { field: 'vacuum', is: '' },
};

/** Plates lie in no tray. */
export const inOvenFields = (isBox: boolean): FieldSpec[] => (isBox ? [fan, toClosed] : [depth, fan, toClosed]);
