/** An Excel workbook to tables of text cells, as if each sheet were a file with ISO dates. */
import readSheets from 'read-excel-file/node';
import type { Table } from './file.ts';

/** Null when the bytes are no readable workbook. */
export async function workbookTables(bytes: Uint8Array): Promise<Table[] | null> {
  const sheets = await readSheets(Buffer.from(bytes)).catch(() => null);
  return (
    sheets &&
    sheets.map(({ sheet, data }) => ({
      name: sheet,
      written: 'Excel workbook',
      rows: data.map((row) => row.map(cellText)),
      lines: Uint32Array.from(data, (_, index) => index + 1),
      ended: true,
    }))
  );
}

/** A date cell is a wall clock, handed over as if it were UTC; a time of day is a date on Excel's day zero. */
function cellText(cell: unknown): string {
  if (cell instanceof Date) return Number.isNaN(cell.getTime()) ? '' : dateText(cell);
  if (typeof cell === 'string') return cell.trim();
  return typeof cell === 'number' || typeof cell === 'boolean' ? String(cell) : '';
}

function dateText(cell: Date): string {
  // Excel keeps a day's fraction: to the nearest millisecond 10:30 may come out as 10:29:59.999.
  const iso = new Date(Math.round(cell.getTime() / 10) * 10).toISOString();
  return cell.getUTCFullYear() <= 1900 ? iso.slice(11, 23) : `${iso.slice(0, 10)} ${iso.slice(11, 23)}`;
}
