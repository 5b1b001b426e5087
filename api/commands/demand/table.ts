// A table of weekly use to a history per item, each week between an item's first and last with a quantity.
import { parse } from 'csv-parse/sync';
import { BadInput } from '../../bad-input.ts';
import { weekNumber } from './week.ts';

export interface History {
  readonly item: string;
  readonly weeks: readonly number[];
}

const columns = ['item', 'week', 'quantity'] as const;
type Column = (typeof columns)[number];
/** More than this is two ways of counting weeks in one table, or a slip. */
const mostWeeks = 1040;

interface Row {
  cells: string[];
  line: number;
}

/** In the order in which the items first appear. Weeks left out count as nothing used. */
export function historiesOf(text: string): History[] {
  const [heading, ...rows] = rowsOf(text);
  if (heading === undefined) throw new BadInput('missing item, expected a heading: item,week,quantity (line 1)');
  const place = placesOf(heading);
  if (rows.length === 0)
    throw new BadInput(`missing item, expected at least one row below the heading (line ${heading.line + 1})`);
  const items = new Map<string, Map<number, number>>();
  for (const row of rows) {
    const cell = (column: Column): string => row.cells[place[column]] ?? '';
    const refuse = (column: Column, expected: string): never => {
      const value = cell(column);
      const at = `(line ${row.line}, column ${place[column] + 1})`;
      throw new BadInput(
        value === ''
          ? `missing ${column}, expected ${expected} ${at}`
          : `invalid ${column}: ${value}, expected ${expected} ${at}`,
      );
    };
    if (row.cells.length > heading.cells.length) {
      const column = heading.cells.length + 1;
      throw new BadInput(
        `unknown cell: ${row.cells[column - 1]}, expected ${heading.cells.length} columns as in the heading (line ${row.line}, column ${column})`,
      );
    }
    const item = cell('item');
    if (item === '') refuse('item', 'the name of an item');
    const week = weekNumber(cell('week'));
    if (week === null) return refuse('week', 'a whole number or a week such as 2026-W07');
    const quantity = /^\d*\.?\d+(e[+-]?\d+)?$/i.test(cell('quantity')) ? Number(cell('quantity')) : NaN;
    if (!Number.isFinite(quantity)) refuse('quantity', 'a number of 0 or more with a decimal point');
    const weeks = items.get(item) ?? new Map<number, number>();
    items.set(item, weeks);
    if (weeks.has(week)) refuse('week', `each week of ${item} once`);
    const [some = week] = weeks.keys();
    if (Math.abs(week - some) >= mostWeeks) refuse('week', `weeks of ${item} within ${mostWeeks} of each other`);
    weeks.set(week, quantity);
  }
  return [...items].map(([item, weeks]) => ({ item, weeks: filled(weeks) }));
}

function filled(weeks: ReadonlyMap<number, number>): number[] {
  const order = [...weeks.keys()].sort((a, b) => a - b);
  const first = order[0] ?? 0;
  const last = order.at(-1) ?? -1;
  return Array.from({ length: last - first + 1 }, (_, i) => weeks.get(first + i) ?? 0);
}

function placesOf({ cells, line }: Row): Record<Column, number> {
  const names = cells.map((cell) => cell.toLowerCase());
  const strange = names.findIndex((name, i) => !columns.some((column) => column === name) || names.indexOf(name) < i);
  if (strange >= 0) {
    throw new BadInput(
      `unknown column: ${cells[strange]}, expected item, week and quantity, each once (line ${line}, column ${strange + 1})`,
    );
  }
  const place = (column: Column): number => {
    const at = names.indexOf(column);
    if (at < 0)
      throw new BadInput(
        `missing ${column}, expected a column of that name (line ${line}, column ${cells.length + 1})`,
      );
    return at;
  };
  return { item: place('item'), week: place('week'), quantity: place('quantity') };
}

function rowsOf(text: string): Row[] {
  const whole = text.replace(/^\uFEFF/, '');
  const heading = /^\s*([^\r\n]*)/.exec(whole)?.[1] ?? '';
  const delimiter = [',', ';', '\t'].find((one) => heading.includes(one)) ?? ',';
  return (whole.includes('"') ? quoted(whole, delimiter) : plain(whole, delimiter)).filter(({ cells }) =>
    cells.some((cell) => cell !== ''),
  );
}

/** Without quotes a split is enough, and ten times as fast. */
const plain = (text: string, delimiter: string): Row[] =>
  text.split(/\r\n|\n|\r/).map((row, i) => ({ cells: row.split(delimiter).map((cell) => cell.trim()), line: i + 1 }));

function quoted(text: string, delimiter: string): Row[] {
  try {
    const options = { delimiter, trim: true, info: true, relax_column_count: true, skip_empty_lines: true };
    const records = parse(text, options) as unknown as { record: string[]; info: { lines: number } }[];
    return records.map(({ record, info }) => ({ cells: record, line: info.lines }));
  } catch (error) {
    const [, line = '1'] = /line (\d+)/.exec(error instanceof Error ? error.message : '') ?? [];
    throw new BadInput(
      `invalid FILE: a quote that does not end or stands amid a cell, expected a table (line ${line}, column 1)`,
    );
  }
}
