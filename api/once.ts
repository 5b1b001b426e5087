// What several fields of one request ask for, worked out once. What is written in between drops it, as it drops the loaders.
import type { Context } from './context.ts';

/** Gives the answer of what is asked, made by `make` when this request asks for it first. */
export function onceARequest<Answer, Asked extends readonly unknown[]>(
  make: (context: Context, ...asked: Asked) => Promise<Answer>,
  keyOf: (...asked: Asked) => string = (...asked) => asked.join(' '),
) {
  const requests = new WeakMap<Context['load'], Map<string, Promise<Answer>>>();
  return (context: Context, ...asked: Asked): Promise<Answer> => {
    const answers = requests.get(context.load) ?? new Map<string, Promise<Answer>>();
    requests.set(context.load, answers);
    const key = keyOf(...asked);
    const answer = answers.get(key) ?? make(context, ...asked);
    answers.set(key, answer);
    return answer;
  };
}
