// Weighed samples as they are typed: rows of text that survive a reload, and what the API is told of them.
import type { FieldSpec, Typed } from '../act/field.ts';
import { readFields } from '../act/field.ts';
import type { FitInput, Salt, WeighedInput } from './questions.ts';

const otherAir = 'other';

export function pointFields(salts: readonly Salt[]): FieldSpec[] {
  const mass = (name: string, label: string, hint?: string): FieldSpec => ({
    name,
    label,
    kind: 'number',
    unit: 'g',
    when: { field: 'way', is: 'masses' },
    ...(hint ? { hint } : {}),
  });
  return [
    {
      name: 'salt',
      label: 'Stood over',
      kind: 'choice',
      choices: [
        ...salts.map(({ name, relativeHumidityPercent, fromC, toC }) => ({
          value: name,
          words:
            relativeHumidityPercent === null
              ? `${name}: known from ${fromC} to ${toC} °C`
              : `${relativeHumidityPercent.toFixed(1)} % RH: ${name}`,
        })),
        { value: otherAir, words: 'air whose humidity was read' },
      ],
    },
    {
      name: 'humidityPercent',
      label: 'Humidity read',
      kind: 'number',
      unit: '% RH',
      when: { field: 'salt', is: otherAir },
    },
    { name: 'temperatureC', label: 'At', kind: 'number', unit: '°C', initial: '22' },
    {
      name: 'way',
      label: 'Known by',
      kind: 'choice',
      choices: [
        { value: 'masses', words: 'two weighings' },
        { value: 'received', words: 'water found, as received' },
        { value: 'dry', words: 'water found, dry basis' },
      ],
    },
    { ...mass('tareGrams', 'Empty bottle'), optional: true },
    mass('beforeGrams', 'After it stood there', 'With the bottle, when one is given.'),
    mass('afterGrams', 'After drying'),
    {
      name: 'received',
      label: 'Water found',
      kind: 'number',
      unit: '%',
      scale: 0.01,
      when: { field: 'way', is: 'received' },
    },
    { name: 'dry', label: 'Water found', kind: 'number', unit: '%', scale: 0.01, when: { field: 'way', is: 'dry' } },
    {
      name: 'driedAtC',
      label: 'Dried at',
      kind: 'number',
      unit: '°C',
      initial: '150',
      hint: 'What stays behind below 150 °C is added.',
    },
    {
      name: 'sdPercent',
      label: 'Give or take',
      kind: 'number',
      unit: '% points',
      optional: true,
      hint: 'How well its water is known. Empty: a twentieth of it.',
    },
  ];
}

/** What the API calls the fields of a row. */
export const pointUnder: Record<string, string> = { received: 'waterFraction', dry: 'waterFraction' };

type Values = Record<string, string | number | boolean>;
const number = (value: Values[string] | undefined): number | null => (typeof value === 'number' ? value : null);

function pointOf(values: Values): WeighedInput {
  const isOther = values['salt'] === otherAir;
  const temperatureC = number(values['temperatureC']) ?? 0;
  const driedAtC = number(values['driedAtC']);
  const sdPercent = number(values['sdPercent']);
  const air = isOther ? { humidityPercent: number(values['humidityPercent']) } : { salt: String(values['salt']) };
  const common = { ...air, temperatureC, driedAtC, sdPercent };
  if (values['way'] === 'masses') {
    const tareGrams = number(values['tareGrams']);
    return {
      ...common,
      tareGrams,
      beforeGrams: number(values['beforeGrams']),
      afterGrams: number(values['afterGrams']),
    };
  }
  const basis = values['way'] === 'dry' ? 'DRY' : 'AS_RECEIVED';
  return { ...common, basis, waterFraction: number(values[basis === 'DRY' ? 'dry' : 'received']) };
}

export interface Rows {
  rows: Typed[];
  fromClass: string;
  by: string;
}

/** The samples as the API takes them, or what is still missing, by row. */
export function readRows(
  { rows, fromClass, by }: Rows,
  sorbent: string,
): { input: FitInput | null; wrong: Record<string, string>[] } {
  const fields = pointFields([]);
  const read = rows.map((row) => readFields(fields, row, () => null));
  const wrong = read.map((one) => one.wrong);
  if (wrong.some((one) => Object.keys(one).length > 0)) return { input: null, wrong };
  const points = read.map(({ values }) => pointOf(values));
  return { input: { sorbent, points, fromClass: fromClass || null, by: by || null }, wrong };
}

/** "input.points.1.afterGrams" is about the second row's field `afterGrams`. */
export function placeOf(path: string, rows: readonly Typed[]): { row: number; field: string } | null {
  const [, at, name] = /^input\.points\.(\d+)\.(\w+)$/.exec(path) ?? [];
  const row = rows[Number(at)];
  if (at === undefined || name === undefined || !row) return null;
  return { row: Number(at), field: name === 'waterFraction' ? (row['way'] ?? 'dry') : name };
}
