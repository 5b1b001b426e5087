// The numbers of a sorbent as one reads and changes them: which belong together, what a unit is typed in.
import type { FieldSpec, Typed } from '../act/field.ts';
import { figure, spokenName } from '../say/name.ts';
import { confidenceWord, originWord, sentence } from '../say/words.ts';
import type { Property } from './questions.ts';

const names: Record<string, string> = {
  capacityDoubt: 'how sure, below 60 % RH',
  capacityDoubtWet: 'how sure, above 70 % RH',
};

export const numberName = (name: string): string => sentence(names[name] ?? spokenName(name));

/** One standard deviation of a logarithm as a person says it: "within a quarter, more likely than not". */
function doubtWords(sd: number): string {
  const times = Math.exp(sd);
  return times < 1.6
    ? `give or take ${Math.round(100 * (times - 1))}\u00a0%`
    : `within a factor of ${times.toFixed(1)}`;
}

export const numberWords = ({ name, value, unit }: Property): string =>
  value !== null && name in names ? doubtWords(value) : figure(value, unit);

export const isGuess = ({ confidence, value }: Property): boolean => confidence === 'GUESS' && value !== null;

/** Where it comes from and how sure it is, in a few words. */
export const fromWords = ({ origin, confidence, value }: Property): string =>
  value === null ? 'nobody knows it yet' : `${originWord[origin]}, ${confidenceWord[confidence]}`;

/** It was changed here, and the table's can come back. */
export const isOwn = ({ origin }: Property): boolean => origin !== 'TABLE' && origin !== 'UNKNOWN';

export function numberFields({ name, unit }: Property): FieldSpec[] {
  return [
    {
      name: 'value',
      label: numberName(name),
      kind: 'number',
      optional: true,
      hint: name in names ? 'One standard deviation of the logarithm: 0.26 is give or take 30 %.' : 'Empty: not known.',
      ...(unit === '1' ? {} : { unit }),
    },
    {
      name: 'origin',
      label: 'Where from',
      kind: 'choice',
      choices: [
        { value: 'MEASURED', words: originWord.MEASURED },
        { value: 'CERTIFICATE', words: originWord.CERTIFICATE },
        { value: 'DEFAULT', words: 'taken over' },
      ],
    },
    {
      name: 'confidence',
      label: 'How sure',
      kind: 'choice',
      choices: [
        { value: 'CONFIRMED', words: confidenceWord.CONFIRMED },
        { value: 'DERIVED', words: confidenceWord.DERIVED },
        { value: 'FROM_MEMORY', words: confidenceWord.FROM_MEMORY },
        { value: 'GUESS', words: confidenceWord.GUESS },
      ],
    },
    { name: 'source', label: 'Source, in words', kind: 'text' },
  ];
}

export const numberTyped = (of: Property): Typed => ({
  value: of.value === null ? '' : String(Number(of.value.toPrecision(6))),
  ...(isOwn(of) ? { origin: of.origin, confidence: of.confidence, source: of.source } : {}),
});

/** As the API takes a number back. */
export const numberBefore = ({ name, value, origin, confidence, source }: Property) => ({
  name,
  value,
  origin,
  confidence,
  source,
});

const order = [
  'filmCapacity',
  'filmC',
  'filmK',
  'poreCapacity',
  'poreActivity',
  'poreWidth',
  'capacityDoubt',
  'capacityDoubtWet',
  'bulkDensityKgPerM3',
  'voidFraction',
];

interface NumberGroup {
  from: string;
  all: Property[];
}

/** Numbers in the order one thinks of them, together where they have one source, which is then said once. */
export function numberGroups(properties: readonly Property[]): NumberGroup[] {
  const sorted = [...properties].sort((one, other) => order.indexOf(one.name) - order.indexOf(other.name));
  const groups: NumberGroup[] = [];
  for (const property of sorted) {
    const from = `${sentence(fromWords(property))}: ${property.source}`;
    const last = groups.find((group) => group.from === from);
    if (last) last.all.push(property);
    else groups.push({ from, all: [property] });
  }
  return groups;
}
