// The forms of what is done to plates: pre-wash, solvent gone, activate, equilibrate, use; each with its caution.
import { lids, open } from '../act/choices.ts';
import type { Choice, FieldSpec } from '../act/field.ts';
import type { ActSpec, Names } from '../act/forms.ts';

const rules = 'Follow your lab’s rules and the safety data sheet.';

const some: FieldSpec = {
  name: 'plates',
  label: 'How many plates',
  kind: 'number',
  optional: true,
  hint: 'Empty: all of them. Some get a code of their own.',
};
const standing = (label: string, rooms: readonly Choice[]): FieldSpec => ({
  ...{ name: 'room', label, kind: 'choice', choices: rooms, optional: true },
  hint: 'Empty: where they were.',
});
const shut: FieldSpec = {
  ...{ name: 'closure', label: 'And stand', kind: 'choice', choices: [...lids, open], optional: true },
  hint: 'Empty: as before.',
};

export const directions: readonly Choice[] = [
  { value: 'ALONG_HEIGHT', words: 'along the height' },
  { value: 'ALONG_WIDTH', words: 'along the width' },
];
export const edges: readonly Choice[] = [
  { value: 'MARKED', words: 'marked' },
  { value: 'CUT', words: 'cut off' },
  { value: 'LEFT', words: 'left as it is' },
];

export const prewashCaution = `Fume hood, no ignition source. Thin nitrile gloves hold chloroform for minutes only: wear what your lab prescribes, changed at once on a splash. Chloroform never with acetone and base, strong alkali or reactive metals, waste included; halogenated waste apart. Ether, THF or dioxane: only what was tested for peroxides. Plastic backing: try one first. ${rules}`;

export const prewash = ({ rooms }: Names): ActSpec => ({
  name: 'prewashPlates',
  title: 'Pre-wash',
  record: 'They are washed',
  fields: [
    some,
    {
      ...{ name: 'solvent', label: 'Solvent', kind: 'text', initial: 'methanol and chloroform, 1:1 v/v' },
      hint: 'Free of chloroform: methanol and ethyl acetate, 1:1 v/v.',
    },
    { name: 'isMobilePhase', label: 'it is the mobile phase of the extraction', kind: 'tick', optional: true },
    { name: 'direction', label: 'Ran', kind: 'choice', choices: directions },
    { name: 'frontEdge', label: 'Dirty edge at the front', kind: 'choice', choices: edges },
    { name: 'tankLoads', label: 'Tank loads', kind: 'number', optional: true },
    { name: 'mlPerLoad', label: 'Solvent of each load', kind: 'number', unit: 'mL', optional: true },
    {
      ...{ name: 'tankMinutes', label: 'Still runs for', kind: 'number', unit: 'min', optional: true },
      hint: 'Empty: they hang in the hood already.',
    },
    standing('Hang in', rooms),
  ],
  caution: prewashCaution,
});

export const solventGone: ActSpec = {
  name: 'recordSolventGone',
  title: 'Solvent gone',
  record: 'It is gone',
  fields: [
    {
      ...{ name: 'by', label: 'Seen by', kind: 'text', optional: true },
      hint: 'A short name; empty: whoever records it.',
    },
  ],
  caution: `By hours and airflow, never by smell: chloroform is above its limit before one smells it. Until then no oven takes them. ${rules}`,
};

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
