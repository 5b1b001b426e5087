// The forms of the wash of plates: pre-wash, solvent gone; each with its caution.
import type { Choice } from '../act/field.ts';
import type { ActSpec, Names } from '../act/spec.ts';
import { rules, some, standing } from './given.ts';

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
