// Where the columns are named, and what each name says.
import { fields, headingWords, plain, type Field } from './fields.ts';
import { cellText, isEmptyRow, shown, type Cell, type Sheet } from './sheet.ts';
import type { Question } from './questions.ts';

/** Rows in which the headings are looked for. */
const lookedAt = 15;
const offered = 4;

export interface Said {
  field: Field;
  /** How well the heading says so: the whole of it, or a part. */
  score: number;
}

/** What a heading could say, best first. */
export function saidBy(heading: string): Said[] {
  const bare = plain(heading.replace(/[([{].*?[)\]}]/g, ' ').replace(/\/\s*(k?g|mg|mm|cm|%)\s*$/i, ' '));
  const text = bare
    .replace(/(^| )(g|kg|mg|mm|cm|%|in)(?= |$)/g, ' ')
    .replace(/ +/g, ' ')
    .trim();
  if (text === '' || text.length > 60) return [];
  const padded = ` ${text} `;
  return fields
    .flatMap((field): Said[] => {
      const scores = headingWords[field].map((word) =>
        word === text || word === bare ? 100 : padded.includes(` ${word} `) ? word.length : 0,
      );
      const score = Math.max(...scores);
      return score > 1 ? [{ field, score }] : [];
    })
    .sort((one, other) => other.score - one.score);
}

const scoreOf = (row: readonly Cell[]): number =>
  row.filter((cell) => typeof cell === 'string' && saidBy(cell).length > 0).length;

export interface Heading {
  /** The row of the headings; -1 where there is none. */
  at: number;
  names: string[];
  question: Question | null;
}

const namesIn = (row: readonly Cell[] | undefined): string[] => (row ?? []).map((cell) => shown(cell));

/** The headings as somebody answered, else the row that speaks most like headings; asked where none does. */
export function headingOf({ rows, lines }: Sheet, answered: string | null): Heading {
  if (answered === 'none') return { at: -1, names: [], question: null };
  const said = answered === null ? -1 : lines.indexOf(Number(answered));
  if (said >= 0) return { at: said, names: namesIn(rows[said]), question: null };
  const scores = rows.slice(0, lookedAt).map(scoreOf);
  const best = Math.max(0, ...scores);
  if (best >= 2) {
    const at = scores.indexOf(best);
    return { at, names: namesIn(rows[at]), question: null };
  }
  const first = rows.slice(0, offered).filter((row) => !isEmptyRow(row));
  const choices = first.map((row, at) => ({
    answer: String(lines[at] ?? at + 1),
    words: `line ${lines[at] ?? at + 1}: ${row.map(cellText).filter(Boolean).slice(0, 5).map(shown).join(', ')}`,
  }));
  const question: Question = {
    key: 'headings',
    about: 'Which line names the columns?',
    choices: [...choices, { answer: 'none', words: 'none: it begins with what is on the shelf' }],
  };
  return { at: -1, names: [], question };
}
