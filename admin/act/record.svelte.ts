// Records an act: told at once, kept and told later when nobody answers; the last one is at hand for undo.
import { v4 } from 'uuid';
import { acting, type Refusal } from '../ask.ts';
import type { Line, Recorded } from '../fields.ts';
import { momentNow } from '../lab.svelte.ts';
import { change, later, onSent, send } from '../later/later.svelte.ts';
import { dropped, isTick, joined, retimed, settled, threadOf, unticked, type Waiting } from '../later/queue.ts';
import { tellWaiting, type Ending } from '../later/telling.ts';
import { actWords } from '../later/words.ts';
import type { EventInput, EventName } from './acts.ts';

export interface Lately {
  /** What was done, in words. */
  words: string;
  label: string;
  /** The event that undo takes back; null when it was an undo itself, or cannot be taken back. */
  eventId: string | null;
  /** The key of an act that waits to be sent; undo takes it out. */
  waiting: string | null;
  /** It is being told right now. */
  isUnderWay: boolean;
  notes: string[];
  /** A container that came of it. */
  made: string | null;
  /** The act that puts it back, for what is no event of a timeline. */
  back: Back | null;
}

export type Back = () => Promise<Refusal | null>;

const plain = { eventId: null, waiting: null, isUnderWay: false, notes: [], made: null, back: null };

let lately = $state.raw<Lately | null>(null);

export const record = {
  get lately(): Lately | null {
    return lately;
  },
};

export const say = (words: string, label = '', back: Back | null = null): void => {
  lately = { ...plain, words, label, back };
};
export const dismiss = (): void => {
  lately = null;
};

type Listener = (changed: Line) => void;
const listeners = new Set<Listener>();

/** Hears of every container that an act changed; returns how to stop. */
export function onChanged(listener: Listener): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export const newKey = (): string => v4();

const latelyOf = ({ act, input, words }: Waiting, recorded: Recorded): Lately => {
  const isBack = act === 'correctEvent' && Boolean(input['void']);
  const { event, container, made, notes } = recorded;
  return {
    ...plain,
    words: isBack ? words : event.sentence,
    label: container.label,
    eventId: isBack ? null : event.id,
    notes,
    made: made?.label ?? null,
  };
};

/** What was told, as it is said once it is written; a tick can be taken back. */
function writtenOf(one: Waiting, { recorded, notes = [] }: Ending): Lately {
  if (recorded) return latelyOf(one, recorded);
  const back = isTick(one.act) ? () => recordAct({ ...unticked(one), words: 'Taken back' }) : null;
  return { ...plain, words: one.words, label: one.label, notes, back };
}

onSent((one, ending) => {
  const { outcome, recorded } = ending;
  if (recorded) for (const listener of listeners) listener(recorded.container);
  if (lately?.waiting !== one.key || outcome.kind === 'unanswered' || outcome.kind === 'failed') return;
  if (outcome.kind === 'refused')
    lately = { ...plain, words: `Refused: ${one.words}. It is asked about`, label: one.label };
  else lately = writtenOf(one, ending);
});

/** While a form or a button waits for the answer, nobody else sends the same, ms. */
const HELD_MS = 20_000;

interface Act {
  act: string;
  label: string;
  /** What keeps its order with others, where it is about no one container. */
  thread?: string | undefined;
  input: Record<string, unknown>;
  words?: string;
  /** When it happened: now when not given. */
  at?: string | undefined;
}

/**
 * Records an act; answers the refusal, or null when it is written or waits to be. It is kept before it is told, so that
 * neither a closed tab nor an answer that got lost loses it, and under one key, so that it is written once. The time of
 * the tap goes with it from the start: sent later, it still happened then.
 */
export async function recordAct(made: Act, key: string = newKey()): Promise<Refusal | null> {
  const { act, label, thread, input, words = actWords(act, input) } = made;
  const at = made.at ?? momentNow().toISOString();
  const one: Waiting = {
    ...{ key, act, input, label, thread, words, at, by: acting() },
    ...{ left: false, attempt: '', question: null, fault: '', tries: 0, notBefore: 0, afterwards: null },
  };
  const kept: Lately = { ...plain, words, label, waiting: key };
  if (later.waiting.some((other) => threadOf(other) === threadOf(one))) {
    lately = kept;
    await change((queue) => joined(queue, one));
    void send();
    return null;
  }
  lately = { ...kept, words: 'Recording', waiting: null, isUnderWay: true };
  const held = { ...one, left: true, attempt: newKey(), notBefore: Date.now() + HELD_MS };
  const [ending] = await Promise.all([tellWaiting(held), change((queue) => joined(queue, held))]);
  const { outcome, recorded } = ending;
  const mine = lately?.isUnderWay && lately.label === label;
  if (outcome.kind === 'refused') {
    await change((queue) => queue.filter((other) => other.key !== key));
    if (mine) lately = null;
    void send();
    return outcome.refusal;
  }
  if (mine) lately = outcome.kind === 'done' ? writtenOf(one, ending) : kept;
  const settle = change((queue) => settled(queue, held, outcome, Date.now(), newKey));
  if (recorded) for (const listener of listeners) listener(recorded.container);
  void settle.then(send);
  return null;
}

/**
 * Tells an event. The key stays the same when a form is sent again after no answer came, so that
 * what did arrive the first time is not written twice.
 */
export function tellEvent<N extends EventName>(
  name: N,
  input: EventInput<N>,
  key: string = newKey(),
): Promise<Refusal | null> {
  const at = input.at ?? momentNow().toISOString();
  return recordAct({ act: name, label: input.label, input: { ...input, at }, at }, key);
}

const labelAtHand = (): string => lately?.label ?? '';

/** Takes an event back; it stays on the timeline, struck through. */
export const undo = (eventId: string, label = labelAtHand()): Promise<Refusal | null> =>
  recordAct({ act: 'correctEvent', label, input: { event: eventId, void: true }, words: 'Taken back' });

/** Puts an event at another time, or gives it another note; the old one stays on the timeline, struck through. */
export const amend = (
  eventId: string,
  replacement: { at?: string; note?: string },
  label = labelAtHand(),
): Promise<Refusal | null> => {
  const at = replacement.at === undefined ? {} : { at: replacement.at };
  return recordAct({ act: 'correctEvent', label, input: { event: eventId, replacement }, words: 'put right', ...at });
};

/** Takes back what was recorded last, written or still waiting; null when that is done. */
export async function undoLast(): Promise<Refusal | null> {
  if (lately?.eventId) return undo(lately.eventId);
  if (lately?.back) {
    const refused = await lately.back();
    if (!refused) say('Taken back');
    return refused;
  }
  const key = lately?.waiting;
  if (!key) return null;
  say(`Taken out: ${lately?.words ?? ''}`, lately?.label);
  await change((queue) => dropped(queue, key));
  return null;
}

/** Puts what was recorded last at an earlier time, written or still waiting. */
export async function putLastAt(at: string): Promise<Refusal | null> {
  if (lately?.eventId) return amend(lately.eventId, { at });
  const key = lately?.waiting;
  if (key) await change((queue) => retimed(queue, key, at));
  return null;
}
