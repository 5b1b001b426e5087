// Text to rows of cells: what a spreadsheet copies (tabs), or CSV with semicolons, commas or bars.
import { parse } from 'csv-parse/sync';
import type { Sheet } from './sheet.ts';

const separators = { '\t': 'tab', ';': 'semicolon', '|': 'bar', ',': 'comma' } as const;
type Separator = keyof typeof separators;
/** The comma comes last: it may also be the decimal sign. */
const candidates = Object.keys(separators) as Separator[];

/** Lines looked at to tell the separator. */
const sampleLines = 200;

const outsideQuotes = (line: string): string => line.replace(/"[^"]*"/g, '');

/** The share of lines that have the commonest number of cells, two at least. */
function alikeShare(lines: readonly string[], separator: Separator): number {
  const counts = new Map<number, number>();
  for (const line of lines) {
    const cells = outsideQuotes(line).split(separator).length;
    if (cells > 1) counts.set(cells, (counts.get(cells) ?? 0) + 1);
  }
  return Math.max(0, ...counts.values()) / Math.max(1, lines.length);
}

function separatorOf(lines: readonly string[]): Separator {
  const said = /^"?sep=(.)"?$/i.exec(lines[0]?.trim() ?? '')?.[1];
  const named = candidates.find((candidate) => candidate === said);
  if (named) return named;
  const sample = lines.filter((line) => line.trim() !== '').slice(0, sampleLines);
  const shares = candidates.map((separator) => ({ separator, share: alikeShare(sample, separator) }));
  const best = shares.reduce((one, other) => (other.share > one.share + 0.1 ? other : one));
  return best.share > 0 ? best.separator : '\t';
}

interface Record {
  record: string[];
  info: { lines: number };
}

/** Rows by the rules of CSV (RFC 4180); null where a quote never ends. */
function quoted(text: string, separator: Separator): Pick<Sheet, 'rows' | 'lines'> | null {
  try {
    const options = { delimiter: separator, relax_quotes: true, relax_column_count: true, info: true } as const;
    const records = parse(text, { ...options, trim: separator !== '\t' }) as unknown as Record[];
    let next = 1;
    const lines = records.map(({ record, info }) => {
      const first = next;
      next = first + 1 + record.reduce((breaks, cell) => breaks + cell.split('\n').length - 1, 0);
      return Math.min(first, info.lines);
    });
    return { rows: records.map(({ record }) => record), lines };
  } catch {
    return null;
  }
}

/** Text as one sheet, with how it is separated. */
export function delimitedSheet(text: string): { written: string; sheet: Sheet } {
  const whole = text.replace(/^\ufeff/, '').replace(/\r+\n|\r/g, '\n');
  const all = whole.split('\n');
  const separator = separatorOf(all);
  const hint = /^"?sep=."?$/i.test(all[0]?.trim() ?? '');
  const plain = { rows: all.map((line) => line.split(separator)), lines: all.map((_, at) => at + 1) };
  const read = whole.includes('"') ? (quoted(whole, separator) ?? plain) : plain;
  const rows = hint ? read.rows.slice(1) : read.rows;
  const lines = hint ? read.lines.slice(1) : read.lines;
  return { written: `${separators[separator]}-separated text`, sheet: { name: null, rows, lines } };
}
