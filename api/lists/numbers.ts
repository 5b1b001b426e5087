// Amounts, lengths and percentages as people write them: decimal comma or point, thousands, a unit behind it.
import { cellText, type Cell } from './sheet.ts';

export type Mark = '.' | ',';

const core = /^([+-]?)(\d[\d.,'\u00a0\u202f\u2009 ]*|[.,]\d+)/;

const tidy = (text: string): string => text.replace(/[\u2212\u2013]/g, '-').trim();

/** A cell in its number, as written, and what stands behind it. */
function parted(text: string): { digits: string; rest: string } | null {
  const found = core.exec(tidy(text));
  if (!found) return null;
  const digits = found[0].trim();
  const cut = /[.,' ]$/.test(digits) ? digits.slice(0, -1).trim() : digits;
  return { digits: cut, rest: tidy(text).slice(found[0].length).trim() };
}

/** Which mark a number shows to be decimal: null where it has none, `either` where both readings make sense. */
function markIn(digits: string): Mark | 'either' | null {
  const points = digits.split('.').length - 1;
  const commas = digits.split(',').length - 1;
  if (points > 0 && commas > 0) return digits.lastIndexOf(',') > digits.lastIndexOf('.') ? ',' : '.';
  if (points + commas === 0) return null;
  const mark = points > 0 ? '.' : ',';
  if (points + commas > 1) return mark === '.' ? ',' : '.';
  const [whole = '', decimals = ''] = digits.split(mark);
  if (decimals.length !== 3 || whole.replace(/\D/g, '').length > 3 || /^[+-]?0?$/.test(whole)) return mark;
  return 'either';
}

export interface Marks {
  /** What the list shows; null where nothing tells. */
  mark: Mark | null;
  /** A number that could be read both ways while nothing else tells how. */
  example: string | null;
}

/** How a list writes decimals, over all its numbers. Numbers of a workbook are no question. */
export function marksOf(cells: readonly Cell[]): Marks {
  const seen = { '.': 0, ',': 0 };
  let example: string | null = null;
  for (const cell of cells) {
    if (typeof cell === 'number') continue;
    const digits = parted(cell)?.digits;
    const mark = digits === undefined ? null : markIn(digits);
    if (mark === 'either') example ??= cellText(cell);
    else if (mark) seen[mark] += 1;
  }
  if (seen[','] > 0 && seen['.'] > 0) return { mark: null, example };
  return seen[','] + seen['.'] === 0 ? { mark: null, example } : { mark: seen[','] > 0 ? ',' : '.', example: null };
}

export interface Measured {
  value: number;
  /** What stood behind the number, as written; empty where nothing did. */
  unit: string;
}

/** A number with what stands behind it; null where it is none. `mark` decides what could be read both ways. */
export function numberIn(cell: Cell | undefined, mark: Mark | null): Measured | null {
  if (typeof cell === 'number') return { value: cell, unit: '' };
  const parts = parted(cellText(cell));
  if (!parts) return null;
  const own = markIn(parts.digits);
  const decimal = own === 'either' || own === null ? (mark ?? '.') : own;
  const digits = parts.digits.replace(decimal === '.' ? /[,'\u00a0\u202f\u2009 ]/g : /[.'\u00a0\u202f\u2009 ]/g, '');
  const value = Number(digits.replace(',', '.'));
  return Number.isFinite(value) ? { value, unit: parts.rest } : null;
}

/** `2 x 500 g`: so many, and the rest. */
export function timesIn(text: string): { times: number; rest: string } | null {
  const found = /^(\d{1,4})\s*(?:[x×*]|st(?:ü|u)?ck|pcs|kpl)\s*(\d.*)$/i.exec(text.trim());
  return found ? { times: Number(found[1]), rest: found[2] ?? '' } : null;
}

const gramUnits: Record<string, number> = { g: 1, kg: 1000, mg: 0.001, lb: 453.59237, oz: 28.349523125 };
const gramNames: readonly (readonly [RegExp, string])[] = [
  [/^(g|gr|gm|grams?|grammes?|gramm|gramos?|grammaa?)\.?$/, 'g'],
  [/^(kg|kgs|kilos?|kilograms?|kilogramm|kilogrammes?|kilogramos?|kiloa?)\.?$/, 'kg'],
  [/^(mg|milligrams?|milligramm|milligrammes?|miligramos?)\.?$/, 'mg'],
  [/^(lbs?|pounds?)\.?$/, 'lb'],
  [/^(oz|ounces?)\.?$/, 'oz'],
];
/** A unit of mass as it is written; null where it is none. The pound and the ounce are exact (NIST SP 811, B.8). */
export const massUnit = (text: string): string | null =>
  gramNames.find(([pattern]) => pattern.test(text.trim().toLowerCase()))?.[1] ?? null;
export const gramsOf = (value: number, unit: string): number =>
  Number((value * (gramUnits[unit] ?? 1)).toPrecision(12));

/** A unit of length as it is written; null where it is none. */
export const lengthUnit = (text: string): 'mm' | 'cm' | null =>
  (({ mm: 'mm', millimeter: 'mm', millimetre: 'mm', cm: 'cm', centimeter: 'cm', centimetre: 'cm' }) as const)[
    text.trim().toLowerCase()
  ] ?? null;
export const mmOf = (value: number, unit: string): number => (unit === 'cm' ? value * 10 : value);

/** A count of pieces behind a number: "25 plates", "10 pcs". */
export const isPieces = (unit: string): boolean =>
  /^(plates?|pcs?|pieces?|st(ü|u)?c?k\.?|platten?|plaques?|placas?|levyä?|kpl|u|ud|unidades|sheets?)\.?$/i.test(
    unit.trim(),
  );

/** The unit that a heading names: "Menge (kg)", "amount_g", "Höhe / mm", "water %". */
export function unitInHeading(heading: string): string | null {
  const words = heading
    .toLowerCase()
    .split(/[^\p{L}%]+/u)
    .filter(Boolean);
  for (const word of words.slice(words.length > 1 ? 1 : 0).reverse()) {
    if (word === '%') return '%';
    const unit = /^(g|kg|mg|lb|lbs|oz)$/.test(word) ? massUnit(word) : /^(mm|cm)$/.test(word) ? word : null;
    if (unit) return unit;
  }
  return /grams?|gramm/.test(heading.toLowerCase()) ? 'g' : null;
}
