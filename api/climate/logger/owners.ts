/** Whose a value is: its column's, or what its row says beside it. */
import type { Unit } from './file.ts';
import type { RawSeries } from './gather.ts';
import { meaningOf, quantityOfUnit } from './quantity.ts';
import type { Meaning } from './quantity.ts';
import type { Roles, ValueColumn } from './roles.ts';
import { unitOf } from './unit.ts';

export type Owners = {
  /** `unit` stands in the cell itself and is of another quantity than the column. */
  of: (cells: readonly string[], column: ValueColumn, unit: Unit | null) => RawSeries;
  group: (cells: readonly string[]) => number;
  all: () => RawSeries[];
};

export function ownersOf(roles: Roles): Owners {
  const series = new Map<string, RawSeries>();
  const meanings = new Map<string, Meaning>();
  const groups = new Map<string, number>();
  const fixed = roles.sensor < 0 && roles.quantity < 0 && roles.unit < 0;
  const plain = new Map<ValueColumn, RawSeries>();
  const labelOf = (cells: readonly string[]): string => `${cells[roles.sensor] ?? ''}\0${cells[roles.quantity] ?? ''}`;
  const made = (key: string, cells: readonly string[], column: ValueColumn, cellUnit: Unit | null): RawSeries => {
    const said = roles.quantity >= 0 ? meaningSaid(cells[roles.quantity] ?? '') : null;
    const sensor = [
      cells[roles.sensor] ?? '',
      said?.sensor ?? '',
      column.sensor === column.title && roles.sensor >= 0 ? '' : column.sensor,
    ]
      .filter((part) => part !== '')
      .join(' ');
    const unitText = cells[roles.unit] ?? '';
    const unit = cellUnit ?? unitOf(unitText) ?? said?.unit ?? column.unit;
    const byUnit = cellUnit !== null || (roles.unit >= 0 && !said);
    const quantity = said
      ? (said.quantity ?? (cells[roles.quantity] || 'unnamed'))
      : byUnit
        ? (quantityOfUnit(unit) ?? unitText)
        : column.quantity;
    return { key, sensor, title: column.title, column: column.column, quantity, unit, row: [], value: [], missing: [] };
  };
  function meaningSaid(cell: string): Meaning {
    let meaning = meanings.get(cell);
    if (!meaning) meanings.set(cell, (meaning = meaningOf(cell)));
    return meaning;
  }
  function of(cells: readonly string[], column: ValueColumn, unit: Unit | null): RawSeries {
    const known = fixed && unit === null ? plain.get(column) : undefined;
    if (known) return known;
    const key = [labelOf(fixed ? [] : cells), column.column, column.title, cells[roles.unit] ?? '', unit ?? ''].join(
      '\0',
    );
    let found = series.get(key);
    if (!found) series.set(key, (found = made(key, cells, column, unit)));
    if (fixed && unit === null) plain.set(column, found);
    return found;
  }
  function group(cells: readonly string[]): number {
    if (fixed) return 0;
    const label = labelOf(cells);
    let place = groups.get(label);
    if (place === undefined) groups.set(label, (place = groups.size));
    return place;
  }
  return { of, group, all: () => [...series.values()] };
}
