// Lines against each other and against the book: one lot has one supplier and one certificate, one code one container.
import type { Row } from './line.ts';
import type { Problem } from './questions.ts';
import type { Known } from './resolve.ts';

/** How many containers one list may bring. */
export const mostContainers = 5_000;

export const lotKey = ({ sorbent, lotNumber }: Pick<Row, 'sorbent' | 'lotNumber'>): string =>
  `${sorbent.toLowerCase()}\u2044${lotNumber.toLowerCase()}`;

const lotFacts = [
  ['supplier', 'supplier'],
  ['retestOn', 'retest date'],
  ['certificateWaterFraction', 'water on the certificate'],
  ['certificateMaxWaterFraction', 'most water on the certificate'],
] as const;

const same = (one: unknown, other: unknown): boolean =>
  one instanceof Date && other instanceof Date ? one.getTime() === other.getTime() : one === other;
const spoken = (value: unknown): string =>
  value instanceof Date
    ? value.toISOString().slice(0, 10)
    : typeof value === 'number'
      ? `${Number((100 * value).toFixed(2))} % (dry basis)`
      : String(value);

export function disagreements(rows: readonly Row[], known: Known): { problems: Problem[]; notes: string[] } {
  const problems: Problem[] = [];
  const wrong = (line: number, column: string, value: string, expected: string) =>
    problems.push({ line, column, value, message: `invalid ${column}: ${value}, ${expected}`, expected });
  const first = new Map<string, Row>();
  const codes = new Map<string, number>();
  let containers = 0;
  for (const row of rows) {
    containers += row.count;
    const key = lotKey(row);
    const before = first.get(key);
    if (!before) first.set(key, { ...row });
    else {
      for (const [fact, word] of lotFacts) {
        if (row[fact] === null) continue;
        if (before[fact] === null) Object.assign(before, { [fact]: row[fact] });
        else if (!same(before[fact], row[fact]))
          wrong(row.line, word, spoken(row[fact]), `${spoken(before[fact])}, as lot ${row.lotNumber} has above`);
      }
    }
    const code = row.oldCode?.toLowerCase();
    if (code === undefined) continue;
    const other = codes.get(code);
    if (other !== undefined) wrong(row.line, 'code until now', row.oldCode ?? '', `another code: line ${other} has it`);
    else codes.set(code, row.line);
  }
  if (containers > mostContainers) {
    const expected = `at most ${mostContainers} containers in one list`;
    problems.push({
      line: null,
      column: null,
      value: String(containers),
      message: `invalid list: ${containers} containers, ${expected}`,
      expected,
    });
  }
  const notes = [...first].flatMap(([key, { sorbent, lotNumber }]) => {
    const there = known.lots.get(key) ?? 0;
    return there === 0
      ? []
      : [
          `lot ${lotNumber} of ${sorbent} is on the book with ${there === 1 ? 'one container' : `${there} containers`} already: more of it comes in`,
        ];
  });
  return { problems, notes };
}
