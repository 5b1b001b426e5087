// Bytes of a list, however it was written, to sheets of cells.
import { kindOf, textOf } from '../climate/service.ts';
import { delimitedSheet } from './delimited.ts';
import { isEmptyRow, type NotAList, type Sheet, type Sheets } from './sheet.ts';
import { workbookSheets } from './workbook.ts';
import { unpackedWithin } from './zip.ts';

export const mostListBytes = 16_000_000;
/** What a workbook may unpack to; a list of 5,000 lines is a hundredth of it. */
const mostUnpackedBytes = 150_000_000;
/** Lines with something in them that one list may have. */
export const mostLines = 5_000;
const mostColumns = 200;

const usual = 'a list as CSV or .xlsx, or its cells pasted';

/** Without the empty lines and columns at its ends, which spreadsheets write by the thousand. */
function trimmed({ rows, lines, ...rest }: Sheet): Sheet {
  const kept = rows.map((row, at) => ({ row, line: lines[at] ?? at + 1 })).filter(({ row }) => !isEmptyRow(row));
  return { ...rest, rows: kept.map(({ row }) => row), lines: kept.map(({ line }) => line) };
}

async function sheetsIn(bytes: Uint8Array): Promise<Sheets | NotAList> {
  const kind = kindOf(bytes);
  if (kind.is === 'other') return { is: kind.what, expected: kind.advice ?? usual };
  if (kind.is === 'text') {
    const { written, sheet } = delimitedSheet(textOf(bytes).text);
    return { written, sheets: [sheet] };
  }
  const unpacked = unpackedWithin(bytes, mostUnpackedBytes);
  if (!unpacked)
    return { is: 'a workbook that unpacks to more than any list, or is damaged', expected: 'the list alone, as CSV' };
  const sheets = await workbookSheets(bytes, unpacked);
  if (!sheets) return { is: 'a workbook that cannot be read', expected: 'the same workbook saved anew, or as CSV' };
  return { written: 'an Excel workbook', sheets };
}

/** The sheets that hold something, or why these bytes are no list. */
export async function listIn(bytes: Uint8Array): Promise<Sheets | NotAList> {
  const read = await sheetsIn(bytes);
  if ('is' in read) return read;
  const sheets = read.sheets.map(trimmed).filter(({ rows }) => rows.length > 0);
  if (sheets.length === 0) return { is: 'empty', expected: usual };
  const long = sheets.find(({ rows }) => rows.length > mostLines);
  if (long) return { is: `${long.rows.length} lines long`, expected: `at most ${mostLines} lines in one list` };
  if (sheets.some(({ rows }) => rows.some((row) => row.length > mostColumns)))
    return { is: `more than ${mostColumns} columns wide`, expected: 'the columns of the list alone' };
  return { ...read, sheets };
}
