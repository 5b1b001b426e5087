// A first guess of what each column is: from its heading, else from what stands in it.
import { closureMeant, kindMeant, plain, type Field } from './fields.ts';
import { saidBy } from './heading.ts';
import { looksLikeDay } from './days.ts';
import { sameAs } from './names.ts';
import { massUnit, numberIn, timesIn } from './numbers.ts';
import { cellText, type Cell } from './sheet.ts';

/** The lab's own names, by which a column without a heading is known. */
export interface Ours {
  sorbents: readonly string[];
  suppliers: readonly string[];
  rooms: readonly string[];
  vessels: readonly string[];
}

const sample = 200;

function share(cells: readonly Cell[], is: (cell: Cell) => boolean): number {
  const filled = cells.filter((cell) => cellText(cell) !== '').slice(0, sample);
  return filled.length === 0 ? 0 : filled.filter(is).length / filled.length;
}

const isNumber = (cell: Cell): boolean => numberIn(cell, null)?.unit === '';
const isMass = (cell: Cell): boolean => {
  const text = cellText(cell);
  const number = numberIn(timesIn(text)?.rest ?? cell, null);
  return number !== null && massUnit(number.unit) !== null;
};

/** "nombre" is a number in French and a name in Spanish; "quantity" may be so many or so much: the cells tell. */
function settled(field: Field, heading: string, cells: readonly Cell[]): Field {
  if (plain(heading) === 'nombre') return share(cells, isNumber) > 0.5 ? 'COUNT' : 'SORBENT';
  if (field === 'COUNT' && share(cells, isMass) > 0.5) return 'AMOUNT';
  if (field === 'CLOSURE' && share(cells, looksLikeDay) > 0.5) return 'OPENED';
  if (field === 'OPENED' && share(cells, (cell) => closureMeant(cellText(cell)) !== null) > 0.6) return 'CLOSURE';
  return field;
}

/** What stands in a column without a heading that says anything. */
function byContent(cells: readonly Cell[], ours: Ours): Field | null {
  const named = (names: readonly string[]) => share(cells, (cell) => sameAs(cellText(cell), names) !== null) > 0.5;
  if (named(ours.rooms)) return 'ROOM';
  if (named(ours.sorbents)) return 'SORBENT';
  if (named(ours.suppliers)) return 'SUPPLIER';
  if (named(ours.vessels)) return 'VESSEL';
  if (share(cells, isMass) > 0.7) return 'AMOUNT';
  if (share(cells, (cell) => typeof cell === 'string' && closureMeant(cell) !== null) > 0.8) return 'CLOSURE';
  if (share(cells, (cell) => typeof cell === 'string' && kindMeant(cell) !== null) > 0.8) return 'KIND';
  return null;
}

/** A field for each column, or null; no field twice. */
export function guessedFields(names: readonly string[], columns: readonly Cell[][], ours: Ours): (Field | null)[] {
  const guessed: (Field | null)[] = columns.map(() => null);
  const taken = new Set<Field>();
  const wishes = columns
    .flatMap((cells, column) =>
      saidBy(names[column] ?? '').map(({ field, score }) => ({
        column,
        score,
        field: settled(field, names[column] ?? '', cells),
      })),
    )
    .sort((one, other) => other.score - one.score || one.column - other.column);
  for (const { column, field } of wishes) {
    if (guessed[column] !== null || taken.has(field)) continue;
    guessed[column] = field;
    taken.add(field);
  }
  columns.forEach((cells, column) => {
    if (guessed[column] !== null) return;
    const field = byContent(cells, ours);
    if (field === null || taken.has(field)) return;
    guessed[column] = field;
    taken.add(field);
  });
  return guessed;
}
