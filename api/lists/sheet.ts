// A sheet of cells, as it is kept: what a list is read from, whatever it was written in.

/** Text as it stands; a number only where a workbook holds one. Days of a workbook are text such as 2026-03-02. */
export type Cell = string | number;

export interface Sheet {
  name: string | null;
  rows: Cell[][];
  /** The line of each row, as an editor or a spreadsheet numbers it. */
  lines: number[];
  /** Days that are written as bare numbers count from 1904. */
  is1904?: boolean;
}

export interface Sheets {
  /** How it is written, for a sentence: "tab-separated text", "an Excel workbook". */
  written: string;
  sheets: Sheet[];
}

/** Why bytes are no list, as the end of "this is …", and what would be right. */
export interface NotAList {
  is: string;
  expected: string;
}

export const cellText = (cell: Cell | undefined): string => (cell === undefined ? '' : String(cell).trim());

export const isEmptyRow = (row: readonly Cell[]): boolean => row.every((cell) => cellText(cell) === '');

/** A cell as it is quoted in a sentence: short, without control characters. */
export function shown(cell: Cell | undefined): string {
  const plain = cellText(cell).replace(/\p{Cc}+/gu, ' ');
  return plain.length > 60 ? `${plain.slice(0, 60)}…` : plain;
}
