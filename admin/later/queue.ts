// What waits to be told: in order for each container, each under its own client key, so that nothing is written twice.
import type { Refusal } from '../ask.ts';

/** An act that was made and that no answer has settled yet. */
export interface Waiting {
  /** Its client key: sent again under the same one, it is written once. */
  key: string;
  /** The mutation that tells it. */
  act: string;
  input: Record<string, unknown>;
  /** The container it is about; acts of one container keep their order. */
  label: string;
  /** What else keeps its order, where it is about no one container. */
  thread?: string | undefined;
  /** What was done, as a person says it. */
  words: string;
  /** When it happened. */
  at: string;
  /** Who did it: a short name, or nobody's. */
  by: string;
  /** A request with it went out and was not answered: it may be written already. */
  left: boolean;
  /** Names the only attempt to send it so far, which alone can say that nothing left; empty when there was another. */
  attempt: string;
  /** Why it was refused; it waits for the person, and what came after it on the same container waits with it. */
  question: Refusal | null;
  /** What the server said when it could not. */
  fault: string;
  tries: number;
  /** Not to be sent before this instant, ms. */
  notBefore: number;
  /** What to do once it is known to be written: take it back, or put it at another time. */
  afterwards: { void: true } | { at: string } | null;
}

export type Queue = readonly Waiting[];

/** How an attempt to tell it ended. */
export type Outcome =
  | { kind: 'done'; id: string | null }
  | { kind: 'refused'; refusal: Refusal }
  | { kind: 'failed'; message: string }
  | { kind: 'unanswered'; left: boolean };

const SHORTEST_PAUSE_MS = 2_000;
const LONGEST_PAUSE_MS = 60_000;

/** Pauses that double, up to a minute. */
export const pauseMs = (tries: number): number => Math.min(LONGEST_PAUSE_MS, SHORTEST_PAUSE_MS * 2 ** (tries - 1));

export const joined = (queue: Queue, one: Waiting): Queue =>
  queue.some(({ key }) => key === one.key) ? queue : [...queue, one];

/** Those of which one waits for the other. */
export const threadOf = ({ thread, label }: Pick<Waiting, 'thread' | 'label'>): string => thread ?? label;

/** The first of each container: those behind it wait for it. */
const heads = (queue: Queue): Waiting[] => [
  ...new Map([...queue].reverse().map((one) => [threadOf(one), one])).values(),
];

/** The next to send; null when none may go now. */
export function nextOf(queue: Queue, nowMs: number): Waiting | null {
  const ready = new Set(heads(queue).filter(({ question, notBefore }) => question === null && notBefore <= nowMs));
  return queue.find((one) => ready.has(one)) ?? null;
}

/** When the next may go, ms; null when all that is left waits for the person. */
export function dueAt(queue: Queue): number | null {
  const times = heads(queue).flatMap(({ question, notBefore }) => (question ? [] : [notBefore]));
  return times.length === 0 ? null : Math.min(...times);
}

const changed = (queue: Queue, key: string, change: (one: Waiting) => Waiting | null): Queue =>
  queue.flatMap((one) => (one.key === key ? (change(one) ?? []) : [one]));

/** A request with it goes out now. */
export const leaving = (queue: Queue, key: string, attempt: string): Queue =>
  changed(queue, key, (one) => ({ ...one, left: true, attempt: one.left ? '' : attempt }));

/** Everything may be tried again at once: the server answers. */
export const hurried = (queue: Queue): Queue =>
  queue.some(({ fault, notBefore }) => fault !== '' && notBefore > 0)
    ? queue.map((one) => (one.fault === '' ? one : { ...one, notBefore: 0 }))
    : queue;

/** What takes ticks back. */
export function unticked<W extends Pick<Waiting, 'act' | 'input' | 'words'>>(one: W): W {
  const { id, ids = [id] } = one.input;
  return { ...one, act: 'untickSteps', input: { ids }, words: `taken back: ${one.words}` };
}
export const isTick = (act: string): boolean => act === 'tickStep' || act === 'tickSteps';

/** The act that follows one which is written, to make of it what the person meant since. */
function following(one: Waiting, id: string, key: string): Waiting | null {
  const { afterwards } = one;
  const begun = { ...one, key, left: false, question: null, fault: '', tries: 0, notBefore: 0, afterwards: null };
  if (afterwards === null) return null;
  if (one.act === 'requestDrying')
    return 'void' in afterwards ? { ...begun, act: 'withdrawDrying', input: { id }, words: 'off the list' } : null;
  if (one.act === 'withdrawDrying') return null;
  if (isTick(one.act)) return 'void' in afterwards ? unticked(begun) : null;
  if ('void' in afterwards)
    return { ...begun, act: 'correctEvent', input: { event: id, void: true }, words: `taken back: ${one.words}` };
  return { ...begun, act: 'correctEvent', input: { event: id, replacement: afterwards }, at: afterwards.at };
}

function refused(one: Waiting, refusal: Refusal): Waiting | null {
  // A refused act is not written, whatever was thought before.
  const known = { ...one, left: false, fault: '', tries: 0, notBefore: 0, afterwards: null };
  if (one.afterwards === null) return { ...known, question: refusal };
  return 'void' in one.afterwards ? null : retimedInput(known, one.afterwards.at);
}

/** It was answered through another tab, and perhaps changed by the person, since this attempt went out. */
const isPast = (one: Waiting, sent: Waiting): boolean =>
  one.question !== null || JSON.stringify(one.input) !== JSON.stringify(sent.input);

/** What an answer makes of the queue; one that is no longer in it changes nothing. */
export function settled(queue: Queue, sent: Waiting, outcome: Outcome, nowMs: number, newKey: () => string): Queue {
  return changed(queue, sent.key, (one) => {
    if (outcome.kind === 'done') return outcome.id === null ? null : following(one, outcome.id, newKey());
    if (isPast(one, sent)) return one;
    if (outcome.kind === 'refused') return refused(one, outcome.refusal);
    if (outcome.kind === 'unanswered')
      return { ...one, left: outcome.left || one.attempt === '' || one.attempt !== sent.attempt, notBefore: 0 };
    const tries = one.tries + 1;
    return { ...one, fault: outcome.message, tries, notBefore: nowMs + pauseMs(tries) };
  });
}

/** The person takes it out. What may be written already is taken back once that is known. */
export const dropped = (queue: Queue, key: string): Queue =>
  changed(queue, key, (one) => (one.left ? { ...one, afterwards: { void: true } } : null));

function retimedInput(one: Waiting, at: string): Waiting {
  const { replacement } = one.input as { replacement?: object };
  const input = replacement ? { ...one.input, replacement: { ...replacement, at } } : { ...one.input, at };
  return { ...one, input, at, question: null, notBefore: 0 };
}

/** It happened at another time. */
export const retimed = (queue: Queue, key: string, at: string): Queue =>
  changed(queue, key, (one) => (one.left ? { ...one, at, afterwards: { at } } : retimedInput(one, at)));

/** The answer to a question: told anew with other figures. */
export const reworded = (queue: Queue, key: string, figures: Record<string, unknown>, words: string): Queue =>
  changed(queue, key, (one) =>
    one.left ? one : { ...one, input: { ...one.input, ...figures }, words, question: null, notBefore: 0 },
  );

/** The answer to a question: told once more as it is. */
export const askedAgain = (queue: Queue, key: string): Queue =>
  changed(queue, key, (one) => ({ ...one, question: null, fault: '', tries: 0, notBefore: 0 }));
