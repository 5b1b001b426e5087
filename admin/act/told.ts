// An act beside the timeline's events (a room is added, a lot comes in), told once and answered or refused.
import { actText, untoldWords, tell, type Told } from '../ask.ts';
import type { Answer, Fields, InputOf } from '../shape.ts';

export interface Act<I extends Fields, S extends Fields> {
  readonly name: string;
  /** The success type of its answer. */
  readonly success: string;
  readonly input: I;
  readonly answer: S;
}

/** Declares an act; the test that holds the admin against the schema finds it where it is exported. */
export const act = <I extends Fields, S extends Fields>(
  name: string,
  success: string,
  input: I,
  answer: S,
): Act<I, S> => {
  return { name, success, input, answer };
};

/** Acts that nobody answered, by what they say; told again as they were, they go under the same key and are written once. */
const unanswered = new Map<string, { key: string; since: number }>();

/** After so long the same again is meant as another one, ms. */
const SAME_MS = 600_000;

/**
 * Sends an act under a key that a repeat of it finds again: the one that is given, else that of the same act a moment
 * ago which nobody answered. No answer comes back as a refusal too.
 */
export async function tellOnce<Done>(
  name: string,
  input: object,
  given: string | undefined,
  send: (key: string) => Promise<Told<Done>>,
): Promise<Told<Done>> {
  const same = JSON.stringify([name, input]);
  const before = unanswered.get(same);
  const isRecent = before !== undefined && Date.now() - before.since < SAME_MS;
  const key = given ?? (isRecent ? before.key : crypto.randomUUID());
  try {
    const told = await send(key);
    unanswered.delete(same);
    return told;
  } catch (error) {
    unanswered.set(same, { key, since: Date.now() });
    return { done: null, refused: { message: untoldWords(error), path: '', expected: '' } };
  }
}

/** Tells it; waits for an answer for `patienceMs`. */
export const tellAct = <I extends Fields, S extends Fields>(
  { name, success, answer }: Act<I, S>,
  input: InputOf<I>,
  key?: string,
  patienceMs?: number,
): Promise<Told<Answer<S>>> =>
  tellOnce(name, input, key, (under) =>
    tell<Answer<S>>(name, actText(name, success, answer), input, under, undefined, patienceMs),
  );
