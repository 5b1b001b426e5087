// Tells the API an act that waited, and says how that ended.
import { correctionText, eventText, events, type EventName } from '../act/acts.ts';
import { actText, Failed, tell, Unreachable } from '../ask.ts';
import { driedAct, requestDryingAct, withdrawAct } from '../dry/acts.ts';
import type { Recorded } from '../fields.ts';
import type { Outcome, Waiting } from './queue.ts';

const drying = [requestDryingAct, withdrawAct, driedAct];

function textOf(act: string): string {
  if (act === 'correctEvent') return correctionText;
  const known = drying.find(({ name }) => name === act);
  if (known) return actText(known.name, known.success, known.answer);
  if (act in events) return eventText(act as EventName);
  throw new Failed(`this page does not know how to tell ${act}`);
}

export interface Ending {
  outcome: Outcome;
  /** What the book says now, of an event of a container's timeline. */
  recorded: Recorded | null;
}

export async function tellWaiting({ act, input, key, by }: Waiting): Promise<Ending> {
  try {
    const { done, refused } = await tell<Recorded & { id?: string }>(act, textOf(act), input, key, by);
    if (refused) return { outcome: { kind: 'refused', refusal: refused }, recorded: null };
    if (!('event' in done)) return { outcome: { kind: 'done', id: done['id'] ?? null }, recorded: null };
    return { outcome: { kind: 'done', id: done.event.id }, recorded: done };
  } catch (error) {
    if (error instanceof Unreachable) return { outcome: { kind: 'unanswered', left: error.hasLeft }, recorded: null };
    const message = error instanceof Error ? error.message : String(error);
    return { outcome: { kind: 'failed', message }, recorded: null };
  }
}
