// What a person answers where a file leaves something open, checked.
import { z } from 'zod';
import { Refused } from '../errors.ts';
import { answerRefused } from './logger/answers.ts';
import type { Answers } from './logger/file.ts';

/** The file's answers as they come in; the lab's zone is added by the lab. */
export const answersInput = z.object({
  zone: z.string('a zone such as Europe/Helsinki or UTC+02:00').nullish(),
  dates: z.enum(['day-first', 'month-first', 'year-first'], 'day-first, month-first or year-first').nullish(),
  unit: z.enum(['C', 'F', 'K'], 'C, F or K').nullish(),
  humidity: z.enum(['percent', 'fraction'], 'percent or fraction').nullish(),
  quantity: z.array(z.enum(['temperature', 'humidity'], 'temperature or humidity')).nullish(),
  start: z.string('a time such as 2026-03-02T08:00').nullish(),
  everySeconds: z.number('seconds from 1 to 86400').nullish(),
});
export type AnswersInput = z.output<typeof answersInput>;

/** The importer's answers. Refuses what it could not use; `under` names where they came in. */
export function answersOf(input: AnswersInput | null | undefined, labZone: string, under: string): Answers {
  const given = Object.entries(input ?? {}).filter(([, value]) => value !== null && value !== undefined);
  const answers: Answers = { ...Object.fromEntries(given), labZone };
  const refused = answerRefused(answers);
  if (refused) throw new Refused(refused.message, under ? `${under}.${refused.path}` : refused.path, refused.expected);
  return answers;
}
