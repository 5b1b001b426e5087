// The forms of what is done to plates in an oven and after it: activate, equilibrate, use; each with its caution.
import type { Choice } from '../act/field.ts';
import type { ActSpec, Names } from '../act/spec.ts';
import { some, standing, shut, rules } from './given.ts';

export const activate = ({ rooms }: Names): ActSpec => ({
  name: 'activatePlates',
  title: 'Activate',
  record: 'They are activated',
  fields: [
    some,
    { name: 'temperatureC', label: 'Oven at', kind: 'number', unit: '°C' },
    { name: 'minutes', label: 'For', kind: 'number', unit: 'min' },
    { name: 'vacuum', label: 'under vacuum', kind: 'tick', optional: true },
    { name: 'oven', label: 'Which oven', kind: 'text', optional: true },
    standing('Cool in', rooms),
    shut,
  ],
  caution: `Plastic backing: flat on glass or metal, 90 °C at most. Pump slowly, let air in slowly, heat gloves; hot plates are not sealed at once. ${rules}`,
});

/** The salts by name, as the API knows them; driest first. */
const salts: readonly Choice[] = [
  'lithium chloride',
  'potassium acetate',
  'magnesium chloride',
  'potassium carbonate',
  'magnesium nitrate',
  'sodium chloride',
  'potassium chloride',
  'potassium nitrate',
  'potassium sulfate',
].map((name) => ({ value: name, words: `saturated ${name}` }));

export const equilibrate = ({ rooms }: Names): ActSpec => ({
  name: 'equilibratePlates',
  title: 'Equilibrate',
  record: 'They are equilibrated',
  fields: [
    some,
    { name: 'salt', label: 'Over', kind: 'choice', choices: salts, optional: true, hint: 'Empty: in a room’s air.' },
    { name: 'inRoom', label: 'Or in the air of', kind: 'choice', choices: rooms, optional: true },
    { name: 'temperatureC', label: 'At', kind: 'number', unit: '°C', initial: '22' },
    { name: 'hours', label: 'For', kind: 'number', unit: 'h' },
    standing('Stand in', rooms),
    shut,
  ],
  caution: `They stay good while the air stays there: keep them closed with the salt, or spot them in that room. ${rules}`,
});

export const used: ActSpec = {
  name: 'recordCount',
  title: 'Used some',
  record: 'So many are left',
  fields: [{ name: 'plates', label: 'How many are left', kind: 'number', hint: '0 when all are used.' }],
};
