/** One cell to a number: decimal point or comma, thousands, a Unicode minus, a unit behind it. */
import { unitOf } from './unit.ts';
import type { Unit } from './file.ts';

const PLAIN = /^[+-]?\d+(?:\.\d*)?$/;
const COMMA = /^[+-]?\d+,\d*$/;
const SCIENTIFIC = /^[+-]?(?:\d+[.,]?\d*|[.,]\d+)e[+-]?\d{1,3}$/i;
const BARE = /^[+-]?[.,]\d+$/;
/** Groups of three, and a decimal sign that is not the group sign: 1,013.25, 1.013,25, 1 013,25, 1'013.25. */
const GROUPED = /^[+-]?\d{1,3}(?:([.,' \u00a0\u202f])\d{3})(?:\1\d{3})*(?:(?!\1)[.,]\d+)?$/;

/** NaN when the cell is no number. A lone comma or point is always the decimal sign: no room is at 1,013 °C. */
export function numberOf(cell: string): number {
  if (PLAIN.test(cell)) return +cell;
  if (COMMA.test(cell)) return +cell.replace(',', '.');
  if (cell === '' || cell.length > 40) return NaN;
  return unusual(cell.replace(/[\u2212\u2013\ufe63\uff0d]/g, '-'));
}

function unusual(cell: string): number {
  if (PLAIN.test(cell) || COMMA.test(cell) || SCIENTIFIC.test(cell) || BARE.test(cell)) return +cell.replace(',', '.');
  const grouped = GROUPED.exec(cell);
  if (!grouped) return NaN;
  const separator = grouped[1] ?? '';
  return +cell.split(separator).join('').replace(',', '.');
}

export type Measured = { value: number; unit: Unit };

const WITH_UNIT = /^([+\-\u2212]?[\d.,]+)\s*([^\d\s].*)$/;

/** A number with its unit in the same cell, `21.5 °C` or `45%`; null when it is not that. */
export function measuredOf(cell: string): Measured | null {
  const parts = cell.length <= 40 ? WITH_UNIT.exec(cell) : null;
  const unit = parts ? unitOf(parts[2] ?? '') : null;
  const value = parts && unit ? numberOf(parts[1] ?? '') : NaN;
  return unit !== null && !Number.isNaN(value) ? { value, unit } : null;
}
