// A plan of what to buy: made in a worker thread, written down with what its names stand for, taken back.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { type Lot, Prisma, type PurchasePlan } from '../database/generated/sqlite/client.ts';
import { invalid, missing, unknown } from '../errors.ts';
import type { PurchaseAnswer, PurchaseProblem } from '../science/purchase/types.ts';
import { localId, sorbentOf, supplierOf } from '../stock/service.ts';
import { answeredBefore, newId, write } from '../work.ts';
import { planFactsOf } from './plan-facts.ts';
import { answered, inLine } from './planning.ts';
import { type PlanFacts, posed, type Supposed } from './problem.ts';
import type { planOrdersSaid, whatIfSaid, whichSaid } from './said.ts';

const supposed = z.object({
  supplierId: z.string().nullable(),
  lateWeeks: z.number(),
  pricePercent: z.number(),
  rejectedLotId: z.string().nullable(),
  words: z.string(),
});

/** What was supposed when it was made, in words too; null: nothing. */
export const supposedOf = ({ whatIf }: PurchasePlan): z.output<typeof supposed> | null =>
  whatIf === null ? null : supposed.parse(whatIf);

const named = z.record(z.string(), z.string());
const beside = z.object({
  names: z.object({ items: named, offers: named, campaigns: named, lots: named, orders: named.default({}) }),
  notes: z.array(z.string()),
  points: z.record(z.string(), z.number()),
  safety: z.record(z.string(), z.number()),
  simple: z.unknown(),
});

export interface PlanRead {
  readonly plan: PurchasePlan;
  readonly problem: PurchaseProblem;
  readonly answer: PurchaseAnswer;
  /** The same weeks by reorder points. */
  readonly simple: PurchaseAnswer;
  readonly names: z.output<typeof beside>['names'];
  readonly notes: readonly string[];
  readonly points: Readonly<Record<string, number>>;
  readonly safety: Readonly<Record<string, number>>;
}

/** An answer as it was written down; before sentences had parts, each is one. */
function answerRead(stored: unknown): PurchaseAnswer {
  const answer = stored as PurchaseAnswer & Partial<Pick<PurchaseAnswer, 'warningParts'>>;
  return {
    ...answer,
    orders: answer.orders.map((order) => ({ ...order, reasonParts: order.reasonParts ?? [order.reason] })),
    warningParts: answer.warningParts ?? answer.warnings.map((one) => [one]),
  };
}

/** A plan as it was written down. */
export function planRead(plan: PurchasePlan): PlanRead {
  const { simple, ...rest } = beside.parse(plan.beside);
  return {
    ...rest,
    plan,
    problem: plan.problem as unknown as PurchaseProblem,
    answer: answerRead(plan.answer),
    simple: simple as PurchaseAnswer,
  };
}

/** The lot of a number; of which sorbent, where several have lots of that number. */
async function lotSupposed({ database, lab }: Context, lotNumber: string, sorbent: string | null): Promise<Lot> {
  const reader = { tx: database.read, labId: lab.id };
  const of = sorbent === null ? null : await sorbentOf(reader, sorbent, 'input.whatIf.rejectedSorbent');
  const lots = await database.read.lot.findMany({
    where: { labId: lab.id, ...(of && { sorbentId: of.id }) },
    include: { sorbent: { select: { name: true } } },
  });
  const some = lots.filter((one) => one.lotNumber.toLowerCase() === lotNumber.toLowerCase());
  const [lot] = some;
  if (!lot) throw unknown('input.whatIf.rejectedLot', lotNumber, `the number of a lot of ${of ? of.name : 'this lab'}`);
  if (some.length > 1)
    throw missing('input.whatIf.rejectedSorbent', `one of: ${some.map((one) => one.sorbent.name).join(', ')}`);
  return lot;
}

/** What is supposed, with names made known; null when nothing is. */
async function supposedIn(
  context: Context,
  said: z.output<typeof whatIfSaid> | null,
): Promise<(Supposed & { words: string }) | null> {
  if (!said) return null;
  const { lateWeeks, pricePercent, rejectedLot } = said;
  if (!lateWeeks && !pricePercent && !rejectedLot)
    throw invalid('input.whatIf', said, 'something: lateWeeks, pricePercent or rejectedLot');
  const reader = { tx: context.database.read, labId: context.lab.id };
  const supplier = said.supplier ? await supplierOf(reader, said.supplier, 'input.whatIf.supplier') : null;
  const lot = rejectedLot ? await lotSupposed(context, rejectedLot, said.rejectedSorbent ?? null) : null;
  const who = supplier?.name ?? 'every supplier';
  const weeks = lateWeeks === 1 ? '1 week' : `${lateWeeks} weeks`;
  const words = [
    ...(lateWeeks ? [`${who} ${weeks} late`] : []),
    ...(pricePercent ? [`prices of ${who} ${pricePercent > 0 ? 'up' : 'down'} by ${Math.abs(pricePercent)} %`] : []),
    ...(lot ? [`lot ${lot.lotNumber} rejected`] : []),
  ].join(', ');
  return {
    supplierId: supplier?.id ?? null,
    lateWeeks: lateWeeks ?? 0,
    pricePercent: pricePercent ?? 0,
    rejectedLotId: lot?.id ?? null,
    words,
  };
}

/** By the names that the problem gives its items. */
function pointsOf(facts: PlanFacts, items: Readonly<Record<string, string>>) {
  const of = (figure: 'point' | 'safetyStock') =>
    Object.fromEntries(
      Object.entries(items).flatMap(([name, key]) => {
        const reorder = facts.items.find((one) => one.key === key)?.reorder;
        return reorder ? [[name, reorder[figure]]] : [];
      }),
    );
  return { points: of('point'), safety: of('safetyStock') };
}

const json = (of: object): object => JSON.parse(JSON.stringify(of)) as object;

export type Planned = { planId: string };

/** Plans what to buy, and writes the plan down; one that supposes something stands beside and does not count. */
export function ordersPlanned(context: Context, input: z.output<typeof planOrdersSaid>): Promise<Planned> {
  const { database } = context;
  return inLine(database, async () => {
    const before = await answeredBefore<Planned>(context, 'planOrders', input);
    if (before) return before;
    const whatIf = await supposedIn(context, input.whatIf ?? null);
    const { weeks = null, seconds = null } = input;
    const facts = await planFactsOf(context, { weeks, seconds, supposed: whatIf });
    const of = posed(facts);
    if (!of)
      throw invalid(
        'input',
        'nothing',
        'something that is used or wanted: there is no use, campaign or need to plan for',
      );
    const { points, safety } = pointsOf(facts, of.names.items);
    const found = await answered(database, of.problem, points, context.now());
    if (!found) throw invalid('input', 'this planning', 'a planning that nobody cancels, or with more seconds');
    return write<Planned>(context, 'planOrders', input, async (work) => {
      const { tx, labId, now } = work;
      const id = newId();
      await tx.purchasePlan.create({
        data: {
          ...{ id, labId, madeAt: now, fromDay: facts.monday, weeks: facts.weeks, seconds: found.seconds },
          because: 'asked for',
          ...(whatIf ? { whatIf: json(whatIf) } : {}),
          problem: json(of.problem),
          answer: json(found.answer),
          beside: json({ names: of.names, notes: of.notes, points, safety, simple: found.simple }),
        },
      });
      work.changed('PurchasePlan', id, 'MADE');
      return { planId: id };
    });
  });
}

/** The plan that counts: the newest that supposes nothing and was not taken back. */
export const currentPlan = ({ database, lab }: Context): Promise<PurchasePlan | null> =>
  database.read.purchasePlan.findFirst({
    where: { labId: lab.id, takenBackAt: null, whatIf: { equals: Prisma.DbNull } },
    orderBy: [{ madeAt: 'desc' }, { id: 'desc' }],
  });

/** The plan that counted when another was made. */
export const planBefore = ({ database, lab }: Context, { id, madeAt }: PurchasePlan): Promise<PurchasePlan | null> =>
  database.read.purchasePlan.findFirst({
    where: {
      ...{ labId: lab.id, whatIf: { equals: Prisma.DbNull } },
      AND: [
        { OR: [{ madeAt: { lt: madeAt } }, { madeAt, id: { lt: id } }] },
        { OR: [{ takenBackAt: null }, { takenBackAt: { gt: madeAt } }] },
      ],
    },
    orderBy: [{ madeAt: 'desc' }, { id: 'desc' }],
  });

/** The plan before counts again. */
export function purchasePlanTakenBack(context: Context, input: z.output<typeof whichSaid>): Promise<Planned> {
  return write(context, 'takePurchasePlanBack', input, async (work) => {
    const { tx, labId, now } = work;
    const id = localId('PurchasePlan', input.id, 'input.id');
    const plan = await tx.purchasePlan.findFirst({ where: { id, labId } });
    if (!plan) throw unknown('input.id', input.id, 'the id of a purchase plan of this lab');
    if (!plan.takenBackAt) await tx.purchasePlan.update({ where: { id }, data: { takenBackAt: now } });
    work.changed('PurchasePlan', id, 'CHANGED');
    return { planId: id };
  });
}
