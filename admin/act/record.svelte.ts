// Tells an act, keeps the last one for undo, and lets every screen know what it changed.
import { untoldWords, tell, type Refusal, type Told } from '../ask.ts';
import type { Line, Recorded } from '../fields.ts';
import { correctionText, eventText, type EventInput, type EventName } from './acts.ts';

export interface Lately {
  /** What was done, in words. */
  words: string;
  label: string;
  /** The event that undo takes back; null when it was an undo itself, or cannot be taken back. */
  eventId: string | null;
  notes: string[];
  /** A container that came of it. */
  made: string | null;
}

let lately = $state.raw<Lately | null>(null);
let busy = $state(0);

export const record = {
  get lately(): Lately | null {
    return lately;
  },
  get busy(): boolean {
    return busy > 0;
  },
};

export const say = (words: string, label = ''): void => {
  lately = { words, label, eventId: null, notes: [], made: null };
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

async function told(run: () => Promise<Told<Recorded>>): Promise<Told<Recorded>> {
  busy += 1;
  try {
    const answer = await run();
    if (answer.done) for (const listener of listeners) listener(answer.done.container);
    return answer;
  } catch (error) {
    return { done: null, refused: { message: untoldWords(error), path: '', expected: '' } };
  } finally {
    busy -= 1;
  }
}

export const newKey = (): string => crypto.randomUUID();

/**
 * Tells an event. The key stays the same when a form is sent again after no answer came, so that
 * what did arrive the first time is not written twice.
 */
export async function tellEvent<N extends EventName>(
  name: N,
  input: EventInput<N>,
  key: string = newKey(),
): Promise<Refusal | null> {
  const { done, refused } = await told(() => tell<Recorded>(name, eventText(name), input, key));
  if (refused) return refused;
  const { event, container, made, notes } = done;
  lately = { words: event.sentence, label: container.label, eventId: event.id, notes, made: made?.label ?? null };
  return null;
}

async function correct(input: object, words: (recorded: Recorded) => Lately): Promise<Refusal | null> {
  const { done, refused } = await told(() => tell<Recorded>('correctEvent', correctionText, input, newKey()));
  if (refused) return refused;
  lately = words(done);
  return null;
}

/** Takes an event back; it stays on the timeline, struck through. */
export const undo = (eventId: string): Promise<Refusal | null> =>
  correct({ event: eventId, void: true }, ({ container, notes }) => {
    return { words: 'Taken back', label: container.label, eventId: null, notes, made: null };
  });

/** Puts an event at another time, or gives it another note; the old one stays on the timeline, struck through. */
export const amend = (eventId: string, replacement: { at?: string; note?: string }): Promise<Refusal | null> =>
  correct({ event: eventId, replacement }, ({ event, container, notes }) => {
    return { words: event.sentence, label: container.label, eventId: event.id, notes, made: null };
  });
