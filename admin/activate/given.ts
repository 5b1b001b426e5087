// What the forms of plates share: how many, where they stand, how they are shut.
import { lids, open } from '../act/choices.ts';
import type { Choice, FieldSpec } from '../act/field.ts';

export const rules = 'Follow your lab’s rules and the safety data sheet.';

export const some: FieldSpec = {
  name: 'plates',
  label: 'How many plates',
  kind: 'number',
  optional: true,
  hint: 'Empty: all of them. Some get a code of their own.',
};

export const standing = (label: string, rooms: readonly Choice[]): FieldSpec => ({
  ...{ name: 'room', label, kind: 'choice', choices: rooms, optional: true },
  hint: 'Empty: where they were.',
});

export const shut: FieldSpec = {
  ...{ name: 'closure', label: 'And stand', kind: 'choice', choices: [...lids, open], optional: true },
  hint: 'Empty: as before.',
};
