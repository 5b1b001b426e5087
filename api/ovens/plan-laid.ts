// A plan laid out and not yet kept, with a stamp of all that must not change under it.
import type { Context } from '../context.ts';
import { missing, Refused } from '../errors.ts';
import type { OvenAnswer } from '../science/ovens/answer.ts';
import { apartOf } from './apart.ts';
import { factsOf, type Facts } from './facts.ts';
import { answered } from './planning.ts';
import { posed, type Posed } from './problem.ts';

/** All that a plan must not have changed under it. */
export const stampOf = (facts: Facts): string =>
  JSON.stringify([
    facts.ovens.map(({ care: _, ...oven }) => oven),
    facts.ovens.map(({ care }) => care.map(({ id }) => id)),
    facts.requests.map(({ container: _, loads: __, position: ___, ...request }) => request),
    facts.runs.map(({ id, state, isPinned, plannedStart, dueOutAt, ovenId }) => [
      id,
      state,
      isPinned,
      plannedStart,
      dueOutAt,
      ovenId,
    ]),
  ]);

export interface Laid {
  stamp: string;
  facts: Facts;
  posed: Posed;
  answer: OvenAnswer | null;
  seconds: number;
}

export async function laidOut(context: Context, seconds: number | null | undefined): Promise<Laid> {
  const { database, lab } = context;
  const facts = await factsOf(database.read, lab, context.now());
  if (facts.ovens.length === 0) throw missing('input', 'an oven; addOven first');
  const problem = posed(facts, apartOf(lab.settings));
  const began = performance.now();
  const free = problem.problem.jobs.length - problem.fixedLoads.size;
  const answer = free === 0 ? null : await answered(database, problem, facts.now, seconds);
  if (free > 0 && answer === null) {
    throw new Refused('invalid input: this plan, it was cancelled; plan again', 'input', 'plan again');
  }
  return { stamp: stampOf(facts), facts, posed: problem, answer, seconds: (performance.now() - began) / 1000 };
}
