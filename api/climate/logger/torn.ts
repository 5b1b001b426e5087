/** Rows that were cut short or run together, as power cuts and full cards leave them. */
import { columnsOfClock } from './clock.ts';
import type { Roles } from './roles.ts';
import type { Section } from './section.ts';

/** Rows before the last that show how its cells usually end. */
const LOOKED_BACK = 20;

/** Where at least this share of the rows is short, it is the logger's habit to leave off empty cells. */
const HABIT = 0.1;

export type TornWhy = (cells: readonly string[], index: number) => string | null;

/** Tells of a row whether it is whole: null, or why it is left out. */
export function tornWhy({ table, first, end, width, clock }: Section, roles: Roles): TornWhy {
  const needed = 1 + Math.max(...columnsOfClock(clock), ...roles.values.map(({ column }) => column));
  const looked = table.rows.slice(first, Math.min(end, first + 600)).filter((row) => row.length > 1);
  const isHabit = looked.filter((row) => row.length < needed).length > looked.length * HABIT;
  const last = table.ended ? -1 : table.rows.findLastIndex((row) => row.some((cell) => cell !== ''));
  return (cells, index) => {
    if (index === last && isCut(cells, table.rows.slice(Math.max(first, index - LOOKED_BACK), index), needed))
      return 'torn at the end of the file';
    if (cells.length < needed && !isHabit) return `cut short: ${counted(cells.length)} where ${needed} are usual`;
    for (let extra = width; extra < cells.length; extra++) {
      if (cells[extra] !== '') return `run together: ${counted(cells.length)} where ${width} are usual`;
    }
    return null;
  };
}

function counted(cells: number): string {
  return cells === 1 ? '1 cell' : `${cells} cells`;
}

/** The last line, without a line end, is cut when it has too few cells or its last one is shorter than all before it. */
function isCut(cells: readonly string[], before: readonly string[][], needed: number): boolean {
  if (cells.length < needed) return true;
  const [cell, ...others] = [cells, ...before.filter((row) => row.length === cells.length)].map((row) =>
    decimalsOf(row.at(-1) ?? ''),
  );
  if (cell === undefined) return false;
  return (
    /[.,]$/.test(cells.at(-1) ?? '') ||
    (others.length >= 3 && others.every((decimals) => decimals > cell && decimals === others[0]))
  );
}

function decimalsOf(cell: string): number {
  return /[.,](\d+)\D*$/.exec(cell)?.[1]?.length ?? 0;
}
