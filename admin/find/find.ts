// From a code to its container: asks the API, which reads labels with a forgiving eye.
import { ask, problemWords } from '../ask.ts';
import { containerPath, go } from '../route.svelte.ts';
import { whichQuestion } from './questions.ts';
import { labelIn } from './scanner.ts';

/** Goes to the container of a code; answers what to say when there is none. */
export async function goToCode(code: string): Promise<string | null> {
  try {
    const label = labelIn(code);
    const { which } = await ask(whichQuestion, { label });
    if (!which) return `Nothing here is called ${label}.`;
    go(containerPath(which.label));
    return null;
  } catch (error) {
    return problemWords(error);
  }
}
