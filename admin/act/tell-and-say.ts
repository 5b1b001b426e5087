// An act from a page: told, said at the foot with the way back, and looked at again after either.
import type { Refusal } from '../ask.ts';
import type { Answer, Fields, InputOf } from '../shape.ts';
import { say } from './record.svelte.ts';
import { tellAct, type Act } from './told.ts';

/** Tells it; `back` takes it back, and `again` looks anew after either. `label` is of the container it is about. */
export async function told<I extends Fields, S extends Fields>(
  one: Act<I, S>,
  input: InputOf<I>,
  words: (done: Answer<S>) => string,
  again: () => Promise<void>,
  back: ((done: Answer<S>) => Promise<{ refused: Refusal | null }>) | null = null,
  { key, label = '' }: { key?: string; label?: string } = {},
): Promise<Refusal | null> {
  const { done, refused } = await tellAct(one, input, key);
  if (refused) return refused;
  const takenBack = back
    ? async (): Promise<Refusal | null> => {
        const not = (await back(done)).refused;
        await again();
        return not;
      }
    : null;
  say(words(done), label, takenBack);
  await again();
  return null;
}
