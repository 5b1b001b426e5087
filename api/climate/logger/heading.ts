/** Where in a sheet the names of its columns stand. */
import { lookOf } from './cell.ts';
import { isTimeWord, meaningOf } from './quantity.ts';
import type { Unit } from './file.ts';
import { unitOf } from './unit.ts';

export type Heading = {
  /** Names by column; empty where there is none. */
  names: string[];
  units: (Unit | null)[];
  /** A second, wider row of names above, filled to the right: the sensors of a side-by-side sheet. */
  groups: string[];
};

export const NO_HEADING: Heading = { names: [], units: [], groups: [] };

/** How many cells speak of a time, a quantity or a unit; 0 for a row that holds readings. */
export function headingScore(cells: readonly string[]): number {
  let score = 0;
  for (const cell of cells) {
    if (cell === '') continue;
    const code = cell.charCodeAt(0);
    // A heading never begins with a digit; nearly every reading does, so this is quick.
    if (code >= 48 && code <= 57) return 0;
    const text = uncommented(cell);
    const look = lookOf(text);
    if (look !== 'text' && unitOf(text) === null && look !== 'none') return 0;
    if (isTimeWord(text) || meaningOf(text).quantity !== null || unitOf(text) !== null) score++;
  }
  return score;
}

/** The heading among rows that precede the first reading; `timeColumn` and `width` are those of the readings. */
export function headingAbove(rows: readonly string[][], width: number, timeColumn: number): Heading {
  let units: (Unit | null)[] = [];
  for (let index = rows.length - 1; index >= 0; index--) {
    const row = (rows[index] ?? []).map(uncommented);
    const filled = row.filter((cell) => cell !== '').length;
    if (filled === 0) continue;
    if (units.length === 0 && isUnitsRow(row)) {
      units = row.map(unitOf);
      continue;
    }
    const adjacent = index === rows.length - 1 || units.length > 0;
    if (
      (filled >= 2 && headingScore(row) >= (adjacent ? 1 : 2)) ||
      (adjacent && namesNumbers(row, width, timeColumn))
    ) {
      return { names: aligned(row, width, timeColumn), units, groups: groupsAbove(rows[index - 1], row) };
    }
    const commented = namesInComment(row, width);
    if (commented) return { names: aligned(commented, width, timeColumn), units, groups: [] };
  }
  return { names: namesByNumber(rows), units, groups: [] };
}

/** Sensors named by their serial numbers make a heading of numbers beside the word for time. */
function namesNumbers(row: readonly string[], width: number, timeColumn: number): boolean {
  return (
    row.length === width &&
    timeColumn >= 0 &&
    isTimeWord(row[timeColumn] ?? '') &&
    row.every((cell) => lookOf(cell) !== 'stamp')
  );
}

/** Units, blanks and patterns of a date; at least one unit. */
function isUnitsRow(row: readonly string[]): boolean {
  const units = row.filter((cell) => unitOf(cell) !== null).length;
  return (
    units > 0 &&
    row.every(
      (cell) =>
        cell === '' ||
        unitOf(cell) !== null ||
        /^[-–\s]*$|^[([]?[ymdhs:/.\- tjap]+[)\]]?$|^utc|^(?:h?pa|mbar|v|mv|ppm|lux|lx|g\/m.)$/i.test(cell),
    ) &&
    !row.some((cell) => isTimeWord(cell) && !/^utc/i.test(cell))
  );
}

/** Names that fit the columns in a comment of another separator: `# time temp_C rh_pct`, `# columns: time, T, RH`. */
function namesInComment(row: readonly string[], width: number): string[] | null {
  const text = row
    .filter((cell) => cell !== '')
    .join(' ')
    .replace(/^\s*(?:columns?|fields?|format|header|spalten)\s*[:=]\s*/i, '');
  for (const separator of [/\s*,\s*/, /\s*;\s*/, /\t+/, /\s*\|\s*/, /\s{2,}/, /\s+/]) {
    const names = text.split(separator).map((name) => name.trim());
    if (names.length === width && headingScore(names) >= Math.min(2, width)) return names;
  }
  return null;
}

/** `# column 2: temperature in °C`, one line a column. */
function namesByNumber(rows: readonly string[][]): string[] {
  const names: string[] = [];
  for (const row of rows) {
    const text = row
      .map(uncommented)
      .filter((cell) => cell !== '')
      .join(' ');
    const line = /^(?:column|col\.?|spalte|field)\s*(\d{1,3})\s*[:=.-]?\s*(.+)$/i.exec(text);
    if (line) names[+(line[1] ?? '') - 1] = line[2] ?? '';
  }
  return Array.from(names, (name) => name ?? '');
}

/** A heading one short of the readings: the row number has no name, or date and time share one. */
function aligned(written: string[], width: number, timeColumn: number): string[] {
  let names = written.map((name) => name.replace(/\s+/g, ' '));
  while (names.length > width && names.at(-1) === '') names = names.slice(0, -1);
  if (names.length !== width - 1 || timeColumn < 0) return names;
  const saidAt = names.findIndex((name) => isTimeWord(name));
  if (saidAt >= 0 && saidAt === timeColumn - 1) return ['', ...names];
  if (saidAt === timeColumn && !isTimeWord(names[timeColumn + 1] ?? ''))
    return [...names.slice(0, saidAt + 1), '', ...names.slice(saidAt + 1)];
  return names;
}

function groupsAbove(above: readonly string[] | undefined, names: readonly string[]): string[] {
  const repeated = new Set(names).size < names.filter((name) => name !== '').length;
  const filled = above?.filter((cell) => cell !== '') ?? [];
  if (!above || !repeated || filled.length === 0 || above.length < 3) return [];
  let group = '';
  return names.map((_, column) => (group = uncommented(above[column] ?? '') || group));
}

export function uncommented(cell: string): string {
  return cell.replace(/^\s*(?:#+|%%?(?=\s)|\/\/+|\*+(?=\s)|!+|--+(?=\s))\s*/, '');
}
