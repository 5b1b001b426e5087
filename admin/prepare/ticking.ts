// Ticks a step, or takes a tick back: through the queue of this machine, so that it is kept where there is no network.
import { recordAct } from '../act/record.svelte.ts';
import type { Refusal } from '../ask.ts';
import { momentNow } from '../lab.svelte.ts';
import { count } from '../say/words.ts';
import type { SheetLine } from './questions.ts';

/** Ticks of one need keep their order, also while they wait to be sent. */
const threadOf = (needId: string): string => `need ${needId}`;

export const tickStep = (
  { step, need }: SheetLine,
  how: Record<string, unknown> = {},
  key?: string,
): Promise<Refusal | null> => {
  const at = typeof how['at'] === 'string' ? how['at'] : momentNow().toISOString();
  const words = `ticked: ${step.name}, ${need.forWhom}`;
  const act = { act: 'tickStep', label: '', thread: threadOf(need.id), input: { id: step.id, ...how, at }, words, at };
  return recordAct(act, key);
};

export const tickSteps = (
  input: { ids: string[]; except?: string[]; at?: string; asPlanned?: boolean; note?: string },
  key?: string,
): Promise<Refusal | null> => {
  const not = input.except?.length ?? 0;
  const words = `ticked: ${count(input.ids.length - not, 'step')}, done as printed${not > 0 ? `; ${not} not done, planned anew` : ''}`;
  return recordAct({ act: 'tickSteps', label: '', thread: 'needs', input, words, at: input.at }, key);
};

/** Of a need whose time is over: it was handed over. */
export const handedOver = (step: string, forWhom: string): Promise<Refusal | null> =>
  recordAct({
    act: 'tickStep',
    label: '',
    thread: threadOf(step),
    input: { id: step },
    words: `handed over: ${forWhom}`,
  });
