// A lot kept for a campaign: nobody else is promised it, its own needs are, and fifty who ask at once never get more than there is.
import { beforeAll, beforeEach, expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type Seen, type World } from '../support/world.ts';
import { buyingOf, campaignFields, type SeenCampaign, silica } from './lab.ts';

interface Available {
  available: { can: boolean; from: { container: { label: string }; dryGrams: number }[] };
}

const friday = new Date('2026-03-06T10:00:00+02:00');

describeEngines('a campaign', (on) => {
  let world: World;
  let buying: ReturnType<typeof buyingOf>;
  let drum: Seen;
  let made = 0;
  beforeAll(async () => {
    world = await newWorld(await on.fresh(), { estimates: false });
    await world.furnished();
    buying = buyingOf(world);
  });
  beforeEach(async () => {
    const { campaigns } = await world.ask<{ campaigns: { id: string }[] }>('{ campaigns { id } }');
    for (const { id } of campaigns) await world.tell('dropCampaign', { id }, '__typename');
    const { needs } = await world.ask<{ needs: { id: string }[] }>('{ needs { id } }');
    for (const { id } of needs) await world.tell('dropNeed', { id }, '__typename');
    const { containers } = await world.ask<{ containers: { nodes: Seen[] } }>(
      '{ containers(first: 100, filter: { inUse: true }) { nodes { label } } }',
    );
    for (const { label } of containers.nodes) await world.tell('finishContainer', { label }, '__typename');
    made += 1;
    drum = await world.drum(1000, {}, { lotNumber: `F-${made}` });
  });

  const lot = () => `F-${made}`;
  const unchecked = { takeUnchecked: true };
  const available = async (grams: number): Promise<Available['available']> =>
    (
      await world.ask<Available>(
        `query ($by: DateTime!) { available(sorbent: "${silica}", grams: ${grams}, by: $by) { ... on Available { can from { container { label } dryGrams } } } }`,
        { by: friday },
      )
    ).available;
  const need = (input: object = {}) =>
    world.tell<{ need: { id: string; obstacle: { sentence: string } | null; kept: { dryGrams: number }[] } }>(
      'addNeed',
      { kind: 'SORBENT', sorbent: silica, dryGrams: 100, at: friday, forWhom: 'somebody', ...input },
      'need { id obstacle { sentence } kept { dryGrams } }',
    );
  const again = async ({ id }: SeenCampaign): Promise<SeenCampaign> =>
    (
      await world.ask<{ node: SeenCampaign }>(
        `query ($id: ID!) { node(id: $id) { ... on Campaign { ${campaignFields} } } }`,
        { id },
      )
    ).node;

  it('keeps what its uses take, and the lot says for whom and until when', async () => {
    const { campaign } = await buying.keep(await buying.campaign({ name: 'alkaloids' }), lot(), unchecked);
    expect(campaign.kept).toEqual({ amount: 500, wanted: 500, lastsUntil: '2026-03-13', coversAll: true });
    const { container } = await world.ask<{
      container: { freeDryGrams: number; keptForCampaigns: { forWhat: string; lastsUntil: string }[] };
    }>(`{ container(label: "${drum.label}") { freeDryGrams keptForCampaigns { forWhat lastsUntil } } }`);
    expect(container.freeDryGrams).toBeCloseTo(500, 6);
    expect(container.keptForCampaigns).toEqual([{ forWhat: campaign.name, lastsUntil: '2026-03-13' }]);
  });

  it('is not robbed by needs of others, whose stock is chosen from what is left', async () => {
    await buying.keep(await buying.campaign(), lot(), unchecked);
    expect((await available(500)).can).toBe(true);
    expect((await available(501)).can).toBe(false);
    const { need: other } = await need({ dryGrams: 501 });
    expect(other.obstacle?.sentence).toMatch(/500/);
  });

  it('gives its own needs of what is kept, and has that back when one is dropped', async () => {
    const campaign = await buying.campaign();
    await buying.keep(campaign, lot(), unchecked);
    await need({ dryGrams: 500 });
    const { need: own } = await need({ campaign: campaign.id, dryGrams: 150 });
    expect(own.obstacle).toBeNull();
    expect(own.kept).toEqual([{ dryGrams: 150 }]);
    expect((await again(campaign)).kept).toMatchObject({ amount: 350, wanted: 350, coversAll: true });
    await world.tell('dropNeed', { id: own.id }, '__typename');
    expect((await again(campaign)).kept).toMatchObject({ amount: 500, wanted: 500 });
    expect((await world.look(drum.label)).freeDryGrams).toBeCloseTo(0, 6);
  });

  it('refuses a lot that has too little free, saying how much there is', async () => {
    const campaign = await buying.campaign({ uses: [{ day: '2026-03-10', amount: 1200 }] });
    const { message } = await world.refused('keepLot', { campaign: campaign.id, lotNumber: lot(), ...unchecked });
    expect(message).toBe(
      `invalid input.lotNumber: ${lot()}, a lot with 1.2 kg free; of ${lot()} 1 kg are, the rest is kept for somebody or cannot be used`,
    );
    expect((await world.look(drum.label)).freeDryGrams).toBeCloseTo(1000, 6);
  });

  it('takes an unchecked lot only when that is said, and a rejected one never', async () => {
    await world.drum(800, {}, { lotNumber: `G-${made}`, receivedAt: world.ago(24 * 60) });
    const campaign = await buying.campaign();
    const asked = { campaign: campaign.id, lotNumber: `G-${made}` };
    expect(await world.refused('keepLot', asked)).toMatchObject({
      path: 'input.takeUnchecked',
      expected: `true, to keep G-${made} before its check is done: it is marked so`,
    });
    const { notes } = await buying.keep(campaign, `G-${made}`, unchecked);
    expect(notes).toEqual([`lot G-${made} is not checked yet`]);
    const rejected = {
      sorbent: silica,
      lotNumber: `G-${made}`,
      outcome: 'REJECTED',
      why: 'the second dye runs higher',
    };
    await world.tell('decideLot', rejected, '__typename');
    const other = await buying.campaign({ name: 'other' });
    const again = { campaign: other.id, lotNumber: `G-${made}`, ...unchecked };
    expect((await world.refused('keepLot', again)).message).toMatch(/a lot that was not rejected by its check/);
  });

  it('follows its uses when they change, and frees everything when it is dropped', async () => {
    const campaign = await buying.campaign();
    await buying.keep(campaign, lot(), unchecked);
    const uses = [{ day: '2026-03-20', amount: 900 }];
    await world.tell('setCampaign', { id: campaign.id, uses }, '__typename');
    expect((await world.look(drum.label)).freeDryGrams).toBeCloseTo(100, 6);
    const more = { id: campaign.id, uses: [{ day: '2026-03-20', amount: 1001 }] };
    expect((await world.refused('setCampaign', more)).message).toMatch(/at most 1 kg: no more of F-\d+ is free/);
    await world.tell('setCampaign', { id: campaign.id, postponeWeeks: 2 }, '__typename');
    expect((await again(campaign)).kept?.lastsUntil).toBe('2026-04-03');
    await world.tell('dropCampaign', { id: campaign.id }, '__typename');
    expect((await world.look(drum.label)).freeDryGrams).toBeCloseTo(1000, 6);
    const { notes } = await world.tell<{ notes: string[] }>('restoreCampaign', { id: campaign.id }, 'notes');
    expect(notes).toEqual([]);
    expect((await world.look(drum.label)).freeDryGrams).toBeCloseTo(100, 6);
  });

  it('of plates is counted in whole plates', async () => {
    const box = await world.plates(25, {});
    const campaign = await buying.campaign({ backing: 'GLASS', uses: [{ day: '2026-03-09', amount: 12 }] });
    await buying.keep(campaign, null, unchecked);
    const { container } = await world.ask<{ container: { freePlates: number } }>(
      `{ container(label: "${box.label}") { ... on PlateBox { freePlates } } }`,
    );
    expect(container.freePlates).toBe(13);
  });

  it('and forty-nine others ask at once: no gram is promised twice', async () => {
    const campaigns = await Promise.all(
      Array.from({ length: 20 }, (_, index) =>
        buying.campaign({ name: String(index), uses: [{ day: '2026-03-09', amount: 70 }] }),
      ),
    );
    const kept = campaigns.map((campaign) =>
      world.tell('keepLot', { campaign: campaign.id, lotNumber: lot(), ...unchecked }, '__typename'),
    );
    const needed = Array.from({ length: 12 }, () => need({ dryGrams: 60 }));
    const held = Array.from({ length: 18 }, () =>
      world.tell('holdStock', { label: drum.label, dryGrams: 50, forWhat: 'a person' }, '__typename'),
    );
    await Promise.allSettled([...kept, ...needed, ...held]);
    const { container } = await world.ask<{
      container: { dryGrams: number; freeDryGrams: number; holds: { dryGrams: number }[] };
    }>(`{ container(label: "${drum.label}") { dryGrams freeDryGrams holds { dryGrams } } }`);
    const promised = container.holds.reduce((sum, { dryGrams }) => sum + dryGrams, 0);
    expect(promised).toBeLessThanOrEqual(1000 + 1e-6);
    // Hardly anything is left over: whoever could be served was.
    expect(promised).toBeGreaterThan(1000 - 50);
    expect(container.freeDryGrams).toBeCloseTo(1000 - promised, 6);
  });
});
