// A plan made: laid out anew when something changed meanwhile, and written down.
import type { Context } from '../context.ts';
import { write } from '../work.ts';
import { factsOf } from './facts.ts';
import { inLine } from './planning.ts';
import { laidOut, stampOf } from './plan-laid.ts';
import { kept } from './plan-kept.ts';

export type Planned = { planId: string };
/** So often is a plan made anew when the list changes under it. */
const mostTries = 4;

export interface PlanSaid {
  seconds?: number | null | undefined;
  clientKey?: string | null | undefined;
}

/** Plans all that waits, and writes the plan down; planned anew when something changed meanwhile. */
export function ovensPlanned(context: Context, input: PlanSaid, because = 'asked for'): Promise<Planned> {
  return inLine(context.database, async () => {
    for (let tries = 1; ; tries += 1) {
      const laid = await laidOut(context, input.seconds);
      const done = await write<{ planId: string }>(context, 'planOvens', input, async (work) => {
        const facts = await factsOf(work.tx, context.lab, context.now());
        if (stampOf(facts) !== laid.stamp && tries < mostTries) return Promise.reject(new Moved());
        return { planId: await kept(work, laid, because) };
      }).catch((error: unknown) => {
        if (error instanceof Moved) return null;
        throw error;
      });
      if (done) return done;
    }
  });
}

class Moved extends Error {}
