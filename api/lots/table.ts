// Runs from a pasted table or a CSV file: a row a plate, a column a compound. Every problem is told by its line.
import { parse } from 'csv-parse/sync';
import { DateTime } from 'luxon';
import { Refused, type Problem } from '../errors.ts';
import { mostRuns, runSaid, type Retention, type RunSaid } from './said.ts';
import { spotRead } from './spots.ts';

type Field = Exclude<keyof RunSaid, 'spots'> | 'frontMm' | 'waterPercent';

/** Headings as people write them, without marks and case. */
const headings: Readonly<Record<string, Field>> = {
  lot: 'lotNumber',
  lotnumber: 'lotNumber',
  container: 'label',
  label: 'label',
  code: 'label',
  at: 'at',
  day: 'at',
  date: 'at',
  time: 'at',
  when: 'at',
  tank: 'tank',
  plate: 'plate',
  column: 'plate',
  box: 'box',
  by: 'by',
  who: 'by',
  user: 'by',
  person: 'by',
  chamber: 'chamber',
  lined: 'isLined',
  saturationmin: 'saturationMinutes',
  saturationminutes: 'saturationMinutes',
  saturation: 'saturationMinutes',
  eluent: 'eluent',
  eluentbatch: 'eluentBatch',
  batch: 'eluentBatch',
  stabiliser: 'stabiliser',
  stabilizer: 'stabiliser',
  temperaturec: 'temperatureC',
  temperature: 'temperatureC',
  distancemm: 'distanceMm',
  distance: 'distanceMm',
  humidity: 'humidityPercent',
  humiditypercent: 'humidityPercent',
  rh: 'humidityPercent',
  room: 'room',
  regime: 'regime',
  waterpercent: 'waterPercent',
  water: 'waterPercent',
  waterfraction: 'waterFraction',
  frontmm: 'frontMm',
  front: 'frontMm',
  note: 'note',
};
const numbers: ReadonlySet<Field> = new Set<Field>([
  'saturationMinutes',
  'temperatureC',
  'distanceMm',
  'humidityPercent',
  'waterPercent',
  'waterFraction',
  'frontMm',
]);

const plain = (heading: string): string => heading.toLowerCase().replace(/[^\p{L}\d]/gu, '');

interface Column {
  readonly heading: string;
  readonly field: Field | null;
  /** Of a compound: whether how far it ran is given instead of its Rf. */
  readonly isDistance: boolean;
  readonly compound: string;
}

function columnOf(heading: string): Column {
  const field = headings[plain(heading)] ?? null;
  const distance = /^(.*?)[\s_]*\(?mm\)?$/i.exec(heading.trim());
  const rf = /^(?:Rf|k)\s+(.*)$|^(.*?)[\s_]+\(?(?:Rf|k)\)?$/i.exec(heading.trim());
  const compound = (distance?.[1] ?? rf?.[1] ?? rf?.[2] ?? heading).trim();
  return { heading, field, isDistance: distance !== null, compound };
}

const numberIn = (cell: string): number => Number(cell.replace(',', '.').replace(/\s*%$/, ''));

interface Row {
  line: number;
  cells: string[];
}

/** Where the only lines are those of a spreadsheet, tabs; else what the first line has. */
function rowsOf(text: string): Row[] {
  const first = text.replace(/^\s+/, '').split('\n', 1)[0] ?? '';
  const delimiter = ['\t', ';', ','].find((sign) => first.includes(sign)) ?? '\t';
  const lines = parse(text, {
    ...{ bom: true, delimiter, trim: true, info: true, relax_column_count: true, relax_quotes: true },
    skip_empty_lines: true,
  }) as unknown as { record: string[]; info: { lines: number } }[];
  return lines.map(({ record, info }) => ({ line: info.lines, cells: record }));
}

const isYes = (cell: string): boolean => /^(yes|y|true|1|x)$/i.test(cell);

/** A time on the lab's clock, such as 2026-03-02 09:30; a day alone is its noon. */
function instantIn(cell: string, timeZone: string): Date | null {
  const read = DateTime.fromISO(cell.trim().replace(' ', 'T'), { zone: timeZone });
  if (!read.isValid) return null;
  return (/^\d{4}-\d{2}-\d{2}$/.test(cell.trim()) ? read.set({ hour: 12 }) : read).toJSDate();
}

/** A cell as the field takes it; what cannot be read is left as it is, and refused as such. */
function typed(field: Field, cell: string, timeZone: string): unknown {
  if (numbers.has(field)) return Number.isFinite(numberIn(cell)) ? numberIn(cell) : cell;
  if (field === 'isLined') return isYes(cell);
  if (field === 'at') return instantIn(cell, timeZone) ?? cell;
  if (field === 'chamber' || field === 'regime')
    return cell
      .trim()
      .toUpperCase()
      .replace(/[\s-]+/g, '_');
  return cell;
}

export interface TableRun extends RunSaid {
  line: number;
}

/** The runs of a table; refuses it whole with all that is wrong, line by line. */
export function tableRead(text: string, retention: Retention, timeZone: string): TableRun[] {
  const [head, ...rows] = parsedRows(text);
  const columns = (head?.cells ?? []).map(columnOf);
  const problems: Problem[] = [];
  const runs = rows.flatMap((row) => runIn(row, columns, { retention, timeZone, problems }));
  if (!columns.some(({ field, heading }) => field === null && heading !== ''))
    throw refusedTable([problem(head?.line ?? 1, null, head?.cells.join(' ') ?? '', 'no compound', needed)]);
  if (rows.length === 0) problems.push(problem(2, null, '', 'no row below the headings', 'a row for each plate'));
  if (rows.length > mostRuns)
    problems.push(problem(null, null, String(rows.length), 'too many rows', `at most ${mostRuns} at once`));
  if (problems.length > 0) throw refusedTable(problems);
  return merged(runs);
}

const needed = 'a first line of headings: lot, tank, plate, and a column for each compound';

function parsedRows(text: string): Row[] {
  try {
    return rowsOf(text);
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    throw refusedTable([problem(1, null, '', message, 'rows of cells with tabs, semicolons or commas between them')]);
  }
}

const problem = (
  line: number | null,
  column: string | null,
  value: string,
  message: string,
  expected: string,
): Problem => ({ line, column, value, message, expected });

function refusedTable(problems: readonly Problem[]): Refused {
  const [first] = problems;
  const where = first?.line == null ? '' : `line ${first.line}${first.column ? `, ${first.column}` : ''}: `;
  const words = `${where}${first?.message ?? 'it cannot be read'}`;
  return new Refused(`invalid input.table: ${words}, ${first?.expected ?? ''}`, 'input.table', first?.expected ?? '', [
    ...problems,
  ]);
}

interface Reading {
  readonly retention: Retention;
  readonly timeZone: string;
  readonly problems: Problem[];
}

function runIn({ line, cells }: Row, columns: readonly Column[], reading: Reading): TableRun[] {
  const { retention, timeZone, problems } = reading;
  if (cells.every((cell) => cell === '')) return [];
  const raw: Record<string, unknown> = {};
  const spots: unknown[] = [];
  const before = problems.length;
  const frontAt = columns.findIndex(({ field }) => field === 'frontMm');
  const frontCell = cells[frontAt] ?? '';
  const frontMm = frontAt >= 0 && frontCell !== '' ? numberIn(frontCell) : undefined;
  columns.forEach(({ field, heading, compound, isDistance }, i) => {
    const cell = cells[i] ?? '';
    if (cell === '' || heading === '' || field === 'frontMm') return;
    if (field === 'waterPercent') raw['waterFraction'] = numberIn(cell) / 100;
    else if (field !== null) raw[field] = typed(field, cell, timeZone);
    else {
      const value = numberIn(cell);
      const spot = isDistance ? { compound, spotMm: value, frontMm } : { compound, value, frontMm };
      if (!Number.isFinite(value)) problems.push(problem(line, heading, cell, `${cell} is no number`, 'a number'));
      else {
        const wrong = refusalOf(() => spotRead(spot, retention, 'spot'));
        if (wrong) problems.push(problem(line, heading, cell, `${cell} cannot be`, wrong.expected));
        else spots.push(spot);
      }
    }
  });
  if (problems.length > before) return [];
  const read = runSaid.safeParse({ ...raw, spots });
  if (read.success) return [{ ...read.data, line }];
  const [issue] = read.error.issues;
  const key = issue?.path[0];
  const column = columns.find(({ field }) => field === key || (key === 'waterFraction' && field === 'waterPercent'));
  const value = column ? (cells[columns.indexOf(column)] ?? '') : '';
  const message = key === 'spots' ? 'no value of any compound' : `${value || 'nothing'} cannot be`;
  problems.push(problem(line, column?.heading ?? null, value, message, issue?.message ?? 'something else'));
  return [];
}

function refusalOf(act: () => unknown): Refused | null {
  try {
    act();
    return null;
  } catch (error) {
    if (error instanceof Refused) return error;
    throw error;
  }
}

/** Rows of one plate (the same mark, lot and tank) are its several spots. */
function merged(runs: readonly TableRun[]): TableRun[] {
  const plates = new Map<string, TableRun>();
  return runs.filter((run) => {
    const key = JSON.stringify([run.plate, run.lotNumber, run.tank, run.at]);
    const first = run.plate ? plates.get(key) : undefined;
    if (first) first.spots.push(...run.spots);
    else plates.set(key, run);
    return !first;
  });
}
