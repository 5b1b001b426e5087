// How long the loads of a run cool after the oven, read through the loaders: a week of runs costs a constant number of statements.
import type { Context } from '../context.ts';
import { howClassIsDried, ownRecipes } from '../drying/service.ts';
import { onceARequest } from '../once.ts';
import { there } from '../stock/refs.ts';
import { usualCoolDownMinutes } from './rules.ts';

/** What the lab has set over the default recipes, asked once a request. */
const ownNow = onceARequest(({ database, lab }) => ownRecipes(database.read, lab.id));

/** The longest that any of its loads cools, min. */
export async function coolMinutes(context: Context, runId: string): Promise<number> {
  const { load } = context;
  const set = await ownNow(context);
  const minutes = (await load.loadsOfRun.load(runId)).map(async ({ requestId }) => {
    const request = there(await load.dryingRequest.load(requestId), 'drying request');
    const { lotId, backing } = there(await load.container.load(request.containerId), 'container');
    const lot = there(await load.lot.load(lotId), 'lot');
    const { sorbentClass } = there(await load.sorbent.load(lot.sorbentId), 'sorbent');
    return howClassIsDried(set, sorbentClass, backing).recipe?.coolDownMinutes ?? usualCoolDownMinutes;
  });
  return Math.max(0, ...(await Promise.all(minutes)));
}
