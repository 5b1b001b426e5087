// What was run, the sorbent and compound that the address means, and the answer to a question about it.
import { ask, problemWords } from '../ask.ts';
import { looking } from '../looking.svelte.ts';
import { here } from '../route.svelte.ts';
import { chosenOf } from './choice.ts';
import { referencesQuestion, type Reference } from './questions.ts';

/** Asks about the chosen one, again whenever another is chosen. `shown` is an answer with what it is of: never of another. */
export function aboutChosen<Answer>(look: (of: Reference) => Promise<Answer>) {
  let references = $state.raw<readonly Reference[] | null>(null);
  let shown = $state.raw<{ of: Reference; answer: Answer } | null>(null);
  let problem = $state('');
  const chosen = $derived(chosenOf(references ?? [], here.search.get('of')));

  async function lookThrough(): Promise<void> {
    try {
      references = (await ask(referencesQuestion, {})).referenceCompounds;
      problem = '';
    } catch (error) {
      problem = problemWords(error);
    }
  }
  looking(lookThrough, () => problem !== '');
  $effect(() => {
    const of = chosen;
    if (!of) return;
    let gone = false;
    look(of).then(
      (answer) => {
        if (!gone) shown = { of, answer };
      },
      (error: unknown) => {
        if (!gone) problem = problemWords(error);
      },
    );
    return () => {
      gone = true;
    };
  });
  return {
    get references() {
      return references;
    },
    get chosen() {
      return chosen;
    },
    get shown() {
      return shown;
    },
    get problem() {
      return problem;
    },
  };
}
