// An act with a pasted table: told once, answered with what was written or with everything that is wrong, by line.
import type { Act } from '../act/told.ts';
import { actText, tell, untoldWords, type Refusal } from '../ask.ts';
import type { Fields } from '../shape.ts';

export type Refused = Refusal;

export async function tellTable<Done>(
  { name, success, answer }: Act<Fields, Fields>,
  input: object,
  key: string = crypto.randomUUID(),
): Promise<{ done: Done; refused: null } | { done: null; refused: Refused }> {
  try {
    const text = actText(name, success, answer, ' problems { line message expected }');
    return await tell<Done>(name, text, input, key, undefined, 60_000);
  } catch (error) {
    return { done: null, refused: { message: untoldWords(error), path: '', expected: '' } };
  }
}
