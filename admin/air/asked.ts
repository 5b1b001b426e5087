// What a file leaves open, as questions in place, and what the answers become.
import type { Answers, Asks, Understood } from './questions.ts';

export type Question = Understood['questions'][number];

/** The questions to show: those that are open, and those answered here, so that an answer can be changed. */
export function questionsToShow(open: readonly Question[], before: readonly Question[], answers: Answers): Question[] {
  const kept = before.filter(
    (question) => isAnswered(question.asks, answers) && !open.some(({ asks }) => asks === question.asks),
  );
  return [...kept, ...open];
}

function isAnswered(asks: Asks, answers: Answers): boolean {
  return asks === 'start'
    ? answers.start !== undefined && answers.everySeconds !== undefined
    : answers[asks] !== undefined;
}

/** "dates: is 03/04/2026 …?" without the field's name in front. */
export const questionWords = ({ about }: Question): string => {
  const plain = about.replace(/^\w+: /, '');
  return plain.charAt(0).toUpperCase() + plain.slice(1);
};

/** The answers with a choice made; columns without a name are answered one after another. */
export function withAnswer(answers: Answers, asks: Asks, choice: string): Answers {
  if (asks === 'quantity') return { ...answers, quantity: [...(answers.quantity ?? []), choice] };
  if (asks === 'start') {
    const [, start, seconds] = /^(.+) every (\d+) s$/.exec(choice) ?? [];
    return start === undefined ? answers : { ...answers, start, everySeconds: Number(seconds) };
  }
  return { ...answers, [asks]: choice };
}

export const answerTo = (answers: Answers, asks: Asks): string | undefined =>
  asks === 'quantity' || asks === 'start' ? undefined : answers[asks];
