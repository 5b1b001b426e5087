// What several fields of one request ask for, worked out once.
import type { Context } from '../context.ts';

/** Gives the answer for a key, made by `make` when this request asks for it first. */
export function onceARequest<Answer>(make: (context: Context, key: string) => Promise<Answer>) {
  const requests = new WeakMap<Context, Map<string, Promise<Answer>>>();
  return (context: Context, key: string): Promise<Answer> => {
    const answers = requests.get(context) ?? new Map<string, Promise<Answer>>();
    requests.set(context, answers);
    const answer = answers.get(key) ?? make(context, key);
    answers.set(key, answer);
    return answer;
  };
}
