/** What the cells of each column look like, over the rows of a section. */
import { lookOf } from './cell.ts';
import type { Look } from './cell.ts';
import { HUMIDITY, TEMPERATURE } from './file.ts';
import type { Unit } from './file.ts';
import { meaningOf } from './quantity.ts';
import type { Section } from './section.ts';
import { unitOf } from './unit.ts';
import { zoneNamed } from './zone.ts';

/** Counts of cells, but for `different`, the different texts. `cells` are those that are not blank. */
export type Content = {
  looks: Record<Look, number>;
  different: Set<string>;
  cells: number;
  rising: boolean;
  units: number;
  zones: number;
  quantities: number;
  cellUnit: Unit | null;
};

/** Rows looked at. */
const SAMPLE = 2000;

export function contentsOf({ table, first, end, width }: Section): Content[] {
  const contents: Content[] = Array.from({ length: width }, emptyContent);
  const step = Math.max(1, Math.floor((end - first) / SAMPLE));
  const previous: number[] = [];
  for (let index = first; index < end; index += index < first + SAMPLE / 2 ? 1 : step) {
    const row = table.rows[index] ?? [];
    if (row.length < 2) continue;
    contents.forEach((content, column) => note(content, row[column] ?? '', previous, column));
  }
  return contents;
}

function emptyContent(): Content {
  return {
    looks: { blank: 0, none: 0, number: 0, measured: 0, stamp: 0, date: 0, clock: 0, text: 0 },
    different: new Set(),
    cells: 0,
    rising: true,
    units: 0,
    zones: 0,
    quantities: 0,
    cellUnit: null,
  };
}

function note(content: Content, cell: string, previous: number[], column: number): void {
  const look = lookOf(cell);
  content.looks[look]++;
  if (look === 'blank') return;
  content.cells++;
  const isNew = !content.different.has(cell);
  if (content.different.size < 500) content.different.add(cell);
  if (look === 'number') {
    if (previous[column] !== undefined && +cell <= previous[column]) content.rising = false;
    previous[column] = +cell;
  }
  if (look === 'measured' && isNew) content.cellUnit ??= unitOf(cell.replace(/^[+\-\u2212\d.,\s]+/, ''));
  if (isZoneCell(cell)) content.zones++;
  if (look !== 'text') return;
  if (unitOf(cell) !== null) content.units++;
  if (isQuantity(cell)) content.quantities++;
}

/** Of each row's quantity at least the air's must be known; a battery may stand between them. */
function isQuantity(cell: string): boolean {
  return meaningOf(cell).quantity !== null && unitOf(cell) === null;
}

export function isAirQuantity(cell: string): boolean {
  const { quantity } = meaningOf(cell);
  return quantity === TEMPERATURE || quantity === HUMIDITY;
}

/** An offset, or a zone by name; a bare number only by its heading. */
function isZoneCell(cell: string): boolean {
  return /^(?:[+\-\u2212]\d|utc|gmt|z$|[a-z]{3,5}$|[a-z]+\/)/i.test(cell) && zoneNamed(cell) !== null;
}

export function mostly(count: number | undefined, content: Content | undefined): boolean {
  return count !== undefined && content !== undefined && count >= content.cells * 0.7 && count > 0;
}

export function isWorded(content: Content | undefined): boolean {
  return (
    content !== undefined && content.looks.text > content.looks.number + content.looks.measured + content.looks.none
  );
}
