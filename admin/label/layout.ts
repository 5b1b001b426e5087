// How a label's words are set: as large as the label allows, wrapped, and when even the smallest does not fit, the least
// needed goes first. Worked out by arithmetic, so that paper and screen show the same.
import type { LabelOf } from './words.ts';

export interface SetLine {
  text: string;
  pt: number;
  bold: boolean;
  /** A line to write on fills the rest. */
  blank?: boolean;
}

export interface Layout {
  /** Side of the symbol with its quiet zone. */
  symbolMm: number;
  paddingMm: number;
  codePt: number;
  lines: SetLine[];
}

const mmPerPt = 25.4 / 72;
/** From one line to the next, as a multiple of the letters' size. */
export const leading = 1.16;
const paddingMm = 1.6;
/** Between symbol and words. */
export const gutterMm = 1.4;

/** Widths in em of the widest of the common sans-serif fonts (Helvetica's table, rounded up); bold is a tenth wider. */
function emOf(sign: string): number {
  if (/[ijl.,:;'|!]/.test(sign)) return 0.29;
  if (/[ ftrI()[\]/-]/.test(sign)) return 0.34;
  if (/[mwMW%@—…]/.test(sign)) return 0.95;
  if (/[A-Z&]/.test(sign)) return 0.73;
  if (sign.charCodeAt(0) > 0x2000) return 1;
  return 0.57;
}

export const widthMm = (text: string, pt: number, bold = false): number =>
  [...text].reduce((sum, sign) => sum + emOf(sign), 0) * pt * mmPerPt * (bold ? 1.08 : 1);

/** The words in lines no wider than that; a word that is too wide alone is broken. */
export function wrapped(text: string, pt: number, maxMm: number, bold = false): string[] {
  const lines: string[] = [];
  let line = '';
  const fits = (words: string): boolean => widthMm(words, pt, bold) <= maxMm;
  for (const word of text.trim().split(/\s+/)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = word;
    while (!fits(line) && line.length > 1) {
      let cut = line.length - 1;
      while (cut > 1 && !fits(line.slice(0, cut))) cut -= 1;
      lines.push(line.slice(0, cut));
      line = line.slice(cut);
    }
  }
  if (line !== '') lines.push(line);
  return lines;
}

/** At most so many lines, the last one ending in … when there was more. */
export function cutTo(lines: readonly string[], most: number, pt: number, maxMm: number, bold = false): string[] {
  if (lines.length <= most) return [...lines];
  let last = `${lines[most - 1] ?? ''}…`;
  while (last.length > 2 && widthMm(last, pt, bold) > maxMm) last = `${last.slice(0, -2).trimEnd()}…`;
  return [...lines.slice(0, most - 1), last];
}

interface Part {
  text: string;
  bold: boolean;
  mostLines: number;
  blank?: boolean;
}

/** Most needed first: what it is, of which lot, when it was opened, how dry it should be, what to mind. */
function partsOf({ sorbent, lot, openedOn, band, cautions }: LabelOf, maxCautions: number): Part[] {
  const opened: Part = openedOn
    ? { text: `opened ${openedOn}`, bold: false, mostLines: 2 }
    : { text: 'opened', bold: false, mostLines: 1, blank: true };
  return [
    { text: sorbent, bold: true, mostLines: 3 },
    { text: `lot ${lot}`, bold: false, mostLines: 2 },
    opened,
    ...(band ? [{ text: band, bold: false, mostLines: 2 }] : []),
    ...cautions.slice(0, maxCautions).map((text) => ({ text, bold: false, mostLines: 2 })),
  ];
}

/** Letters get no smaller than this; 10 pt is what they are where there is room. */
const sizesPt = [11, 10.5, 10, 9.5, 9, 8.5, 8, 7.5, 7, 6.5, 6];

function setIn(parts: readonly Part[], pt: number, maxMm: number, lines?: number): SetLine[] {
  return parts.flatMap(({ text, bold, mostLines, blank }) =>
    cutTo(wrapped(text, pt, maxMm, bold), lines ?? mostLines, pt, maxMm, bold).map((words) => ({
      text: words,
      pt,
      bold,
      ...(blank ? { blank } : {}),
    })),
  );
}

const heightMm = (lines: readonly SetLine[]): number => lines.reduce((sum, { pt }) => sum + pt * leading * mmPerPt, 0);

/** Narrow labels carry the symbol above the words, others beside them. */
export const isStacked = (labelWidthMm: number, labelHeightMm: number): boolean =>
  labelWidthMm < 30 && labelHeightMm > labelWidthMm * 1.2;

export function layoutOf(of: LabelOf, labelWidthMm: number, labelHeightMm: number): Layout {
  const stacked = isStacked(labelWidthMm, labelHeightMm);
  const innerW = labelWidthMm - 2 * paddingMm;
  const innerH = labelHeightMm - 2 * paddingMm;
  // A third of the label and no less than 9 mm: modules of a third of a millimetre and more, which phones read.
  const symbolMm = Math.min(
    Math.max(9, Math.min(stacked ? innerW : innerW * 0.36, stacked ? innerH * 0.42 : innerH * 0.72)),
    24,
    innerW,
    innerH,
  );
  const maxMm = stacked ? innerW : innerW - symbolMm - gutterMm;
  const perPt = widthMm(of.label, 1, true);
  const codePt = Math.max(7, Math.min(24, maxMm / perPt, (innerH * 0.26) / (leading * mmPerPt)));
  const codeMm = codePt * leading * mmPerPt;
  const room = innerH - codeMm - (stacked ? symbolMm + gutterMm : 0);
  const done = (lines: SetLine[]): Layout => ({ symbolMm, paddingMm, codePt: Number(codePt.toFixed(2)), lines });
  const cautionCount = of.cautions.length;
  for (const pt of sizesPt) {
    const lines = setIn(partsOf(of, cautionCount), pt, maxMm);
    if (heightMm(lines) <= room && (pt > 8 || cautionCount === 0)) return done(lines);
  }
  // Too much for letters one reads at arm's length: cautions go first, then the band, then second lines, then the last parts.
  for (const keep of Array.from({ length: cautionCount + 1 }, (_, i) => cautionCount - i))
    for (const pt of sizesPt.filter((size) => size <= 8)) {
      const lines = setIn(partsOf(of, keep), pt, maxMm);
      if (heightMm(lines) <= room) return done(lines);
    }
  const smallest = sizesPt.at(-1) ?? 6;
  const few = partsOf(of, 0);
  for (let count = few.length; count > 0; count -= 1)
    for (const most of [2, 1]) {
      const lines = setIn(few.slice(0, count), smallest, maxMm, most);
      if (heightMm(lines) <= room) return done(lines);
    }
  return done([]);
}
