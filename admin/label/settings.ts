// How labels are printed on this machine, as typed and kept, and the sheet that it comes to.
import type { FieldSpec, Typed } from '../act/field.ts';
import { typedNumber } from '../say/water.ts';
import { presets, sheetWords, wrongIn, type Sheet } from './sheet.ts';
import { symbologies } from './symbol.ts';

export const ownMeasures = 'own';

export const sheetField: FieldSpec = {
  name: 'sheet',
  label: 'Sheet or roll',
  kind: 'choice',
  choices: [
    ...presets.map((sheet, i) => ({ value: String(i), words: sheetWords(sheet) })),
    { value: ownMeasures, words: 'other measures …' },
  ],
};

const mm = (name: keyof Sheet, label: string, initial: string): FieldSpec => {
  return { name, label, kind: 'number', unit: 'mm', initial };
};

export const pageField: FieldSpec = {
  name: 'page',
  label: 'Page',
  kind: 'choice',
  choices: [
    { value: 'A4', words: 'A4' },
    { value: 'LETTER', words: 'Letter' },
    { value: 'ROLL', words: 'roll, a label at a time' },
  ],
};

export const sizeFields: readonly FieldSpec[] = [
  mm('labelWidthMm', 'Label, width', '70'),
  mm('labelHeightMm', 'Label, height', '36'),
];

export const gridFields: readonly FieldSpec[] = [
  { name: 'columns', label: 'Labels across', kind: 'number', initial: '3' },
  { name: 'rows', label: 'Labels down', kind: 'number', initial: '8' },
  mm('leftMm', 'Margin left', '0'),
  mm('topMm', 'Margin top', '4.5'),
  mm('gapXMm', 'Gap across', '0'),
  mm('gapYMm', 'Gap down', '0'),
];

export const symbolField: FieldSpec = { name: 'symbology', label: 'Symbol', kind: 'choice', choices: symbologies };
export const copiesField: FieldSpec = { name: 'copies', label: 'Copies of each', kind: 'number', initial: '1' };
export const startField: FieldSpec = {
  name: 'start',
  label: 'Begin at label',
  kind: 'number',
  initial: '1',
  hint: 'Or tap it on the sheet below.',
};

export const allFields: readonly FieldSpec[] = [
  { ...sheetField, initial: '0' },
  { ...pageField, initial: 'A4' },
  ...sizeFields,
  ...gridFields,
  { ...symbolField, initial: 'datamatrix' },
  copiesField,
  startField,
];

export interface SheetRead {
  sheet: Sheet | null;
  wrong: Record<string, string>;
}

/** The sheet that was chosen or measured; null with what would be right where that cannot be. */
export function sheetOf(typed: Typed): SheetRead {
  const chosen = presets[Number(typed['sheet'] ?? 0)];
  if (typed['sheet'] !== ownMeasures) return { sheet: chosen ?? presets[0] ?? null, wrong: {} };
  const wrong: Record<string, string> = {};
  const page = typed['page'];
  const read = (name: string): number => {
    const value = typedNumber(typed[name] ?? '');
    if (value === null) wrong[name] = 'a number such as 38.1';
    return value ?? 0;
  };
  const [labelWidthMm, labelHeightMm] = [read('labelWidthMm'), read('labelHeightMm')];
  const onRoll = { columns: 1, rows: 1, leftMm: 0, topMm: 0, gapXMm: 0, gapYMm: 0 };
  const grid =
    page === 'ROLL'
      ? onRoll
      : {
          columns: read('columns'),
          rows: read('rows'),
          leftMm: read('leftMm'),
          topMm: read('topMm'),
          gapXMm: read('gapXMm'),
          gapYMm: read('gapYMm'),
        };
  const sheet: Sheet = {
    page: page === 'LETTER' || page === 'ROLL' ? page : 'A4',
    labelWidthMm,
    labelHeightMm,
    ...grid,
  };
  const all = { ...wrongIn(sheet), ...wrong };
  return Object.keys(all).length > 0 ? { sheet: null, wrong: all } : { sheet, wrong: {} };
}

/** A count that was typed, from 1 to the most; null when it is none. */
export function countOf(text: string | undefined, most: number): number | null {
  const value = typedNumber(text ?? '');
  return value !== null && Number.isInteger(value) && value >= 1 && value <= most ? value : null;
}
