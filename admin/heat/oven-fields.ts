// The form of an oven: its fields, what stands in them now, its hours, and what the API takes of what was typed.
import type { Choice, FieldSpec, Typed } from '../act/field.ts';
import { daysWords, hoursRead, hoursWords } from './hours-read.ts';
import type { Oven } from './questions.ts';

const vacuumOnly = { field: 'kind', is: 'VACUUM' };
const airOnly = { field: 'kind', is: 'AIR' };
const ownHours = { field: 'when', is: 'own' };

const spans: readonly Choice[] = [
  { value: '1,2,3,4,5', words: 'Monday to Friday' },
  { value: '1,2,3,4,5,6', words: 'Monday to Saturday' },
  { value: '1,2,3,4,5,6,7', words: 'every day' },
];

/** Its hours as one span, for the form; null where there are several. */
function oneSpan({ hours }: Pick<Oven, 'hours'>): { days: string; from: string; to: string } | null {
  const [only, ...more] = hours;
  if (!only || more.length > 0) return null;
  return { days: [...only.days].sort((a, b) => a - b).join(','), from: only.from, to: only.to };
}

export function ovenFields(rooms: readonly Choice[], oven: Oven | null): FieldSpec[] {
  const span = oven === null ? null : oneSpan(oven);
  const days = span && !spans.some(({ value }) => value === span.days);
  const chosen = days ? [{ value: span.days, words: daysWords(span.days.split(',').map(Number)) }] : [];
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
    {
      name: 'pumpM3PerH',
      label: 'Its pump takes',
      kind: 'number',
      unit: 'm³/h',
      optional: true,
      hint: 'Empty: as much as the trays give off.',
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
        { value: 'own', words: 'in hours of its own' },
        { value: 'several', words: 'in several spans' },
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
    {
      name: 'spans',
      label: 'When',
      kind: 'text',
      initial: 'Mon to Fri 07:00 to 12:00, 13:00 to 18:00',
      hint: 'Other days after a semicolon: Mon to Fri 07:00 to 12:00, 13:00 to 18:00; Sat 08:00 to 12:00.',
      wide: true,
      when: { field: 'when', is: 'several' },
      check: (text) => {
        const read = hoursRead(text);
        return typeof read === 'string' ? read : null;
      },
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
    pumpM3PerH: oven.pumpM3PerH === null ? '' : String(oven.pumpM3PerH),
    when: !oven.hasOwnHours ? 'lab' : span === null ? 'several' : 'own',
    ...(span ?? {}),
    spans: hoursWords(oven.hours),
  };
}

type Values = Record<string, string | number | boolean | null>;

/** What the API takes of the form. */
export function ovenInput(values: Values): Record<string, unknown> {
  const { when, days, from, to, spans: said, attended, hasFan, ...rest } = values;
  const read = when === 'several' ? hoursRead(String(said)) : [];
  const hours =
    when === 'own'
      ? { hours: [{ days: String(days).split(',').map(Number), from: String(from), to: String(to) }] }
      : when === 'several' && typeof read !== 'string'
        ? { hours: read }
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
