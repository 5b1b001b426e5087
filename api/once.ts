// What is worked out once, however many ask: by all fields of a request, or in the course of one act.
import type { Context } from './context.ts';

/** Gives the answer of what is asked, made by `make` when it is asked for first. */
export function onceEach<Answer, Asked extends readonly unknown[]>(
  make: (...asked: Asked) => Promise<Answer>,
  keyOf: (...asked: Asked) => string = (...asked) => asked.join(' '),
) {
  const answers = new Map<string, Promise<Answer>>();
  return (...asked: Asked): Promise<Answer> => {
    const key = keyOf(...asked);
    const answer = answers.get(key) ?? make(...asked);
    answers.set(key, answer);
    return answer;
  };
}

/** The same for as long as a request lasts. What is written in between drops it, as it drops the loaders. */
export function onceARequest<Answer, Asked extends readonly unknown[]>(
  make: (context: Context, ...asked: Asked) => Promise<Answer>,
  keyOf?: (...asked: Asked) => string,
) {
  const requests = new WeakMap<Context['load'], (...asked: Asked) => Promise<Answer>>();
  return (context: Context, ...asked: Asked): Promise<Answer> => {
    const each = requests.get(context.load) ?? onceEach((...of: Asked) => make(context, ...of), keyOf);
    requests.set(context.load, each);
    return each(...asked);
  };
}
