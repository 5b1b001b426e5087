// An Excel workbook to sheets: numbers stay numbers, formulas give their values, days become text.
import readSheets from 'read-excel-file/node';
import type { Cell, Sheet } from './sheet.ts';
import type { Unpacked } from './zip.ts';

/** Excel keeps a day's fraction: to the nearest hundredth of a second 10:30 is 10:30 again. */
function dayText(cell: Date): string {
  const iso = new Date(Math.round(cell.getTime() / 10) * 10).toISOString();
  return iso.slice(11, 19) === '00:00:00' ? iso.slice(0, 10) : `${iso.slice(0, 10)} ${iso.slice(11, 16)}`;
}

/** Days from 1900-01-01 to 1904-01-01 as spreadsheets count them, the 29 February 1900 that never was included. */
export const days1904 = 1462;
const dayMs = 86_400_000;

function cellOf(cell: unknown, shiftMs: number): Cell {
  if (cell instanceof Date) return Number.isNaN(cell.getTime()) ? '' : dayText(new Date(cell.getTime() + shiftMs));
  if (typeof cell === 'number') return Number.isFinite(cell) ? cell : '';
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  return typeof cell === 'string' ? cell : '';
}

/** Null when the bytes are no readable workbook. */
export async function workbookSheets(bytes: Uint8Array, { is1904, is1904ByWord }: Unpacked): Promise<Sheet[] | null> {
  const shiftMs = is1904ByWord ? days1904 * dayMs : 0;
  const sheets = await readSheets(Buffer.from(bytes)).catch(() => null);
  return (
    sheets?.map(({ sheet, data }) => ({
      name: sheet,
      rows: data.map((row) => row.map((cell) => cellOf(cell, shiftMs))),
      ...(is1904 && { is1904 }),
      lines: data.map((_, index) => index + 1),
    })) ?? null
  );
}
