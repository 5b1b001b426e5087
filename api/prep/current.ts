// The plan as of now: whoever reads it first after something moved has it planned anew.
import type { Context } from '../context.ts';
import { lastForeign, replanned } from './plan.ts';
import { seriesToppedUp } from './series.ts';
import { write } from '../work.ts';

/** Estimates move without anybody telling: after so long it is planned anew in any case. */
const staleMs = 10 * 60_000;

/** Plans anew when something was told since, or some time has passed; else does nothing. */
export async function planBroughtUp(context: Context): Promise<void> {
  const { database, lab } = context;
  const labId = lab.id;
  const plan = await database.read.prepPlan.findUnique({ where: { labId } });
  const anything =
    plan ??
    (await database.read.need.findFirst({ where: { labId }, select: { id: true } })) ??
    // What is kept for a campaign follows its weeks without any need.
    (await database.read.campaign.findFirst({ where: { labId, lotId: { not: null } }, select: { id: true } }));
  if (!anything) return;
  const now = context.now().getTime();
  const isFresh =
    plan !== null &&
    Math.abs(now - plan.plannedAt.getTime()) < staleMs &&
    plan.changeNumber === (await lastForeign(database.read, labId));
  if (isFresh) return;
  await write({ ...context, actor: null, actorName: null, estimateLater: true }, 'planPrep', {}, async (work) => {
    await seriesToppedUp(work, lab);
    await replanned(work, lab);
    return {};
  });
}
