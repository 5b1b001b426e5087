// The form of a lot check: what is asked once for all plates, and rows of plates typed one by one. Pure.
import { readFields, type FieldSpec, type Typed } from '../act/field.ts';
import { typedNumber } from '../say/water.ts';
import type { OfSorbent } from './questions.ts';

/** The two newest lots of a sorbent, the older one as the one that is known. */
export function lotsOf(sorbent: OfSorbent | undefined): { oldLot: string; newLot: string } {
  const lots = [...(sorbent?.lots ?? [])].sort((one, other) => (one.receivedAt < other.receivedAt ? -1 : 1));
  const usable = lots.filter(({ standing }) => standing !== 'REJECTED');
  const newest = lots.at(-1)?.lotNumber ?? '';
  const known = usable.findLast(({ lotNumber }) => lotNumber !== newest);
  return { oldLot: known?.lotNumber ?? lots.at(-2)?.lotNumber ?? '', newLot: newest };
}

/** What a new check begins with: a lot that nobody has checked, against the one before it. */
export function firstOf(sorbents: readonly OfSorbent[]): { sorbent: string; oldLot: string; newLot: string } {
  const many = sorbents.filter(({ lots }) => lots.length > 1);
  const open = many.find(({ lots }) => lots.some(({ standing }) => standing === 'UNCHECKED')) ?? many[0];
  return { sorbent: open?.name ?? '', ...lotsOf(open) };
}

/** How all plates were run; each may stay empty. */
export const conditionFields = (rooms: readonly { value: string; words: string }[]): FieldSpec[] => [
  { name: 'at', label: 'Run at', kind: 'time', optional: true, hint: 'Now, when empty' },
  {
    name: 'chamber',
    label: 'Chamber',
    kind: 'choice',
    optional: true,
    choices: [
      { value: 'TWIN_TROUGH', words: 'twin trough' },
      { value: 'FLAT_BOTTOM', words: 'flat bottom' },
      { value: 'SANDWICH', words: 'sandwich' },
      { value: 'AUTOMATIC', words: 'automatic' },
      { value: 'JAR', words: 'jar' },
    ],
  },
  { name: 'isLined', label: 'Lined with paper', kind: 'tick', optional: true },
  { name: 'saturationMinutes', label: 'Saturated for', kind: 'number', unit: 'min', optional: true },
  { name: 'eluent', label: 'Eluent', kind: 'text', optional: true },
  { name: 'eluentBatch', label: 'Its batch', kind: 'text', optional: true },
  { name: 'stabiliser', label: 'Its stabiliser', kind: 'text', optional: true },
  { name: 'distanceMm', label: 'Distance run', kind: 'number', unit: 'mm', optional: true },
  { name: 'room', label: 'Room', kind: 'choice', optional: true, choices: rooms, hint: 'Its air is filled in' },
  { name: 'temperatureC', label: 'Temperature', kind: 'number', unit: '°C', optional: true },
  { name: 'humidityPercent', label: 'Humidity', kind: 'number', unit: '% RH', optional: true },
];

export interface PlateRow {
  lot: 'old' | 'new';
  tank: string;
  values: string[];
}

export interface CheckTyped {
  sorbent: string;
  oldLot: string;
  newLot: string;
  retention: string;
  compounds: string;
  way: 'typed' | 'table';
  rows: PlateRow[];
  table: string;
  conditions: Typed;
}

/** Pairs of one tank after another: old, new, old, new. */
export const nextRow = (rows: readonly PlateRow[]): PlateRow => {
  const last = rows.at(-1);
  const tank = last === undefined ? 1 : Number.parseInt(last.tank, 10) || 1;
  const isNew = last?.lot === 'old';
  return { lot: isNew ? 'new' : 'old', tank: String(isNew || !last ? tank : tank + 1), values: [] };
};

export const emptyCheck: CheckTyped = {
  sorbent: '',
  oldLot: '',
  newLot: '',
  retention: 'RF',
  compounds: '',
  way: 'typed',
  rows: [0, 1, 2, 3, 4, 5].map((i) => ({ lot: i % 2 ? 'new' : 'old', tank: String(1 + (i >> 1)), values: [] })),
  table: '',
  conditions: {},
};

export const compoundsIn = (text: string): string[] => [
  ...new Set(
    text
      .split(/[,;\n]/)
      .map((name) => name.trim())
      .filter(Boolean),
  ),
];

export interface CheckRead {
  input: Record<string, unknown>;
  wrong: Record<string, string>;
}

/** The plates that were typed; a row without any value is no plate. */
function runsIn({ rows, compounds, retention }: CheckTyped): { runs: unknown[]; wrong: Record<string, string> } {
  const names = compoundsIn(compounds);
  const wrong: Record<string, string> = {};
  if (names.length === 0) wrong['compounds'] = 'one compound or more, such as Sudan red, Sudan yellow';
  const runs = rows.flatMap(({ lot, tank, values }, r) => {
    const spots = names.flatMap((compound, c) => {
      const text = (values[c] ?? '').trim();
      if (text === '') return [];
      const value = typedNumber(text);
      const isRight = value !== null && value >= 0 && (retention !== 'RF' || value <= 1);
      if (!isRight) wrong[`${r}.${c}`] = retention === 'RF' ? 'an Rf from 0 to 1' : 'a number, 0 or more';
      return isRight ? [{ compound, value }] : [];
    });
    return spots.length === 0 ? [] : [{ lotNumber: lot, tank: tank.trim() || '1', spots }];
  });
  if (names.length > 0 && runs.length === 0 && Object.keys(wrong).length === 0) wrong['0.0'] = 'what was read';
  return { runs, wrong };
}

export function checkIn(
  typed: CheckTyped,
  fields: readonly FieldSpec[],
  toInstant: (text: string) => Date | null,
  check: string | null,
): CheckRead {
  const { values, wrong } = readFields(fields, typed.conditions, toInstant);
  if (!check && typed.sorbent === '') wrong['sorbent'] = 'which sorbent or plates';
  if (!check && typed.oldLot === typed.newLot) wrong['newLot'] = 'another lot than the old one';
  const which = check
    ? { check }
    : {
        sorbent: typed.sorbent,
        oldLotNumber: typed.oldLot,
        newLotNumber: typed.newLot,
        retention: typed.retention,
      };
  if (typed.way === 'table') {
    if (typed.table.trim() === '') wrong['table'] = 'a table';
    return { input: { ...which, ...values, table: typed.table }, wrong };
  }
  const { runs, wrong: inRows } = runsIn(typed);
  return { input: { ...which, ...values, runs }, wrong: { ...wrong, ...inRows } };
}
