// A sheet of labels by its measures, all in mm: where each label lies, and what cannot be.

export const pages = {
  A4: { widthMm: 210, heightMm: 297, words: 'A4' },
  LETTER: { widthMm: 215.9, heightMm: 279.4, words: 'Letter' },
} as const;

export interface Sheet {
  /** ROLL: each label is a page of its own. */
  page: keyof typeof pages | 'ROLL';
  columns: number;
  rows: number;
  labelWidthMm: number;
  labelHeightMm: number;
  leftMm: number;
  topMm: number;
  gapXMm: number;
  gapYMm: number;
}

const roll = (labelWidthMm: number, labelHeightMm: number): Sheet => {
  return { page: 'ROLL', columns: 1, rows: 1, labelWidthMm, labelHeightMm, leftMm: 0, topMm: 0, gapXMm: 0, gapYMm: 0 };
};

/** Common measures, from memory: hold a printed sheet against the labels before printing on them. */
export const presets: readonly Sheet[] = [
  { page: 'A4', columns: 3, rows: 8, labelWidthMm: 70, labelHeightMm: 36, leftMm: 0, topMm: 4.5, gapXMm: 0, gapYMm: 0 },
  {
    page: 'A4',
    columns: 3,
    rows: 7,
    labelWidthMm: 63.5,
    labelHeightMm: 38.1,
    leftMm: 7.2,
    topMm: 15.1,
    gapXMm: 2.5,
    gapYMm: 0,
  },
  {
    page: 'A4',
    columns: 2,
    rows: 7,
    labelWidthMm: 99.1,
    labelHeightMm: 38.1,
    leftMm: 4.6,
    topMm: 15.1,
    gapXMm: 2.5,
    gapYMm: 0,
  },
  {
    page: 'A4',
    columns: 5,
    rows: 13,
    labelWidthMm: 38.1,
    labelHeightMm: 21.2,
    leftMm: 4.7,
    topMm: 10.7,
    gapXMm: 2.5,
    gapYMm: 0,
  },
  {
    page: 'LETTER',
    columns: 3,
    rows: 10,
    labelWidthMm: 66.7,
    labelHeightMm: 25.4,
    leftMm: 4.8,
    topMm: 12.7,
    gapXMm: 3.1,
    gapYMm: 0,
  },
  {
    page: 'LETTER',
    columns: 2,
    rows: 5,
    labelWidthMm: 101.6,
    labelHeightMm: 50.8,
    leftMm: 4,
    topMm: 12.7,
    gapXMm: 4.7,
    gapYMm: 0,
  },
  roll(57, 32),
  roll(38, 21),
];

/** A sheet in a few words: "A4, 3 × 8 labels of 70 × 36 mm". */
export function sheetWords({ page, columns, rows, labelWidthMm, labelHeightMm }: Sheet): string {
  const size = `${labelWidthMm} × ${labelHeightMm} mm`;
  return page === 'ROLL' ? `Roll, ${size}` : `${pages[page].words}, ${columns} × ${rows} of ${size}`;
}

export const pageOf = ({ page, labelWidthMm, labelHeightMm }: Sheet): { widthMm: number; heightMm: number } =>
  page === 'ROLL' ? { widthMm: labelWidthMm, heightMm: labelHeightMm } : pages[page];

export const perPage = ({ page, columns, rows }: Sheet): number => (page === 'ROLL' ? 1 : columns * rows);

/** From the page's edge to the far edge of the last label. */
const farEdge = (from: number, count: number, size: number, gap: number): number =>
  from + count * size + (count - 1) * gap;

/** Tenths of a millimetre that measures may be out by, since they are printed rounded. */
const roundingMm = 0.15;

/** What is wrong, by the name of the measure, said as what would be right. Empty: it can be printed. */
export function wrongIn(sheet: Sheet): Partial<Record<keyof Sheet, string>> {
  const wrong: Partial<Record<keyof Sheet, string>> = {};
  const page = pageOf(sheet);
  const whole = (name: 'columns' | 'rows', most: number): void => {
    if (!Number.isInteger(sheet[name]) || sheet[name] < 1 || sheet[name] > most)
      wrong[name] = `a whole number from 1 to ${most}`;
  };
  const within = (name: keyof Omit<Sheet, 'page'>, least: number, most: number): void => {
    if (!(sheet[name] >= least && sheet[name] <= most)) wrong[name] = `from ${least} to ${most} mm`;
  };
  within('labelWidthMm', 15, 300);
  within('labelHeightMm', 12, 300);
  if (sheet.page === 'ROLL') return wrong;
  whole('columns', 12);
  whole('rows', 40);
  for (const name of ['leftMm', 'topMm', 'gapXMm', 'gapYMm'] as const) within(name, 0, 100);
  if (Object.keys(wrong).length > 0) return wrong;
  const { columns, rows, labelWidthMm, labelHeightMm, leftMm, topMm, gapXMm, gapYMm } = sheet;
  const across = farEdge(leftMm, columns, labelWidthMm, gapXMm);
  const down = farEdge(topMm, rows, labelHeightMm, gapYMm);
  const over = (edge: number, size: number, way: string): string =>
    `together the labels reach ${Number(edge.toFixed(1))} mm ${way}, and the page has ${size} mm`;
  if (across > page.widthMm + roundingMm) wrong.labelWidthMm = over(across, page.widthMm, 'across');
  if (down > page.heightMm + roundingMm) wrong.labelHeightMm = over(down, page.heightMm, 'down');
  return wrong;
}

export interface Place {
  /** Which page, from 0. */
  page: number;
  leftMm: number;
  topMm: number;
}

const tenths = (mm: number): number => Number(mm.toFixed(3));

/** Where the nth place of a sheet lies, row by row, from 0; further pages are whole. */
export function placeAt(sheet: Sheet, n: number): Place {
  const each = perPage(sheet);
  const at = n % each;
  const { columns, labelWidthMm, labelHeightMm, leftMm, topMm, gapXMm, gapYMm } = sheet;
  const [column, row] = sheet.page === 'ROLL' ? [0, 0] : [at % columns, Math.floor(at / columns)];
  return {
    page: Math.floor(n / each),
    leftMm: sheet.page === 'ROLL' ? 0 : tenths(leftMm + column * (labelWidthMm + gapXMm)),
    topMm: sheet.page === 'ROLL' ? 0 : tenths(topMm + row * (labelHeightMm + gapYMm)),
  };
}

/** The labels page by page: each thing so many times, beginning at a place of the first sheet. */
export function laidOn<T>(sheet: Sheet, things: readonly T[], copies: number, start: number): (Place & { of: T })[][] {
  const all = things.flatMap((of) => Array.from({ length: copies }, () => of));
  const first = sheet.page === 'ROLL' ? 0 : start;
  const placed = all.map((of, i) => ({ ...placeAt(sheet, first + i), of }));
  const pageCount = (placed.at(-1)?.page ?? -1) + 1;
  return Array.from({ length: pageCount }, (_, page) => placed.filter((each) => each.page === page));
}

/** The page's size and no margin, so that nothing is scaled or moved. */
export function pageRule(sheet: Sheet): string {
  const { widthMm, heightMm } = pageOf(sheet);
  return `@page { size: ${widthMm}mm ${heightMm}mm; margin: 0; }`;
}
