/** Text to rows of cells, each with its line number. */
import { parse } from 'csv-parse/sync';
import { withWholeNumbers } from './commas.ts';
import type { Table } from './file.ts';
import { SEPARATOR_NAMES, separatorOf, SPLITTERS } from './separator.ts';
import type { Separator } from './separator.ts';
import type { Text } from './text.ts';

/** Lines that one quoted cell may span (headings break lines, readings do not); a stray quote swallows no more. */
const LONGEST_QUOTE = 4;

/** Null for a text of one column. */
export function tableOf({ text, encoding }: Text): Table | null {
  const whole = text.replace(/^\ufeff/, '');
  const lines = (/\r(?!\n)/.test(whole) ? whole.replace(/\r+\n|\r/g, '\n') : whole).split('\n');
  const ended = lines.at(-1)?.trim() === '';
  const separator = separatorOf(lines);
  if (separator === null) return null;
  const written = `${SEPARATOR_NAMES[separator]}-separated ${encoding} text`;
  if (whole.includes('"') && separator !== ' ') return { name: null, written, ...quotedRows(lines, separator), ended };
  const { rows, lines: numbers } = plainRows(lines, separator);
  return { name: null, written, rows: separator === ',' ? withWholeNumbers(rows) : rows, lines: numbers, ended };
}

/** Without quotes a split is enough, and ten times as fast. */
function plainRows(lines: readonly string[], separator: Separator): Pick<Table, 'rows' | 'lines'> {
  const rows = new Array<string[]>(lines.length);
  const numbers = new Uint32Array(lines.length);
  for (let index = 0; index < lines.length; index++) {
    rows[index] = splitCells(lines[index] ?? '', separator);
    numbers[index] = index + 1;
  }
  return { rows, lines: numbers };
}

function splitCells(line: string, separator: Separator): string[] {
  const cells = (separator === ' ' ? line.trim() : line).split(SPLITTERS[separator]);
  for (let index = 0; index < cells.length; index++) {
    const cell = cells[index] ?? '';
    const first = cell.charCodeAt(0);
    const last = cell.charCodeAt(cell.length - 1);
    // White space of any kind is at most U+0020 or beyond ASCII.
    if (first <= 32 || last <= 32 || first >= 127 || last >= 127) cells[index] = cell.trim();
  }
  return cells;
}

function quotedRows(lines: readonly string[], separator: Separator): Pick<Table, 'rows' | 'lines'> {
  const records: string[] = [];
  const numbers: number[] = [];
  for (let index = 0; index < lines.length; index++) {
    const record = recordAt(lines, index);
    records.push(record.text);
    numbers.push(index + 1);
    index += record.lines - 1;
  }
  const together = parsed(records.map((record) => (record === '' ? separator : record)).join('\n'), separator);
  const rows = together?.length === records.length ? together : records.map((record) => cellsOf(record, separator));
  return { rows, lines: Uint32Array.from(numbers) };
}

/** One line, or the few that an open quote joins. */
function recordAt(lines: readonly string[], start: number): { text: string; lines: number } {
  let text = lines[start] ?? '';
  if (!isOpen(text)) return { text, lines: 1 };
  for (let more = 1; more < LONGEST_QUOTE && start + more < lines.length; more++) {
    text += `\n${lines[start + more] ?? ''}`;
    if (!isOpen(text)) return { text, lines: more + 1 };
  }
  return { text: (lines[start] ?? '').replaceAll('"', ''), lines: 1 };
}

function isOpen(text: string): boolean {
  let quotes = 0;
  for (let at = text.indexOf('"'); at >= 0; at = text.indexOf('"', at + 1)) quotes++;
  return quotes % 2 === 1;
}

function cellsOf(record: string, separator: Separator): string[] {
  return parsed(record, separator)?.[0] ?? splitCells(record.replaceAll('"', ''), separator);
}

function parsed(text: string, separator: Separator): string[][] | null {
  try {
    return parse(text, {
      delimiter: separator,
      relax_quotes: true,
      relax_column_count: true,
      trim: true,
      record_delimiter: '\n',
    });
  } catch {
    return null;
  }
}
