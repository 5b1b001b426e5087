/** What the times of a file leave open. */
import type { Answers, DateOrder, Question } from './file.ts';
import type { Timed } from './merge.ts';
import type { Dates } from './moment.ts';
import { midnightOf } from './order.ts';
import { standardZone } from './zone.ts';

export function questionsOfTime(
  parts: readonly Timed[],
  dates: Dates,
  open: readonly DateOrder[],
  answers: Answers,
): Question[] {
  const questions: Question[] = [];
  if (open.length > 1)
    questions.push({ asks: 'dates', about: `dates: is ${example(dates, open)} ${joined(open)}?`, choices: [...open] });
  const zone = parts.map((part) => zoneQuestion(part, answers)).find((question) => question !== null);
  if (zone) questions.push(zone);
  const timeless = parts.find(({ section }) => section.clock.kind === 'none');
  if (timeless && (answers.start === undefined || answers.everySeconds === undefined))
    questions.push(startQuestion(timeless));
  return questions;
}

/** A date that the orders read differently. */
function example(dates: Dates, open: readonly DateOrder[]): string {
  const texts = [...dates.places.keys()];
  const index = dates.written.findIndex((date) => new Set(open.map((order) => midnightOf(date, order))).size > 1);
  return texts[index] ?? texts[0] ?? '';
}

function joined(open: readonly DateOrder[]): string {
  return open.map((order) => order.replace('-', ' ')).join(' or ');
}

/** Readings within an hour that the lab's clocks skipped: this logger's clock was not set forward, perhaps all summer. */
function zoneQuestion({ section, zone, at, skipped }: Timed, answers: Answers): Question | null {
  if (skipped === 0 || answers.zone !== undefined || section.facts.zone !== null) return null;
  const near = at.find((ms) => !Number.isNaN(ms)) ?? 0;
  return {
    asks: 'zone',
    about: `zone: readings in an hour that clocks in ${zone.name} skipped; was the logger set forward?`,
    choices: [zone.name, standardZone(zone, near).name],
  };
}

function startQuestion({ section }: Timed): Question {
  const { start, everySeconds } = section.facts;
  const choices = start !== null && everySeconds !== null ? [`${start} every ${everySeconds} s`] : [];
  return {
    asks: 'start',
    about: 'start: the file has no times; when was its first row read, and how many seconds lie between rows?',
    choices,
  };
}
