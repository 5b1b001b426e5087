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

/** Tells it. No answer at all, within `patienceMs`, comes back as a refusal too, with the same key to send again. */
export async function tellAct<I extends Fields, S extends Fields>(
  { name, success, answer }: Act<I, S>,
  input: InputOf<I>,
  key: string = crypto.randomUUID(),
  patienceMs?: number,
): Promise<Told<Answer<S>>> {
  try {
    return await tell<Answer<S>>(name, actText(name, success, answer), input, key, undefined, patienceMs);
  } catch (error) {
    return { done: null, refused: { message: untoldWords(error), path: '', expected: '' } };
  }
}
