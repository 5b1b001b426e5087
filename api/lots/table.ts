// Runs from a pasted table or a CSV file: a row a plate, a column a compound. Every problem is told by its line.
import { Refused, type Problem } from '../errors.ts';
import { cellText, delimitedSheet, isEmptyRow } from '../lists/service.ts';
import { mostRuns, mostSpots, runSaid, type Retention, type RunSaid } from './said.ts';
import { spotRead } from './spots.ts';
import { cellIn, columnOf, daysIn, readingIn, type Column, type Reading } from './table-columns.ts';
import { problem, refusedTable } from './table-refusal.ts';

export interface TableRun extends RunSaid {
  line: number;
}

const needed = 'a first line of headings: lot, tank, plate, and a column for each compound';
const whatIsRead: Record<Retention, string> = {
  RF: 'an Rf from 0 to 1',
  RETENTION_FACTOR: 'k as a number',
  COLUMN_VOLUMES: 'column volumes as a number',
};

interface Row {
  readonly line: number;
  readonly cells: readonly string[];
}

function rowsOf(text: string): Row[] {
  const { rows, lines } = delimitedSheet(text).sheet;
  const all = rows.map((cells, i) => ({ line: lines[i] ?? i + 1, cells: cells.map(cellText) }));
  return all.filter(({ cells }) => !isEmptyRow(cells));
}

/** The runs of a table; refuses it whole with all that is wrong, line by line. */
export function tableRead(
  text: string,
  retention: Retention,
  { timeZone, now }: Pick<Reading, 'timeZone' | 'now'>,
): TableRun[] {
  const [head, ...rows] = rowsOf(text);
  const columns = (head?.cells ?? []).map(columnOf);
  if (!columns.some(({ field, heading }) => field === null && heading !== ''))
    throw refusedTable([problem(head?.line ?? 1, null, head?.cells.join(' ') ?? '', 'no compound', needed)]);
  const problems: Problem[] = [];
  const dated = columns.findIndex(({ field }) => field === 'at');
  const { order, unclear } = daysIn(rows.map(({ cells }) => cells[dated] ?? ''));
  const row = rows.find(({ cells }) => unclear !== null && cells[dated] === unclear);
  if (row && unclear !== null)
    problems.push(
      problem(row.line, columns[dated]?.heading ?? null, unclear, `${unclear} may be two days`, 'such as 2026-03-02'),
    );
  const runs = rows.flatMap((one) => runIn(one, { columns, retention, timeZone, now, order, problems }));
  if (rows.length === 0) problems.push(problem(null, null, '', 'no row below the headings', 'a row for each plate'));
  if (rows.length > mostRuns)
    problems.push(problem(null, null, String(rows.length), `${rows.length} rows are too many`, `at most ${mostRuns}`));
  if (problems.length > 0) throw refusedTable(problems);
  return merged(runs);
}

interface Whole extends Reading {
  readonly columns: readonly Column[];
  readonly retention: Retention;
  readonly problems: Problem[];
}

interface Front {
  readonly heading: string;
  readonly cell: string;
  readonly frontMm: number | undefined;
}

/** How far the front ran, once a row; what is no number there is a problem of its own. */
function frontIn({ line, cells }: Row, whole: Whole): Front | null {
  const at = whole.columns.findIndex(({ field }) => field === 'frontMm');
  const [heading, cell] = [whole.columns[at]?.heading ?? 'front mm', cells[at] ?? ''];
  if (cell === '') return { heading, cell, frontMm: undefined };
  const read = cellIn('frontMm', cell, whole);
  if ('value' in read) return { heading, cell, frontMm: Number(read.value) };
  whole.problems.push(problem(line, heading, cell, `${cell} is no number`, 'how far the front ran, mm'));
  return null;
}

/** The spot of a cell; null where it cannot be, which is told. */
function spotIn(line: number, column: Column, cell: string, front: Front, { retention, problems }: Whole): unknown {
  const { heading, compound, isDistance } = column;
  const value = readingIn(cell, column);
  const wrong = (at: string, of: string, message: string, expected: string): null => {
    problems.push(problem(line, at, of, message, expected));
    return null;
  };
  if (value === null)
    return wrong(heading, cell, `${cell} is no number`, isDistance ? 'how far it ran, mm' : whatIsRead[retention]);
  const { frontMm } = front;
  const spot = isDistance ? { compound, spotMm: value, frontMm } : { compound, value, frontMm };
  try {
    spotRead(spot, retention, 'spot');
    return spot;
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    if (error.path !== 'spot.frontMm') return wrong(heading, cell, `${cell} cannot be`, error.expected);
    if (frontMm === undefined) return wrong(front.heading, '', `nothing beside ${heading} ${cell}`, error.expected);
    return wrong(front.heading, front.cell, `${front.cell} cannot be with ${heading} ${cell}`, error.expected);
  }
}

function runIn(row: Row, whole: Whole): TableRun[] {
  const { line, cells } = row;
  const { columns, problems } = whole;
  const before = problems.length;
  const front = frontIn(row, whole);
  const raw: Record<string, unknown> = {};
  const spots: unknown[] = [];
  columns.forEach((column, i) => {
    const [{ field, heading }, cell] = [column, cells[i] ?? ''];
    if (cell === '' || heading === '' || field === 'frontMm') return;
    if (field === null) {
      if (front) spots.push(spotIn(line, column, cell, front, whole));
      return;
    }
    const read = cellIn(field, cell, whole);
    if ('value' in read) raw[field === 'waterPercent' ? 'waterFraction' : field] = read.value;
    else problems.push(problem(line, heading, cell, `${cell} cannot be`, read.expected));
  });
  if (problems.length > before) return [];
  if (spots.length === 0) problems.push(problem(line, null, '', 'no value of any compound', 'one value or more'));
  const read = runSaid.safeParse({ ...raw, spots });
  if (read.success) return [{ ...read.data, line }];
  if (spots.length === 0) return [];
  const [issue] = read.error.issues;
  const at = columns.findIndex(({ field }) => field === issue?.path[0]);
  const cell = cells[at] ?? '';
  const message = at < 0 ? `${spots.length} spots cannot be` : `${cell} cannot be`;
  problems.push(problem(line, columns[at]?.heading ?? null, cell, message, issue?.message ?? 'something else'));
  return [];
}

/** Rows of one plate (the same mark, lot and tank) are its several spots. */
function merged(runs: readonly TableRun[]): TableRun[] {
  const plates = new Map<string, TableRun>();
  const kept = runs.filter((run) => {
    const key = JSON.stringify([run.plate, run.lotNumber, run.tank, run.at]);
    const first = run.plate ? plates.get(key) : undefined;
    if (first) first.spots.push(...run.spots);
    else plates.set(key, run);
    return !first;
  });
  const full = kept.filter(({ spots }) => spots.length > mostSpots);
  if (full.length === 0) return kept;
  throw refusedTable(
    full.map(({ line, plate, spots }) =>
      problem(line, null, plate ?? '', `${spots.length} spots on plate ${plate} cannot be`, `at most ${mostSpots}`),
    ),
  );
}
