// What a list says, as far as it and the answers so far tell: rows, what was left out, what is wrong, what is asked. Pure.
import { factsOf, type Column } from './facts.ts';
import { fields, fieldWord, isTotal, plain, type Field } from './fields.ts';
import { guessedFields } from './guess.ts';
import { headingOf } from './heading.ts';
import { lineRead, type Row } from './line.ts';
import { answerTo, type Answers, type Problem, type Question } from './questions.ts';
import { resolver, type Known, type Make } from './resolve.ts';
import { cellText, shown, type Cell, type Sheet, type Sheets } from './sheet.ts';
import { disagreements } from './agree.ts';

export interface LeftOut {
  line: number;
  why: string;
}

export interface MatchedColumn {
  column: number;
  heading: string;
  field: Field | null;
  samples: string[];
}

export interface Understood {
  sheets: string[];
  sheet: string | null;
  columns: MatchedColumn[];
  /** By which the match is remembered; null without headings. */
  headings: string | null;
  rows: Row[];
  /** Lines that would be rows once the questions are answered. */
  waiting: number;
  leftOut: LeftOut[];
  problems: Problem[];
  questions: Question[];
  makes: Make[];
  notes: string[];
}

const isField = (word: string | null): word is Field => (fields as readonly (string | null)[]).includes(word);
const shareable = ['SORBENT', 'LOT_NUMBER', 'ROOM'] as const;
type Shareable = (typeof shareable)[number];
export const unknownLot = 'not known';

function sheetOf({ sheets }: Sheets, answers: Answers): { sheet: Sheet | null; question: Question | null } {
  const [only] = sheets;
  if (sheets.length <= 1) return { sheet: only ?? null, question: null };
  const answer = answerTo(answers, 'sheet');
  const chosen = sheets.find(({ name }) => name === answer) ?? null;
  const choices = sheets.map(({ name, rows }) => ({
    answer: name ?? '',
    words: `${name ?? ''} (${rows.length} lines)`,
  }));
  return { sheet: chosen, question: chosen ? null : { key: 'sheet', about: 'Which sheet is the list?', choices } };
}

/** What an empty sorbent, lot or room means, where several lines leave it empty. */
function emptyQuestion(field: Shareable, lines: number, hasColumn: boolean, known: Known): Question {
  const above = hasColumn ? [{ answer: 'above', words: `the same ${fieldWord[field]} as the line above` }] : [];
  const names = { SORBENT: known.sorbents, LOT_NUMBER: [], ROOM: known.rooms }[field];
  const own = names.slice(0, 60).map((name) => ({ answer: `is:${name}`, words: hasColumn ? `all “${name}”` : name }));
  const lot =
    field === 'LOT_NUMBER'
      ? [{ answer: `is:${unknownLot}`, words: `nobody knows: book them as lot “${unknownLot}”` }]
      : [];
  const makes =
    field === 'ROOM' && names.length === 0 ? [{ answer: 'is:lab', words: 'all in one room: make a room “lab”' }] : [];
  const about = hasColumn
    ? `${lines} ${lines === 1 ? 'line says' : 'lines say'} no ${fieldWord[field]}: what is it?`
    : `No column says the ${fieldWord[field]}: what is it, for all lines?`;
  return { key: `empty:${field}`, about, choices: [...above, ...own, ...lot, ...makes] };
}

export function understand(read: Sheets, answers: Answers, known: Known): Understood {
  const { sheet, question: sheetQuestion } = sheetOf(read, answers);
  const nothing: Understood = {
    sheets: read.sheets.map(({ name }) => name ?? ''),
    sheet: sheet?.name ?? null,
    columns: [],
    headings: null,
    rows: [],
    waiting: 0,
    leftOut: [],
    problems: [],
    questions: sheetQuestion ? [sheetQuestion] : [],
    makes: [],
    notes: [],
  };
  if (!sheet) return nothing;
  const heading = headingOf(sheet, answerTo(answers, 'headings'));
  const width = Math.max(0, ...sheet.rows.map((row) => row.length));
  const below = sheet.rows.slice(heading.at + 1);
  const cellsOf = (column: number): Cell[] => below.map((row) => row[column] ?? '');
  const columns = Array.from({ length: width }, (_, column) => cellsOf(column));
  const guessed = guessedFields(heading.names, columns, {
    sorbents: known.sorbents,
    suppliers: known.suppliers,
    rooms: known.rooms,
    vessels: known.vessels.map(({ name }) => name),
  });
  const chosen = new Map(answers.columns.map(({ column, field }) => [column, isField(field) ? field : null]));
  const taken = new Set([...chosen.values()]);
  const match = guessed.map((field, column) =>
    chosen.has(column) ? (chosen.get(column) ?? null) : field !== null && taken.has(field) ? null : field,
  );
  const name = (column: number): string => heading.names[column] || `column ${column + 1}`;
  const matched = columns.map((cells, column): MatchedColumn => {
    const samples = [...new Set(cells.map(shown).filter(Boolean))].slice(0, 3);
    return { column, heading: heading.names[column] ?? '', field: match[column] ?? null, samples };
  });
  const used = matched.flatMap(({ column, field }): Column[] =>
    field === null ? [] : [{ field, heading: heading.names[column] ?? '', cells: columns[column] ?? [] }],
  );
  const { facts, questions } = factsOf(used, answers);
  const resolve = resolver(known, answers);
  const places = new Map<Field, number>(match.flatMap((field, column) => (field === null ? [] : [[field, column]])));

  const outcome = {
    ...nothing,
    columns: matched,
    rows: [] as Row[],
    leftOut: [] as LeftOut[],
    problems: [] as Problem[],
  };
  const above = new Map<Field, string>();
  const empties = new Map<Shareable, number>();
  const headings = plain(heading.names.join(' '));
  sheet.rows.slice(0, Math.max(0, heading.at)).forEach((_, at) => {
    outcome.leftOut.push({ line: sheet.lines[at] ?? at + 1, why: 'it stands above the headings' });
  });
  below.forEach((row, index) => {
    const line = sheet.lines[heading.at + 1 + index] ?? index + 1;
    const filled = row.map(cellText).filter((text) => text !== '');
    const leave = (why: string) => void outcome.leftOut.push({ line, why });
    if (filled.length === 0) return;
    if (headings !== '' && plain(row.map(cellText).join(' ')) === headings) return leave('the headings once more');
    const lotCell = row[places.get('LOT_NUMBER') ?? -1];
    if (isTotal(filled[0] ?? '') && cellText(lotCell) === '') return leave('a line of sums');
    if (filled.length === 1 && places.size > 2)
      return leave(`only “${shown(filled[0])}” stands in it: taken for a title`);
    const beyond =
      heading.at < 0 ? -1 : row.findIndex((cell, at) => at >= heading.names.length && cellText(cell) !== '');
    if (beyond >= 0) {
      const expected = `at most ${heading.names.length} cells, as the headings; a cell with a separator in it stands in quotes`;
      const value = shown(row[beyond]);
      outcome.problems.push({
        line,
        column: null,
        value,
        message: `invalid line: ${row.length} cells, ${expected}`,
        expected,
      });
      return;
    }
    const cells = new Map<Field, Cell>([...places].map(([field, column]) => [field, row[column] ?? '']));
    const missing = shareable.filter((field) => cellText(cells.get(field)) === '');
    const instead = (field: Field): string | null => {
      if (!shareable.includes(field as Shareable)) return null;
      const answer = answerTo(answers, `empty:${field}`);
      if (answer === 'above') return above.get(field) ?? null;
      return answer?.startsWith('is:') ? answer.slice(3) : null;
    };
    for (const field of shareable) {
      const text = cellText(cells.get(field));
      if (text !== '') above.set(field, text);
    }
    const result = lineRead(line, cells, {
      facts,
      known,
      resolve,
      is1904: sheet.is1904 ?? false,
      instead,
      headingOf: (field) => {
        const column = places.get(field);
        return column === undefined ? null : name(column);
      },
    });
    if ('row' in result) outcome.rows.push(result.row);
    else if ('leftOut' in result) leave(result.leftOut);
    else {
      const unsaid = missing.filter((field) => instead(field) === null);
      for (const field of unsaid) empties.set(field, (empties.get(field) ?? 0) + 1);
      // What no column says is one question, not a problem of every line.
      const own = result.problems.filter(
        ({ message }) =>
          !unsaid.some((field) => !places.has(field) && message.startsWith(`missing ${fieldWord[field]}`)),
      );
      outcome.problems.push(...own);
      if (own.length === 0) outcome.waiting += 1;
    }
  });
  const emptyQuestions = [...empties].map(([field, lines]) => emptyQuestion(field, lines, places.has(field), known));
  const lastly = disagreements(outcome.rows, known);
  return {
    ...outcome,
    headings: heading.at < 0 ? null : heading.names.map(plain).join('|').slice(0, 2000),
    problems: [...outcome.problems, ...lastly.problems].sort((a, b) => (a.line ?? 0) - (b.line ?? 0)),
    questions: [
      ...(heading.question ? [heading.question] : []),
      ...emptyQuestions,
      ...questions,
      ...resolve.questions.values(),
    ],
    makes: [...resolve.makes.values()],
    notes: lastly.notes,
  };
}
