// Tells the API an act that waited, and says how that ended.
import { correctionText, eventText, events, type EventName } from '../act/acts.ts';
import { actText, Failed, tell, Unreachable } from '../ask.ts';
import { driedAct, requestDryingAct, withdrawAct } from '../dry/acts.ts';
import type { Recorded } from '../fields.ts';
import { tickStepAct, tickStepsAct, untickStepsAct } from '../prepare/acts.ts';
import type { Outcome, Waiting } from './queue.ts';

const others = [requestDryingAct, withdrawAct, driedAct, tickStepAct, tickStepsAct, untickStepsAct];

function textOf(act: string): string {
  if (act === 'correctEvent') return correctionText;
  const known = others.find(({ name }) => name === act);
  if (known) return actText(known.name, known.success, known.answer);
  if (act in events) return eventText(act as EventName);
  throw new Failed(`this page does not know how to tell ${act}`);
}

export interface Ending {
  outcome: Outcome;
  /** What the book says now, of an event of a container's timeline. */
  recorded: Recorded | null;
  /** What is to be known of an act that is no event of one container. */
  notes?: string[];
}

interface Others {
  id?: string;
  steps?: { id: string }[];
  notes?: string[];
}

export async function tellWaiting({ act, input, key, by }: Waiting): Promise<Ending> {
  try {
    const { done, refused } = await tell<Recorded | Others>(act, textOf(act), input, key, by);
    if (refused) return { outcome: { kind: 'refused', refusal: refused }, recorded: null };
    if (!('event' in done)) {
      const id = done.id ?? done.steps?.[0]?.id ?? null;
      return { outcome: { kind: 'done', id }, recorded: null, notes: done.notes ?? [] };
    }
    return { outcome: { kind: 'done', id: done.event.id }, recorded: done };
  } catch (error) {
    if (error instanceof Unreachable) return { outcome: { kind: 'unanswered', left: error.hasLeft }, recorded: null };
    const message = error instanceof Error ? error.message : String(error);
    return { outcome: { kind: 'failed', message }, recorded: null };
  }
}
