// What the prep is planned with, each group a sentence and a form: pre-wash, places and people, times, days off.
import type { FieldSpec, Typed } from '../act/field.ts';
import { labClock } from '../say/time.ts';
import type { InputOf } from '../shape.ts';
import type { Bottle, PrepSettings, setPrepSettingsAct } from './questions.ts';

type Input = InputOf<typeof setPrepSettingsAct.input>;
type Values = Record<string, string | number | boolean | null>;

export interface PrepGroup {
  name: string;
  title: string;
  keys: readonly (keyof PrepSettings)[];
  words: (of: PrepSettings) => string;
  fields: readonly FieldSpec[];
  typed: (of: PrepSettings) => Typed;
  input: (values: Values) => Input;
}

const text = (value: number): string => String(Number(value.toPrecision(6)));
const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;
const number = (name: string, label: string, unit?: string): FieldSpec => {
  return { name, label, kind: 'number', ...(unit ? { unit } : {}) };
};
const words = (name: string, label: string, hint?: string): FieldSpec => {
  return { name, label, kind: 'text', ...(hint ? { hint } : {}) };
};

/** A day for reading: "24 Dec 2026". */
export const dayWords = (day: string): string =>
  new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' }).format(
    new Date(`${day}T12:00Z`),
  );

/** Days as somebody types them, one after the other. */
export const daysTyped = (typed: string): string[] => [...new Set(typed.split(/[\s,;]+/).filter(Boolean))].sort();

export const prepGroups: readonly PrepGroup[] = [
  {
    name: 'pre-wash',
    title: 'Pre-wash',
    keys: ['preWash', 'tanks', 'tankPlates', 'tankMl', 'preWashMinutes', 'tankName'],
    words: ({ preWash, tanks, tankPlates, tankMl, preWashMinutes }) =>
      `Plates run their full length in ${preWash}: ${count(tankPlates, 'plate')} and ${text(tankMl)} mL a load, ${text(preWashMinutes)} min, ${count(tanks, 'tank')} at once.`,
    fields: [
      {
        ...words('preWash', 'Washed in', 'Such as methanol:ethyl acetate 1:1, without chloroform.'),
        wide: true,
      },
      number('tankPlates', 'Plates in a load'),
      number('tankMl', 'Solvent in a load', 'mL'),
      number('preWashMinutes', 'A load takes', 'min'),
      number('tanks', 'Tanks at once'),
      words('tankName', 'The tank is called'),
    ],
    typed: (of) => ({
      ...{ preWash: of.preWash, tanks: text(of.tanks), tankPlates: text(of.tankPlates), tankMl: text(of.tankMl) },
      ...{ preWashMinutes: text(of.preWashMinutes), tankName: of.tankName },
    }),
    input: (values) => values,
  },
  {
    name: 'places',
    title: 'Places and people for the prep',
    keys: ['hoodPlaces', 'ovenPlates', 'people', 'hoodName', 'desiccatorName'],
    words: ({ hoodPlaces, ovenPlates, people, hoodName, desiccatorName }) =>
      `${count(hoodPlaces, 'plate')} can air-dry at once in the ${hoodName}; ${count(people, 'person prepares', 'people prepare')} at once; ${count(ovenPlates, 'plate')} in an oven load where no oven is described; dry things wait in the ${desiccatorName}.`,
    fields: [
      number('hoodPlaces', 'Plates in the hood at once'),
      number('people', 'People who prepare at once'),
      number('ovenPlates', 'Plates in an oven load'),
      words('hoodName', 'The hood is called'),
      words('desiccatorName', 'The desiccator is called'),
    ],
    typed: (of) => ({
      ...{ hoodPlaces: text(of.hoodPlaces), people: text(of.people), ovenPlates: text(of.ovenPlates) },
      ...{ hoodName: of.hoodName, desiccatorName: of.desiccatorName },
    }),
    input: (values) => values,
  },
  {
    name: 'times',
    title: 'Times of the prep',
    keys: ['eveningFrom', 'packMinutes', 'equilibrateMinutes', 'conditioningVolumes'],
    words: ({ eveningFrom, packMinutes, equilibrateMinutes, conditioningVolumes }) =>
      `The evening sheet begins at ${eveningFrom}. Packing a column takes ${text(packMinutes)} min, conditioning ${text(conditioningVolumes)} column volumes; plates equilibrate ${text(equilibrateMinutes)} min where the model says nothing.`,
    fields: [
      words('eveningFrom', 'The evening begins at', 'Such as 15:00, on the lab’s clock.'),
      number('packMinutes', 'Packing a column', 'min'),
      number('conditioningVolumes', 'Conditioned with', 'column volumes'),
      number('equilibrateMinutes', 'Plates equilibrate', 'min'),
    ],
    typed: (of) => ({
      ...{ eveningFrom: of.eveningFrom, packMinutes: text(of.packMinutes) },
      ...{ equilibrateMinutes: text(of.equilibrateMinutes), conditioningVolumes: text(of.conditioningVolumes) },
    }),
    input: (values) => values,
  },
  {
    name: 'days-off',
    title: 'Days off',
    keys: ['daysOff'],
    words: ({ daysOff }) =>
      daysOff.length === 0
        ? 'None beside the days of the week on which nobody works.'
        : `Nobody prepares anything on ${daysOff.map(dayWords).join(', ')}.`,
    fields: [{ ...words('daysOff', 'Days on which nobody works', 'Such as 2026-12-24, 2026-12-25.'), optional: true }],
    typed: ({ daysOff }) => ({ daysOff: daysOff.join(', ') }),
    input: ({ daysOff }) => ({ daysOff: daysTyped(typeof daysOff === 'string' ? daysOff : '') }),
  },
];

/** None of it is set by the lab. */
export const isUsual = ({ keys }: PrepGroup, { own }: PrepSettings): boolean => !keys.some((key) => own.includes(key));

/** What puts a group back: what was set stays set, what was a default is one again. */
export const prepBefore = ({ keys }: PrepGroup, before: PrepSettings): Input =>
  Object.fromEntries(keys.map((key) => [key, before.own.includes(key) ? before[key] : null]));

export const bottleFields: readonly FieldSpec[] = [
  words('solvent', 'Solvent', 'Such as diethyl ether.'),
  words('batch', 'Batch', 'As printed on the bottle.'),
  { name: 'openedOn', label: 'Opened on', kind: 'day', optional: true, hint: 'Empty: today.' },
  {
    name: 'peroxideTestedOn',
    label: 'Peroxides tested on',
    kind: 'day',
    optional: true,
    hint: 'Of ether, THF, dioxane and the like.',
  },
];

/** A form's values, with days as the API says them. */
export const bottleIn = (values: Values, zone: string): Values =>
  Object.fromEntries(
    Object.entries(values).map(([name, value]) => [
      name,
      name.endsWith('On') && typeof value === 'string' ? labClock(new Date(value), zone).slice(0, 10) : value,
    ]),
  );

export const bottleWords = ({ batch, openedOn, peroxideTestedOn }: Bottle): string =>
  [
    `batch ${batch}`,
    `opened ${dayWords(openedOn)}`,
    ...(peroxideTestedOn ? [`peroxides tested ${dayWords(peroxideTestedOn)}`] : []),
  ].join(', ');
