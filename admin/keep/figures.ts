// The lab's figures, each group a sentence and a form: what decides a state, the scoop, the air at a mouth, working hours.
import type { FieldSpec, Typed } from '../act/field.ts';
import { percent } from '../say/water.ts';
import type { InputOf } from '../shape.ts';
import type { LabSettings, setLabSettingsAct } from './questions.ts';

type Input = InputOf<typeof setLabSettingsAct.input>;
type Values = Record<string, string | number | boolean | null>;

export interface Group {
  name: string;
  title: string;
  /** What the API calls what belongs to it. */
  keys: readonly (keyof LabSettings)[];
  words: (of: LabSettings) => string;
  fields: readonly FieldSpec[];
  typed: (of: LabSettings) => Typed;
  input: (values: Values) => Input;
}

const days = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** "every day", "Monday to Friday", "Monday, Tuesday and Thursday". */
export function dayWords(of: readonly number[]): string {
  const sorted = [...of].sort((one, other) => one - other);
  const name = (day: number): string => days[day - 1] ?? '';
  if (sorted.length === 7) return 'every day';
  const first = sorted[0] ?? 1;
  const last = sorted.at(-1) ?? first;
  if (sorted.length > 2 && last - first === sorted.length - 1) return `${name(first)} to ${name(last)}`;
  const named = sorted.map(name);
  return named.length < 2 ? (named[0] ?? '') : `${named.slice(0, -1).join(', ')} and ${named.at(-1)}`;
}

const chance = (name: string, label: string, hint?: string): FieldSpec => ({
  name,
  label,
  kind: 'number',
  unit: '%',
  scale: 0.01,
  ...(hint ? { hint } : {}),
});
const plain = (name: string, label: string, unit: string, hint?: string): FieldSpec => ({
  name,
  label,
  kind: 'number',
  unit,
  ...(hint ? { hint } : {}),
});
const text = (value: number): string => String(Number(value.toPrecision(6)));
const number = (value: Values[string] | undefined): number | null => (typeof value === 'number' ? value : null);
const word = (value: Values[string] | undefined): string | null => (typeof value === 'string' ? value : null);
const numbers = (values: Values): Input =>
  Object.fromEntries(Object.entries(values).map(([name, value]) => [name, number(value)]));

export const groups: readonly Group[] = [
  {
    name: 'states',
    title: 'What decides a state',
    keys: ['redryChance', 'useSoonChance', 'useSoonHours', 'tooDryChance'],
    words: ({ redryChance, useSoonChance, useSoonHours, tooDryChance }) =>
      `Redry from a chance of ${percent(redryChance, 0)} that the next scoop is past its upper end; use soon from ${percent(useSoonChance, 0)}, or when it leaves its band within ${text(useSoonHours)} h; too dry from ${percent(tooDryChance, 0)} below its lower end.`,
    fields: [
      chance('redryChance', 'Redry from a chance of'),
      chance('useSoonChance', 'Use soon from a chance of'),
      plain('useSoonHours', 'Use soon within', 'h'),
      chance('tooDryChance', 'Too dry from a chance of'),
    ],
    typed: (of) => ({
      redryChance: text(100 * of.redryChance),
      useSoonChance: text(100 * of.useSoonChance),
      useSoonHours: text(of.useSoonHours),
      tooDryChance: text(100 * of.tooDryChance),
    }),
    input: numbers,
  },
  {
    name: 'scoop',
    title: 'The scoop',
    keys: ['scoopGrams', 'topMm'],
    words: ({ scoopGrams, topMm }) =>
      `States are judged on the next ${text(scoopGrams)} g off the top; the top layer that is told is ${text(topMm)} mm.`,
    fields: [plain('scoopGrams', 'A scoop is', 'g'), plain('topMm', 'Top layer', 'mm')],
    typed: ({ scoopGrams, topMm }) => ({ scoopGrams: text(scoopGrams), topMm: text(topMm) }),
    input: numbers,
  },
  {
    name: 'air',
    title: 'Air at an open mouth',
    keys: ['filmMmPerS', 'pressurePa'],
    words: ({ filmMmPerS, pressurePa }) =>
      `Vapour passes an open mouth at ${text(filmMmPerS)} mm/s (3 in still room air, 8 to 15 in the draught of a hood); air pressure ${text(pressurePa / 100)} hPa.`,
    fields: [
      plain('filmMmPerS', 'At an open mouth', 'mm/s', 'Still room air 3, a hood’s draught 8 to 15.'),
      { ...plain('pressurePa', 'Air pressure', 'hPa'), scale: 100 },
    ],
    typed: ({ filmMmPerS, pressurePa }) => ({ filmMmPerS: text(filmMmPerS), pressurePa: text(pressurePa / 100) }),
    input: numbers,
  },
  {
    name: 'hours',
    title: 'Working hours',
    keys: ['workingFrom', 'workingTo', 'workingDays'],
    words: ({ workingFrom, workingTo, workingDays }) =>
      `Habits (“three times a day, ten minutes”) are spread over ${workingFrom} to ${workingTo}, ${dayWords(workingDays)}.`,
    fields: [
      { name: 'workingFrom', label: 'From', kind: 'text', hint: 'Such as 08:00, on the lab’s clock.' },
      { name: 'workingTo', label: 'To', kind: 'text' },
      ...days.map((label, i): FieldSpec => ({ name: `day${i + 1}`, label, kind: 'tick' })),
    ],
    typed: ({ workingFrom, workingTo, workingDays }) => ({
      workingFrom,
      workingTo,
      ...Object.fromEntries(days.map((_, i) => [`day${i + 1}`, workingDays.includes(i + 1) ? 'yes' : ''])),
    }),
    input: (values) => ({
      workingFrom: word(values['workingFrom']),
      workingTo: word(values['workingTo']),
      workingDays: days.flatMap((_, i) => (values[`day${i + 1}`] === true ? [i + 1] : [])),
    }),
  },
  {
    name: 'desiccant',
    title: 'Desiccants',
    keys: ['desiccantDays'],
    words: ({ desiccantDays }) => `A desiccant is due for renewal ${text(desiccantDays)} days after the last.`,
    fields: [plain('desiccantDays', 'Due after', 'days')],
    typed: ({ desiccantDays }) => ({ desiccantDays: text(desiccantDays) }),
    input: numbers,
  },
  {
    name: 'plates',
    title: 'Prepared plates',
    keys: ['leastHoodHours', 'equilibratedBandPercent'],
    words: ({ leastHoodHours, equilibratedBandPercent }) =>
      `Solvent may be called gone after ${text(leastHoodHours)} h in the hood (common practice: overnight), and no oven takes the plates before. Equilibrated plates are good while the air stays within ${text(equilibratedBandPercent)} % RH of theirs.`,
    fields: [
      plain('leastHoodHours', 'Least in the hood', 'h', 'By time and airflow, never by smell.'),
      plain('equilibratedBandPercent', 'Air may differ by', '% RH'),
    ],
    typed: (of) => ({
      leastHoodHours: text(of.leastHoodHours),
      equilibratedBandPercent: text(of.equilibratedBandPercent),
    }),
    input: numbers,
  },
];

/** None of it is set by the lab: it looks like the default it is. */
export const isDefault = ({ keys }: Group, { own }: LabSettings): boolean => !keys.some((key) => own.includes(key));

/** What puts a group back: what the lab had set stays set, what was a default is one again. */
export function inputBefore({ keys }: Group, before: LabSettings): Input {
  return Object.fromEntries(keys.map((key) => [key, before.own.includes(key) ? before[key] : null]));
}
