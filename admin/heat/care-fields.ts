// What is looked after on an oven and on a hygrometer: the forms, and what the API takes of them.
import type { Choice, FieldSpec } from '../act/field.ts';
import type { Oven, Ovens } from './questions.ts';
import type { CareKind } from './words.ts';

export const careWord: Record<CareKind, string> = {
  TRUE_TEMPERATURE: 'true temperature measured',
  VACUUM_GAUGE: 'vacuum gauge checked',
  PUMP_OIL: 'pump oil changed',
  COLD_TRAP: 'cold trap emptied',
  BAKE_OUT: 'baked out empty',
  OUT_OF_ORDER: 'out of order',
  HYGROMETER: 'hygrometer checked over a salt',
};

const pumped: readonly CareKind[] = ['VACUUM_GAUGE', 'PUMP_OIL', 'COLD_TRAP'];

/** What can be noted of an oven: one without a pump has neither oil nor trap. */
export const careKindsOf = (kind: Oven['kind']): CareKind[] =>
  (Object.keys(careWord) as CareKind[]).filter(
    (one) => one !== 'HYGROMETER' && (kind === 'VACUUM' || !pumped.includes(one)),
  );

/** The form; out of order is asked by its own button, with from and to. */
export function careFields(kind: CareKind): FieldSpec[] {
  const note: FieldSpec = { name: 'note', label: 'Note', kind: 'text', optional: true };
  const at: FieldSpec = { name: 'at', label: 'When', kind: 'time', optional: true, hint: 'Empty: now.' };
  if (kind === 'TRUE_TEMPERATURE')
    return [
      { name: 'setValue', label: 'Set to', kind: 'number', unit: '°C' },
      {
        name: 'foundValue',
        label: 'Truly',
        kind: 'number',
        unit: '°C',
        hint: 'On a thermometer of its own, on the shelf.',
      },
      at,
      note,
    ];
  if (kind === 'VACUUM_GAUGE')
    return [
      { name: 'setValue', label: 'Its gauge showed', kind: 'number', unit: 'mbar' },
      { name: 'foundValue', label: 'The other gauge showed', kind: 'number', unit: 'mbar' },
      at,
      note,
    ];
  if (kind === 'OUT_OF_ORDER' || kind === 'BAKE_OUT')
    return [
      { name: 'at', label: 'From', kind: 'time', optional: true, hint: 'Empty: now.' },
      { name: 'until', label: 'To', kind: 'time', optional: true, hint: 'Empty: nobody knows yet.' },
      { ...note, label: 'Why' },
    ];
  return [at, note];
}

/** A sensor as a choice: its room and its name. */
const sensorKey = (room: string, sensor: string): string => `${room}\u0000${sensor}`;

export const sensorsOf = ({ rooms }: Pick<Ovens, 'rooms'>): Choice[] =>
  rooms.nodes.flatMap(({ name: room, sensors }) =>
    sensors.map(({ name }) => ({ value: sensorKey(room, name), words: `${name}, ${room}` })),
  );

export const hygrometerFields = (of: Ovens): FieldSpec[] => [
  { name: 'sensor', label: 'Which one', kind: 'choice', choices: sensorsOf(of) },
  {
    name: 'salt',
    label: 'Over saturated',
    kind: 'choice',
    choices: of.salts.map(({ name }) => ({ value: name, words: name })),
    initial: 'sodium chloride',
  },
  { name: 'foundValue', label: 'It showed', kind: 'number', unit: '% RH' },
  { name: 'temperatureC', label: 'At', kind: 'number', unit: '°C', optional: true, hint: 'Empty: 25.' },
  { name: 'at', label: 'When', kind: 'time', optional: true, hint: 'Empty: now.' },
];

/** The choice of a sensor taken apart again. */
export function sensorSaid(choice: string): { room: string; sensor: string } {
  const [room = '', sensor = ''] = choice.split('\u0000');
  return { room, sensor };
}

/** The checks of all hygrometers, newest first. */
export const checksOf = ({ rooms }: Pick<Ovens, 'rooms'>) =>
  rooms.nodes
    .flatMap(({ name: room, sensors }) =>
      sensors.flatMap(({ name, checks }) => checks.map((check) => ({ ...check, of: `${name}, ${room}` }))),
    )
    .sort((a, b) => Date.parse(b.at) - Date.parse(a.at));
