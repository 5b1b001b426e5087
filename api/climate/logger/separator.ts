/** Which character stands between the cells of a text. */

export type Separator = ',' | ';' | '\t' | '|' | ' ';

export const SEPARATOR_NAMES: Record<Separator, string> = {
  ',': 'comma',
  ';': 'semicolon',
  '\t': 'tab',
  '|': 'bar',
  ' ': 'space',
};

/** The comma comes last: it may also be the decimal sign, the others never are. */
const CANDIDATES: readonly Separator[] = ['\t', ';', '|', ','];

/** What a line is split by: columns set apart by spaces may be padded with them. */
export const SPLITTERS: Record<Separator, string | RegExp> = { ',': ',', ';': ';', '\t': '\t', '|': '|', ' ': /\s+/ };

/** Lines looked at; a preamble is seldom longer than a tenth of this. */
const SAMPLE = 400;

/** Null when no candidate makes columns: a file of one column. */
export function separatorOf(lines: readonly string[]): Separator | null {
  const said = /^sep=(.)$/.exec(lines[0] ?? '')?.[1];
  const named = CANDIDATES.find((candidate) => candidate === said);
  if (named) return named;
  const sample = sampled(lines.filter((line) => line.trim() !== ''));
  let best: Separator | null = null;
  let bestShare = 0;
  for (const candidate of CANDIDATES) {
    const share = alikeShare(sample, candidate);
    if (share > 0.5) return candidate;
    if (share > bestShare) [best, bestShare] = [candidate, share];
  }
  return alikeShare(sample, ' ') > 0.5 ? ' ' : best;
}

/** The beginning and an even choice of the rest. */
function sampled(lines: readonly string[]): string[] {
  const step = Math.max(1, Math.floor(lines.length / SAMPLE));
  return lines.filter((_, index) => index < SAMPLE / 2 || index % step === 0);
}

/** Share of lines that have the commonest number of cells, two at least. */
function alikeShare(lines: readonly string[], separator: Separator): number {
  const counts = new Map<number, number>();
  for (const line of lines) {
    const outside = outsideQuotes(line);
    const cells = (separator === ' ' ? outside.trim() : outside).split(SPLITTERS[separator]).length;
    if (cells >= 2) counts.set(cells, (counts.get(cells) ?? 0) + 1);
  }
  return lines.length === 0 ? 0 : Math.max(0, ...counts.values()) / lines.length;
}

function outsideQuotes(line: string): string {
  return line.includes('"') ? line.replace(/"[^"]*"/g, '') : line;
}
