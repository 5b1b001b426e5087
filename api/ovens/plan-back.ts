// A plan is taken back while nothing of it has begun: runs stand as they stood before it.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid, unknown } from '../errors.ts';
import { localId, said } from '../stock/service.ts';
import { write } from '../work.ts';

export const planBackSaid = z.object({ plan: z.string('the id of a plan'), clientKey: said.clientKey });

/** A run as a plan kept it beside itself; instants came back as text. */
const instant = z.iso.datetime().transform((text) => new Date(text));
const kept = z.array(
  z.object({
    id: z.string(),
    labId: z.string(),
    ovenId: z.string(),
    state: z.literal('PLANNED'),
    isPinned: z.boolean(),
    plannedStart: instant,
    plannedEnd: instant,
    temperatureC: z.number(),
    setupMinutes: z.number(),
    leastMinutes: z.number(),
    mostMinutes: z.number(),
    isVacuum: z.boolean(),
    reason: z.string(),
    madeAt: instant,
    loads: z.array(
      z.object({
        id: z.string(),
        labId: z.string(),
        requestId: z.string(),
        runId: z.string(),
        part: z.number(),
        parts: z.number(),
        dryGrams: z.number().nullable(),
        plates: z.number().nullable(),
        depthMm: z.number().nullable(),
        areaCm2: z.number(),
        trays: z.number(),
      }),
    ),
  }),
);

/** Puts back the runs as they stood before a plan was made. */
export function planTakenBack(context: Context, input: z.output<typeof planBackSaid>): Promise<{ planId: string }> {
  return write(context, 'takeOvenPlanBack', input, async (work) => {
    const { tx, labId } = work;
    const id = localId('OvenPlan', input.plan, 'input.plan');
    const plan = await tx.ovenPlan.findFirst({ where: { id, labId } });
    if (!plan) throw unknown('input.plan', input.plan, 'the id of a plan of this lab');
    if (plan.takenBackAt) return { planId: id };
    const newest = await tx.ovenPlan.findFirst({
      where: { labId, takenBackAt: null },
      orderBy: [{ madeAt: 'desc' }, { id: 'desc' }],
    });
    if (newest?.id !== id) throw invalid('input.plan', input.plan, 'a newer plan counts; take that back first');
    const begun = await tx.dryingRun.count({ where: { labId, startedAt: { gte: plan.madeAt } } });
    if (begun > 0) throw invalid('input.plan', input.plan, 'a run of it has begun; plan again instead');
    const now = await tx.dryingRun.findMany({ where: { labId, state: 'PLANNED', isPinned: false } });
    const ids = now.map((run) => run.id);
    await tx.dryingLoad.deleteMany({ where: { labId, runId: { in: ids } } });
    await tx.dryingRun.deleteMany({ where: { labId, id: { in: ids } } });
    const waiting = new Set(
      (await tx.dryingRequest.findMany({ where: { labId, state: 'WAITING' }, select: { id: true } })).map(
        (one) => one.id,
      ),
    );
    const back: string[] = [];
    for (const { loads, ...run } of kept.parse(plan.before)) {
      const still = loads.filter(({ requestId }) => waiting.has(requestId));
      const there = await tx.dryingRun.findUnique({ where: { id: run.id } });
      if (still.length === 0 || there) continue;
      await tx.dryingRun.create({ data: { ...run, doorAt: [] } });
      for (const load of still) await tx.dryingLoad.create({ data: { ...load, events: [] } });
      back.push(run.id);
    }
    await tx.ovenPlan.update({ where: { id }, data: { takenBackAt: work.now } });
    for (const gone of ids.filter((one) => !back.includes(one))) work.changed('DryingRun', gone, 'GONE');
    for (const one of back) work.changed('DryingRun', one, ids.includes(one) ? 'CHANGED' : 'MADE');
    work.changed('OvenPlan', id, 'CHANGED');
    return { planId: id };
  });
}
