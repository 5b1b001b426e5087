// What a person said of a list: answers with one more, columns with one changed, and what of it holds for a mended list.
import type { Field } from './columns.ts';
import type { Answers, Asked, StockList } from './questions.ts';

export const noAnswers: Answers = { columns: [], given: [] };

export const withAnswer = (answers: Answers, question: string, answer: string): Answers => ({
  ...answers,
  given: [...answers.given.filter((one) => one.question !== question), { question, answer }],
});

export const withoutAnswer = (answers: Answers, question: string): Answers => ({
  ...answers,
  given: answers.given.filter((one) => one.question !== question),
});

/** Every open question answered by its first choice, which is the likeliest. */
export const withFirstChoices = (answers: Answers, questions: readonly Asked[]): Answers =>
  questions.reduce(
    (so, { question, choices: [first] }) => (first ? withAnswer(so, question, first.answer) : so),
    answers,
  );

/** One column is something else; no field is said of two columns. All columns are said then, as they stand. */
export function withColumn(columns: StockList['columns'], column: number, field: Field | null): Answers['columns'] {
  return columns.map((one) => {
    if (one.column === column) return { column, field };
    return { column: one.column, field: field !== null && one.field === field ? null : one.field };
  });
}

/** The headings by which a mended list is known to be the same one. */
export const headingsOf = ({ columns }: Pick<StockList, 'columns'>): string =>
  columns.map(({ heading }) => heading).join('\n');

type Wrong = StockList['problems'][number];

/** What is wrong, the problems of one line together, in the order of the lines. */
export function byLine(problems: readonly Wrong[]): { line: number | null; problems: Wrong[] }[] {
  const lines = new Map<number | null, Wrong[]>();
  for (const problem of problems) lines.set(problem.line, [...(lines.get(problem.line) ?? []), problem]);
  return [...lines].map(([line, together]) => ({ line, problems: together }));
}
