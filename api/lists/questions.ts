// What only a person can answer about a list. An answer is kept by the key of its question.
export type { Problem } from '../errors.ts';

export interface Choice {
  answer: string;
  words: string;
}

export interface Question {
  /** Stays the same while the list does: `dates`, `unit:AMOUNT`, `name:ROOM:cold store`. */
  key: string;
  about: string;
  /** The likeliest first; none is taken without being chosen. */
  choices: Choice[];
}

export interface Answers {
  /** What columns are, by their place from 0; null leaves one out. Others are guessed. */
  columns: { column: number; field: string | null }[];
  given: { question: string; answer: string }[];
}

export const noAnswers: Answers = { columns: [], given: [] };

export const answerTo = (answers: Answers, key: string): string | null =>
  answers.given.find(({ question }) => question === key)?.answer ?? null;

/** Answers of an earlier list under those given now. */
export const under = (earlier: Answers, now: Answers): Answers => ({
  columns: now.columns.length > 0 ? now.columns : earlier.columns,
  given: [...now.given, ...earlier.given.filter(({ question }) => answerTo(now, question) === null)],
});
