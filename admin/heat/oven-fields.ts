// The form of an oven: its fields, what stands in them now, its hours, and what the API takes of what was typed.
import type { Choice, FieldSpec, Typed } from '../act/field.ts';
import type { Oven } from './questions.ts';

const vacuumOnly = { field: 'kind', is: 'VACUUM' };
const airOnly = { field: 'kind', is: 'AIR' };
const ownHours = { field: 'when', is: 'own' };

export const weekdays = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;

const spans: readonly Choice[] = [
  { value: '1,2,3,4,5', words: 'Monday to Friday' },
  { value: '1,2,3,4,5,6', words: 'Monday to Saturday' },
  { value: '1,2,3,4,5,6,7', words: 'every day' },
];

/** "Mon to Fri", "Mon, Wed": days in a row of three or more are said by their ends. */
export function daysWords(days: readonly number[]): string {
  const sorted = [...new Set(days)].sort((a, b) => a - b);
  const runs: number[][] = [];
  for (const day of sorted) {
    const last = runs.at(-1);
    if (last && last.at(-1) === day - 1) last.push(day);
    else runs.push([day]);
  }
  const name = (day: number | undefined): string => weekdays[(day ?? 1) - 1] ?? '';
  return runs
    .flatMap((run) => (run.length > 2 ? [`${name(run[0])} to ${name(run.at(-1))}`] : run.map(name)))
    .join(', ');
}

/** "Mon to Fri 07:00 to 19:00; Sat 08:00 to 12:00". */
export const hoursWords = (hours: Oven['hours']): string =>
  hours.map(({ days, from, to }) => `${daysWords(days)} ${from} to ${to}`).join('; ');

/** Its hours as one span, for the form; null where the lab keeps several, which the API alone sets. */
function oneSpan({ hours }: Pick<Oven, 'hours'>): { days: string; from: string; to: string } | null {
  const [only, ...more] = hours;
  if (!only || more.length > 0) return null;
  return { days: [...only.days].sort((a, b) => a - b).join(','), from: only.from, to: only.to };
}

export function ovenFields(rooms: readonly Choice[], oven: Oven | null): FieldSpec[] {
  const span = oven === null ? null : oneSpan(oven);
  const days = span && !spans.some(({ value }) => value === span.days);
  const chosen = days ? [{ value: span.days, words: daysWords(span.days.split(',').map(Number)) }] : [];
  const several =
    oven?.hasOwnHours && span === null ? [{ value: 'stay', words: `as they are: ${hoursWords(oven.hours)}` }] : [];
  return [
    { name: 'name', label: 'Name', kind: 'text', hint: 'As one says it: “vacuum oven”.' },
    {
      name: 'kind',
      label: 'What it is',
      kind: 'choice',
      choices: [
        { value: 'VACUUM', words: 'a vacuum oven' },
        { value: 'AIR', words: 'an oven full of air' },
      ],
    },
    { name: 'room', label: 'Stands in', kind: 'choice', choices: rooms },
    { name: 'shelves', label: 'Shelves', kind: 'number' },
    { name: 'shelfAreaCm2', label: 'One shelf', kind: 'number', unit: 'cm²', hint: '30 by 30 cm: 900.' },
    { name: 'shelfHeightMm', label: 'Free above a shelf', kind: 'number', unit: 'mm' },
    { name: 'lowestC', label: 'Lowest it holds', kind: 'number', unit: '°C', initial: '40' },
    { name: 'highestC', label: 'Highest it holds', kind: 'number', unit: '°C', initial: '200' },
    {
      name: 'heatMinutesPerC',
      label: 'Heats up, per °C',
      kind: 'number',
      unit: 'min',
      optional: true,
      hint: 'Empty: 0.5, so 100 °C take 50 min.',
    },
    {
      name: 'coolMinutesPerC',
      label: 'Cools down, per °C',
      kind: 'number',
      unit: 'min',
      optional: true,
      hint: 'Empty: 1.',
    },
    { name: 'doorMinutes', label: 'To empty it', kind: 'number', unit: 'min', optional: true, hint: 'Empty: 5.' },
    {
      name: 'pressureMbar',
      label: 'Pumps down to',
      kind: 'number',
      unit: 'mbar',
      optional: true,
      hint: 'Empty: 20.',
      when: vacuumOnly,
    },
    { name: 'hasFan', label: 'has a fan', kind: 'tick', optional: true, when: airOnly },
    { name: 'attended', label: 'never runs while nobody is there', kind: 'tick', optional: true },
    {
      name: 'when',
      label: 'Somebody can load it',
      kind: 'choice',
      choices: [
        { value: 'lab', words: 'in the lab’s working hours' },
        ...several,
        { value: 'own', words: 'in hours of its own' },
      ],
    },
    { name: 'days', label: 'On', kind: 'choice', choices: [...spans, ...chosen], when: ownHours },
    { name: 'from', label: 'From', kind: 'text', initial: '07:00', hint: 'Such as 07:00.', when: ownHours },
    {
      name: 'to',
      label: 'To',
      kind: 'text',
      initial: '19:00',
      hint: 'Before “from”: that of the next day.',
      when: ownHours,
    },
  ];
}

const figures = [
  'shelves',
  'shelfAreaCm2',
  'shelfHeightMm',
  'lowestC',
  'highestC',
  'heatMinutesPerC',
  'coolMinutesPerC',
  'doorMinutes',
] as const;

/** What stands in the form of an oven that is there. */
export function ovenTyped(oven: Oven): Typed {
  const span = oneSpan(oven);
  return {
    name: oven.name,
    kind: oven.kind,
    room: oven.room.name,
    ...Object.fromEntries(figures.map((name) => [name, String(oven[name])])),
    pressureMbar: oven.pressureMbar === null ? '' : String(oven.pressureMbar),
    hasFan: oven.hasFan ? 'yes' : '',
    attended: oven.isUnattended ? '' : 'yes',
    when: !oven.hasOwnHours ? 'lab' : span === null ? 'stay' : 'own',
    ...(span ?? {}),
  };
}

type Values = Record<string, string | number | boolean | null>;

/** What the API takes of the form. */
export function ovenInput(values: Values): Record<string, unknown> {
  const { when, days, from, to, attended, hasFan, ...rest } = values;
  const hours =
    when === 'own'
      ? { hours: [{ days: String(days).split(',').map(Number), from: String(from), to: String(to) }] }
      : when === 'lab'
        ? { hours: null }
        : {};
  const fan = rest['kind'] === 'AIR' ? { hasFan: hasFan === true } : {};
  return { ...rest, ...fan, isUnattended: attended !== true, ...hours };
}

/** An oven in one line: "vacuum, 3 shelves of 900 cm², 30 to 200 °C, instrument bay". */
export const ovenWords = ({
  kind,
  shelves,
  shelfAreaCm2,
  lowestC,
  highestC,
  room,
  hasFan,
  isUnattended,
}: Oven): string =>
  [
    kind === 'VACUUM' ? 'vacuum' : hasFan ? 'air, with a fan' : 'air, no fan',
    `${shelves} ${shelves === 1 ? 'shelf' : 'shelves'} of ${shelfAreaCm2}\u00a0cm²`,
    `${lowestC} to ${highestC}\u00a0°C`,
    room.name,
    ...(isUnattended ? [] : ['never runs while nobody is there']),
  ].join(', ');
