// Who wrote down what was done to plates.
import type { Prepared } from '../stock/service.ts';
import type { Context } from '../context.ts';

export type Step<N extends keyof Prepared> = NonNullable<Prepared[N]>;

/** Who wrote a step down. */
export const writtenBy = async (eventId: string, { load }: Context): Promise<string | null> => {
  const event = await load.event.load(eventId);
  const person = event?.actorId ? await load.person.load(event.actorId) : null;
  return person?.shortName ?? null;
};
