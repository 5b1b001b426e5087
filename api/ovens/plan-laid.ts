// A plan laid out and not yet kept, with a stamp of all that must not change under it.
import { setImmediate as aside } from 'node:timers/promises';
import type { Context } from '../context.ts';
import { missing, Refused } from '../errors.ts';
import type { OvenAnswer } from '../science/ovens/answer.ts';
import { apartOf } from './apart.ts';
import { factsOf, type Facts } from './facts.ts';
import { answered } from './planning.ts';
import { posed, type Posed } from './problem.ts';
import { roomVapourPa } from './room-vapour.ts';
import { loadsOf } from './shares.ts';

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

/** The facts with the air that the ovens draw; the tray model has answered for each load, one at a turn. */
async function factsInAir(context: Context): Promise<Facts> {
  const bare = await factsOf(context.database.read, context.lab, context.now());
  const rooms = [...new Set(bare.ovens.map(({ roomId }) => roomId))];
  const drawn = await Promise.all(rooms.map(async (room) => [room, await roomVapourPa(context, room)] as const));
  const facts = { ...bare, vapourPa: new Map(drawn) };
  for (const request of facts.requests) {
    loadsOf(request, facts);
    await aside();
  }
  return facts;
}

export async function laidOut(context: Context, seconds: number | null | undefined): Promise<Laid> {
  const { database, lab } = context;
  const facts = await factsInAir(context);
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
