// What to buy, planned from the lab's own stock, use, offers and campaigns: lines with their reason, what if, what is due, cancelled.
import { beforeAll, describe, expect, it } from 'vitest';
import { planOrdersOf } from '../../api/commands/plan-orders/input.ts';
import { describeEngines, engineOfSuite, type OnEngine } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';
import { buyingOf, silica } from './lab.ts';

interface Line {
  packs: number;
  asked: number;
  orderBy: string;
  sentence: string;
  total: { minor: string };
  offer: { id: string };
}

interface Due {
  basis: string;
  packs: number;
  orderBy: string;
  sentence: string;
  price: { amount: string };
  total: { amount: string };
}

interface Move {
  what: string;
  packsBefore: number | null;
  packs: number | null;
  sentence: string;
}

interface Plan {
  id: string;
  status: string;
  words: string;
  whatIf: string | null;
  cost: { minor: string };
  simpleCost: { minor: string };
  saves: { minor: string };
  costs: Record<string, { minor: string }>;
  lines: Line[];
  campaigns: { campaign: { name: string }; lotName: string; isNew: boolean }[];
  warnings: string[];
  reorderPoints: { item: string; point: number; safety: number; unit: string }[];
  due: string[];
}

const costs = ['goods', 'fees', 'checks', 'withoutOld', 'holding', 'waste', 'shortage', 'belowSafety', 'uncovered', 'overflow', 'endValue']; // prettier-ignore
const planFields = `id status words whatIf cost { minor } simpleCost { minor } saves { minor }
  costs { ${costs.map((name) => `${name} { minor }`).join(' ')} }
  lines { packs asked orderBy sentence total { minor } offer { id } }
  campaigns { campaign { name } lotName isNew } warnings reorderPoints { item point safety unit } due`;

/** A lab with one offer, a campaign without a lot, and a figure of what a week uses. */
async function buyingLab(on: OnEngine) {
  const world = await newWorld(await on.fresh(), { estimates: false });
  await world.furnished();
  const buying = buyingOf(world);
  await world.drum(1400, {}, { lotNumber: 'F-1', receivedAt: world.ago(20 * 24 * 60) });
  await world.drum(100, {}, { lotNumber: 'F-2' });
  const offer = await buying.offer({ leadUsualWeeks: 2, mostPacks: 4 });
  await world.tell('setStockItem', { sorbent: silica, weeklyUse: 250, serviceLevel: 0.9 }, '__typename');
  const uses = [
    { day: '2026-04-07', amount: 800 },
    { day: '2026-04-14', amount: 800 },
  ];
  await buying.campaign({ name: 'peptides', uses });
  const planned = async (input: Record<string, unknown>): Promise<Plan> =>
    (await world.tell<{ plan: Plan }>('planOrders', input, `plan { ${planFields} }`)).plan;
  return { world, buying, offer, planned, plan: await planned({ weeks: 8, seconds: 60 }) };
}

type BuyingLab = Awaited<ReturnType<typeof buyingLab>>;

describeEngines('a purchase plan', (on) => {
  let world: World;
  let buying: BuyingLab['buying'];
  let offer: string;
  let plan: Plan;
  let planned: BuyingLab['planned'];
  beforeAll(async () => {
    ({ world, buying, offer, plan, planned } = await buyingLab(on));
  });

  const dueNow = async (weeksAhead = 0) =>
    (
      await world.ask<{ ordersDue: Due[] }>(
        `{ ordersDue(weeksAhead: ${weeksAhead}) { basis packs orderBy sentence price { amount } total { amount } } }`,
      )
    ).ordersDue;

  it('orders whole packs in time, says by when and why, and its costs add up to the cent', () => {
    expect(plan.status).toBe('optimal');
    expect(plan.lines.length).toBeGreaterThan(0);
    for (const { sentence, packs, orderBy } of plan.lines) {
      expect(sentence).toMatch(/^Order \d+ packs? of 1 kg by \d+ \w+: .+\.$/);
      expect(sentence).not.toMatch(/week \d/);
      expect(packs).toBeGreaterThan(0);
      expect(new Date(`${orderBy}T00:00:00Z`).getUTCDay()).toBe(5);
    }
    const minor = (name: string) => BigInt(plan.costs[name]?.minor ?? 'nothing');
    const sum = costs.reduce((total, name) => total + (name === 'endValue' ? -minor(name) : minor(name)), 0n);
    expect(BigInt(plan.cost.minor)).toBe(sum);
    const goods = plan.lines.reduce((total, { total: { minor } }) => total + BigInt(minor), 0n);
    expect(minor('goods')).toBe(goods);
  });

  it('is given to the programme exactly as the command takes it from a file', async () => {
    const row = await world.database.read.purchasePlan.findFirstOrThrow({ where: { labId: world.app.lab.id } });
    expect(planOrdersOf(row.problem)).toMatchObject({ currency: 'EUR', minorDigits: 2, weeks: 8 });
  });

  it('covers a campaign with one lot, one that it orders where none in the house is large enough', () => {
    expect(plan.campaigns).toEqual([{ campaign: { name: expect.stringContaining('peptides') }, lotName: expect.stringMatching(/^the lot to be ordered from Marlpit Chemicals in the week of \d+ March$/), isNew: true }]); // prettier-ignore
  });

  it('costs no more than ordering at reorder points, which stand beside it', () => {
    const saves = BigInt(plan.saves.minor);
    expect(saves).toBe(BigInt(plan.simpleCost.minor) - BigInt(plan.cost.minor));
    expect(saves).toBeGreaterThanOrEqual(0n);
    const [point] = plan.reorderPoints;
    expect(point?.unit).toBe('g');
    // Four weeks of 250 g from noticing to the end of the check, and what is there for more.
    expect((point?.point ?? 0) - (point?.safety ?? 0)).toBeCloseTo(1000, 6);
  });

  it('says what to look at: a lot that nobody checked', () => {
    expect(plan.warnings).toContain('not checked, and planned as if they were accepted: F-2');
  });

  it('says what is due, and no longer once it is asked for', async () => {
    const all = await dueNow(12);
    expect(all.every(({ basis }) => basis === 'PLAN')).toBe(true);
    expect(all.map(({ packs }) => packs)).toEqual(plan.lines.map(({ packs }) => packs));
    const [first] = plan.lines;
    const many = all.find(({ packs }) => packs > 1);
    const line = plan.lines.find(({ packs }) => packs > 1);
    // Three packs or more are cheaper; of what is left of a line, so many are at the price of so many.
    const { order: part } = await buying.order('askForOrder', { offer, packs: (line?.packs ?? 0) - 1 });
    const left = (await dueNow(12)).find(({ orderBy }) => orderBy === many?.orderBy);
    expect(left).toMatchObject({ packs: 1, price: { amount: '84.50' }, total: { amount: '84.50' } });
    expect(left?.sentence).toMatch(/^Order 1 pack of 1 kg by /);
    await world.tell('callOffOrder', { id: part.id }, '__typename');
    const { order } = await buying.order('askForOrder', { offer, packs: first?.packs ?? 0 });
    expect(await dueNow(12)).toHaveLength(all.length - 1);
    await world.tell('callOffOrder', { id: order.id }, '__typename');
    expect(await dueNow(12)).toHaveLength(all.length);
  });

  it('is planned anew with what is on its way, and says when it should be', async () => {
    expect(plan.due).toEqual([]);
    await buying.order('askForOrder', { offer, packs: 4 });
    world.later(1);
    const next = await planned({ weeks: 8, seconds: 60 });
    const packs = (of: Plan) => of.lines.reduce((sum, line) => sum + line.packs, 0);
    expect(packs(next)).toBeLessThan(packs(plan));
    const moves = async (id: string) =>
      (
        await world.ask<{ node: { moved: Move[] } }>(
          'query ($id: ID!) { node(id: $id) { ... on PurchasePlan { moved { what packsBefore packs sentence } } } }',
          { id },
        )
      ).node.moved;
    // The first plan has none before it, and all of its packs were asked for since: nothing moved.
    expect([await moves(plan.id), packs(plan) <= 4, packs(next), await moves(next.id)]).toEqual([[], true, 0, []]);
    await world.tell('setStockItem', { sorbent: silica, weeklyUse: 700, serviceLevel: 0.9 }, '__typename');
    world.later(1);
    const more = await planned({ weeks: 8, seconds: 60 });
    const moved = await moves(more.id);
    expect(moved.map(({ what, packsBefore, packs: now }) => [what, packsBefore, now])).toEqual(
      more.lines.map((line) => ['CAME', null, line.packs]),
    );
    expect(moved[0]?.sentence).toMatch(
      /^New: \d packs? of 1 kg of Silica 40–63 µm from Marlpit Chemicals by \d+ \w+\.$/,
    );
    await world.tell('takePurchasePlanBack', { id: more.id }, '__typename');
    world.later(7 * 24 * 60);
    const { purchasePlan } = await world.ask<{ purchasePlan: { due: string[] } }>('{ purchasePlan { due } }');
    expect(purchasePlan.due).toEqual(['it was made in another week']);
    await world.tell('takePurchasePlanBack', { id: next.id }, '__typename');
    const { purchasePlan: before } = await world.ask<{ purchasePlan: { id: string } }>('{ purchasePlan { id } }');
    expect(before.id).toBe(plan.id);
  });
});

describe('a purchase plan', () => {
  const on = engineOfSuite('sqlite');
  let world: World;
  let plan: Plan;
  let planned: BuyingLab['planned'];
  beforeAll(async () => {
    ({ world, plan, planned } = await buyingLab(on));
  });

  it('supposes: dearer and later goods cost more, and the plan that counts stays', async () => {
    const whatIf = { supplier: 'Marlpit Chemicals', pricePercent: 50, lateWeeks: 4 };
    const dearer = await planned({ weeks: 8, seconds: 60, whatIf });
    expect(dearer.whatIf).toBe('Marlpit Chemicals 4 weeks late, prices of Marlpit Chemicals up by 50 %');
    expect(BigInt(dearer.cost.minor)).toBeGreaterThan(BigInt(plan.cost.minor));
    const without = await planned({ weeks: 8, seconds: 60, whatIf: { rejectedLot: 'F-1' } });
    expect(without.warnings.join(' ')).toMatch(/lot F-1 is rejected and left out/);
    expect(BigInt(without.costs['shortage']?.minor ?? 0)).toBeGreaterThan(0n);
    const { purchasePlan } = await world.ask<{ purchasePlan: { id: string } }>('{ purchasePlan { id } }');
    expect(purchasePlan.id).toBe(plan.id);
    expect((await world.refused('planOrders', { whatIf: {} })).path).toBe('input.whatIf');
    const sorbents = [silica, 'Fine silica'];
    await world.tell('addSorbent', { name: 'Fine silica', sorbentClass: 'SILICA' }, '__typename');
    const drum = { kind: 'DRUM', room: 'wet bench', grams: 500, innerDiameterMm: 120, heightMm: 250 };
    await world.tell('receiveLot', { sorbent: 'Fine silica', lotNumber: 'F-1', containers: [drum] }, '__typename');
    const either = await world.refused('planOrders', { whatIf: { rejectedLot: 'F-1' } });
    expect(either.path).toBe('input.whatIf.rejectedSorbent');
    for (const name of sorbents) expect(either.expected).toContain(name);
    const neither = { rejectedLot: 'F-2', rejectedSorbent: 'Fine silica' };
    expect((await world.refused('planOrders', { whatIf: neither })).message).toMatch(
      /the number of a lot of Fine silica/,
    );
  });

  it('is found again after a hundred that only suppose', async () => {
    const { id: _, ...row } = await world.database.read.purchasePlan.findFirstOrThrow({
      where: { labId: world.app.lab.id },
    });
    const madeAt = new Date(row.madeAt.getTime() + 1000);
    const supposing = Array.from({ length: 101 }, (_, at) => ({
      ...{ ...row, id: `supposing-${at}`, madeAt, whatIf: {} },
      ...{ problem: {}, answer: {}, beside: {} },
    }));
    await world.database.write((tx) => tx.purchasePlan.createMany({ data: supposing }));
    const { purchasePlan } = await world.ask<{ purchasePlan: { id: string } }>('{ purchasePlan { id } }');
    expect(purchasePlan.id).toBe(plan.id);
    await world.database.write((tx) => tx.purchasePlan.deleteMany({ where: { id: { startsWith: 'supposing-' } } }));
  });

  it('told twice under one key is planned once', async () => {
    const whatIf = { supplier: 'Marlpit Chemicals', lateWeeks: 1 };
    const input = { weeks: 8, seconds: 60, whatIf, clientKey: 'plan it' };
    const first = await planned(input);
    const named = (from: string, to: string) =>
      world.database.write((tx) => tx.supplier.updateMany({ where: { name: from }, data: { name: to } }));
    await named('Marlpit Chemicals', 'Marlpit');
    // Planned again, it would not know that supplier.
    expect((await planned(input)).id).toBe(first.id);
    await named('Marlpit', 'Marlpit Chemicals');
    const other = { ...input, whatIf: { ...whatIf, lateWeeks: 2 } };
    expect((await world.refused('planOrders', other)).path).toBe('input.clientKey');
  });

  it('is not written when its planning is cancelled', async () => {
    const rows = () => world.database.read.purchasePlan.count({ where: { labId: world.app.lab.id } });
    const before = await rows();
    const planning = world.refused('planOrders', { weeks: 8, seconds: 60 });
    for (let tries = 0; tries < 200; tries++) {
      const { purchasePlanning } = await world.ask<{ purchasePlanning: { items: number } | null }>(
        '{ purchasePlanning { items share } }',
      );
      if (purchasePlanning) break;
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
    const { wasPlanning } = await world.tell<{ wasPlanning: boolean }>('cancelOrderPlanning', {}, 'wasPlanning');
    expect(wasPlanning).toBe(true);
    expect((await planning).message).toMatch(/a planning that nobody cancels/);
    expect(await rows()).toBe(before);
  });
});
