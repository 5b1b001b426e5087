// The words about what waits to be sent.
import type { Clock } from '../say/state.ts';
import { spokenTime } from '../say/time.ts';
import { count } from '../say/words.ts';
import type { Waiting } from './queue.ts';

/** "3 wait to be sent, 1 question": what the frame says of the queue; nothing of an empty one. */
export function waitsWords(waiting: number, questions: number): string {
  const parts = [];
  if (waiting > 0) parts.push(`${waiting} ${waiting === 1 ? 'waits' : 'wait'} to be sent`);
  if (questions > 0) parts.push(`${count(questions, 'question')} to answer`);
  return parts.join(', ');
}

/** Why it was refused, without the value that was told, and with times as the lab's clock says them. */
export function whyNot(message: string, { now, zone }: Clock): string {
  const reason = message.replace(/^(invalid|unknown) [\w.]+: \S+, /, '');
  const spoken = (instant: string) => spokenTime(new Date(instant), now, zone);
  return reason
    .replaceAll(/\d{4}-\d\d-\d\dT[\d:.]+Z/g, spoken)
    .replaceAll(/(\d{4}-\d\d-\d\d) (\d\d:\d\d) UTC/g, (_, day: string, clock: string) => spoken(`${day}T${clock}:00Z`));
}

/** How it stands with one act. */
export function standing({ question, fault, left, tries, afterwards }: Waiting, isBehindQuestion: boolean): string {
  if (question) return 'refused; what do you mean by it?';
  if (afterwards && 'void' in afterwards)
    return 'it may have arrived before the answer got lost; it is taken back once Drumkeep answers';
  if (afterwards) return 'it may have arrived at its first time; it is put right once Drumkeep answers';
  if (fault) return `tried ${count(tries, 'time')}; Drumkeep answered: ${fault}`;
  if (isBehindQuestion) return 'waits until the question before it is answered';
  return left ? 'sent, but no answer came; it is sent again and written once' : 'waits to be sent';
}

/** The figure of an act that can be said anew, as its input names it. */
export type Amount = 'grams' | 'plates' | 'dryGrams' | 'grossGrams';

export function amountOf(input: Record<string, unknown>): { name: Amount; value: number } | null {
  for (const name of ['plates', 'grams', 'dryGrams', 'grossGrams'] as const) {
    const value = input[name];
    if (typeof value === 'number') return { name, value };
  }
  return null;
}

/** On a container's own line: the last thing that waits, and how many more. */
export function waitingWords(waiting: readonly Waiting[], { now, zone }: Clock): string {
  const last = waiting.at(-1);
  if (!last) return '';
  const asked = waiting.some(({ question }) => question !== null);
  const more = waiting.length > 1 ? ` and ${waiting.length - 1} more` : '';
  const isUnderWay = last.notBefore > 0 && last.fault === '';
  if (isUnderWay && waiting.length === 1) return 'recording …';
  const what = `${last.words} ${spokenTime(new Date(last.at), now, zone)}${more}`;
  return asked ? `${what}: a question to answer` : `${what}: not sent yet`;
}
