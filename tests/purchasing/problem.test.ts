// What the programme is given of a lab: which campaigns need a lot, what is there for whom, what is on its way and until when.
import { beforeAll, describe, expect, it } from 'vitest';
import { planFactsOf } from '../../api/purchasing/plan-facts.ts';
import { posed, type Posed, type Supposed } from '../../api/purchasing/problem.ts';
import { engineOfSuite } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';
import { buyingOf, silica } from './lab.ts';

describe('what is planned for', () => {
  const on = engineOfSuite('sqlite');
  let world: World;
  let buying: ReturnType<typeof buyingOf>;
  let offer: string;
  beforeAll(async () => {
    world = await newWorld(await on.fresh(), { estimates: false });
    await world.furnished();
    buying = buyingOf(world);
    offer = await buying.offer({ shelfWeeks: 6 });
    await world.tell('setStockItem', { sorbent: silica, weeklyUse: 50 }, '__typename');
  });

  const nothing = { supplierId: null, lateWeeks: 0, pricePercent: 0, rejectedLotId: null };
  const asked = async (supposed: Partial<Supposed> | null = null): Promise<Posed> => {
    const facts = await planFactsOf(await world.context(), {
      ...{ weeks: 12, seconds: 1 },
      supposed: supposed && { ...nothing, ...supposed },
    });
    const of = posed(facts);
    if (!of) throw new Error('there is nothing to plan');
    return of;
  };
  const campaignsOf = ({ problem }: Posed) => problem.campaigns.map(({ id }) => id);
  const lotOf = ({ problem }: Posed, id: string) => problem.lots.find((lot) => lot.id === id);
  const unchecked = { takeUnchecked: true };

  it('is no campaign with enough of a good lot, and one whose lot is rejected, or supposed to be', async () => {
    await world.drum(1000, {}, { lotNumber: 'P-1' });
    await buying.keep(await buying.campaign({ name: 'kept' }), 'P-1', unchecked);
    const whole = await asked();
    expect(campaignsOf(whole)).toEqual([]);
    expect(lotOf(whole, 'P-1')).toMatchObject({ quantity: 500, status: 'accepted' });
    const lot = await world.database.read.lot.findFirstOrThrow({ where: { lotNumber: 'P-1' } });
    const without = await asked({ rejectedLotId: lot.id });
    expect(without.problem.campaigns).toMatchObject([
      { id: 'kept', uses: [{ week: 1, quantity: 200 }, { week: 2, quantity: 300 }] }, // prettier-ignore
    ]);
    expect(lotOf(without, 'P-1')?.status).toBe('rejected');
    const said = { sorbent: silica, lotNumber: 'P-1', outcome: 'REJECTED', why: 'the second dye runs higher' };
    await world.tell('decideLot', said, '__typename');
    expect(campaignsOf(await asked())).toEqual(['kept']);
    await world.tell('dropCampaign', { id: (await campaignNamed('kept')).id }, '__typename');
  });

  const campaignNamed = async (name: string) => {
    const { campaigns } = await world.ask<{ campaigns: { id: string; name: string }[] }>('{ campaigns { id name } }');
    return campaigns.find((one) => one.name === name) ?? { id: 'none' };
  };

  it('is a campaign that has too little of its lot, with what it has given back for the choice', async () => {
    const drum = await world.drum(400, {}, { lotNumber: 'P-2' });
    const uses = [{ day: '2026-04-03', amount: 300 }];
    const campaign = await buying.campaign({ name: 'short', uses });
    await buying.keep(campaign, 'P-2', unchecked);
    await world.tell('dropCampaign', { id: campaign.id }, '__typename');
    await world.tell('holdStock', { label: drum.label, dryGrams: 200, forWhat: 'a person' }, '__typename');
    await world.tell('restoreCampaign', { id: campaign.id }, '__typename');
    const of = await asked();
    expect(campaignsOf(of)).toEqual(['short']);
    expect(lotOf(of, 'P-2')?.quantity).toBe(200);
    expect(of.notes).toContain(`${silica}: only 200 g of the 300 g that short still takes are kept for it`);
    await world.tell('dropCampaign', { id: campaign.id }, '__typename');
  });

  it('is what a need takes that nothing is kept for, its campaign’s only while there is that', async () => {
    await world.drum(100, {}, { lotNumber: 'P-3' });
    const campaign = await buying.campaign({ name: 'needed', uses: [{ day: '2026-04-10', amount: 80 }] });
    await buying.keep(campaign, 'P-3', unchecked);
    const at = new Date('2026-04-10T10:00:00+03:00');
    const said = { kind: 'SORBENT', sorbent: silica, dryGrams: 5000, at, forWhom: 'somebody', campaign: campaign.id };
    await world.tell('addNeed', said, '__typename');
    // Week 6: 50 g of everyday use; the need is of the campaign, which wants it of one lot.
    const demand = ({ problem }: Posed) => problem.items[0]?.demand[5];
    const before = await asked();
    expect(demand(before)).toBe(50);
    expect(before.problem.campaigns).toMatchObject([{ id: 'needed', uses: [{ week: 6, quantity: 5000 }] }]);
    await world.tell('dropCampaign', { id: campaign.id }, '__typename');
    const after = await asked();
    expect([demand(after), campaignsOf(after)]).toEqual([5050, []]);
  });

  it('is what is on its way, counted in dry grams and used until its shelf life ends', async () => {
    await world.tell('setStockItem', { sorbent: silica, isExpiring: true }, '__typename');
    // The last lot held 4 g water in 100 g as received, and the next is taken for the same.
    await world.drum(100, {}, { lotNumber: 'P-wet', certificateWaterPercent: 4, receivedAt: world.now() });
    const { order } = await buying.order('askForOrder', { offer, packs: 2 });
    const of = await asked();
    const lot = lotOf(of, `order ${order.number}`);
    // Two weeks to come, and a week of a check that takes 50 g.
    expect(lot).toMatchObject({ from: 4, lastWeek: 8, status: 'in-check' });
    expect(lot?.quantity).toBe(2 * 960 - 50);
    expect(of.names.orders).toEqual({ [`order ${order.number}`]: expect.any(String) });
    const late = await asked({ lateWeeks: 2 });
    expect(lotOf(late, `order ${order.number}`)).toMatchObject({ from: 6, lastWeek: 10 });
  });

  it('is said to lack an offer only where what is there and can be used does not last', async () => {
    await world.tell('removeOffer', { id: offer }, '__typename');
    const lacks = `${silica}: there is no offer of it; add one`;
    const { demand } = (await asked()).problem.items[0] ?? { demand: [] };
    const wanted = demand.reduce((sum, one) => sum + one, 0);
    await world.drum(wanted + 100, {}, { lotNumber: 'P-4' });
    expect((await asked()).notes).not.toContain(lacks);
    const lot = await world.database.read.lot.findFirstOrThrow({ where: { lotNumber: 'P-4' } });
    expect((await asked({ rejectedLotId: lot.id })).notes).toContain(lacks);
  });
});
