// After a write, what the rest of a request reads is read anew.
import type { Context } from '../context.ts';
import { loadersOf } from '../loaders.ts';

export async function fresh<Answer>(context: Context, answer: Promise<Answer>): Promise<Answer> {
  const done = await answer;
  context.load = loadersOf(context.database.read);
  return done;
}
