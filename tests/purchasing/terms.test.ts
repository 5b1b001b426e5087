// What a lab sets for buying: amounts that are none are refused, one bad key spoils no other, the currency stays of what is written.
import { beforeAll, describe, expect, it } from 'vitest';
import { purchaseSettingsOf } from '../../api/purchasing/settings.ts';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';
import { buyingOf, silica } from './lab.ts';

describe('what is stored of a lab’s choices', () => {
  it('is read key by key: one that nobody can read is as if it were not set', () => {
    const read = purchaseSettingsOf({ purchasing: { weeks: 30, checkMinor: '', serviceLevel: 0.9, other: true } });
    expect(read).toMatchObject({ weeks: 30, serviceLevel: 0.9, checkMinor: purchaseSettingsOf({}).checkMinor });
    expect(read.own.sort()).toEqual(['serviceLevel', 'weeks']);
    expect(purchaseSettingsOf(null).own).toEqual([]);
  });
});

describeEngines('terms', (on) => {
  let world: World;
  let buying: ReturnType<typeof buyingOf>;
  beforeAll(async () => {
    world = await newWorld(await on.fresh(), { estimates: false });
    await world.furnished();
    buying = buyingOf(world);
  });

  it('take an amount, or null for none; empty text is neither', async () => {
    const set = (input: Record<string, unknown>) =>
      world.tell<{ lab: { purchasing: { own: string[]; checkCost: { amount: string } } } }>(
        'setPurchasing',
        input,
        'lab { purchasing { own checkCost { amount } } }',
      );
    await set({ weeks: 30, checkCost: '70' });
    expect(await world.refused('setPurchasing', { checkCost: '' })).toMatchObject({ path: 'input.checkCost' });
    expect((await set({ checkCost: null })).lab.purchasing).toEqual({ own: ['weeks'], checkCost: { amount: '90.00' } });
    const uses = [{ day: '2026-04-07', amount: 100 }];
    const { storage } = await world.tell<{ storage: { id: string } }>(
      'addStorage',
      { name: 'cellar', capacityL: 10 },
      'storage { id }',
    );
    const acts: [string, string, object][] = [
      ['setSupplierTerms', 'deliveryFee', { supplier: 'Marlpit Chemicals' }],
      ['setSupplierTerms', 'minOrder', { supplier: 'Marlpit Chemicals' }],
      ['addStorage', 'overCost', { name: 'cold store', capacityL: 10 }],
      ['setStorage', 'overCost', { id: storage.id }],
      ['setStockItem', 'checkCost', { sorbent: silica }],
      ['addCampaign', 'uncoveredCost', { name: 'resins', sorbent: silica, uses }],
    ];
    for (const [mutation, name, input] of acts)
      expect(await world.refused(mutation, { ...input, [name]: '' }), mutation).toMatchObject({
        path: `input.${name}`,
        message: expect.stringContaining(`missing input.${name}`),
      });
  });

  it('keep their currency once an amount is written down, wherever that is', async () => {
    const currency = async (code: string) =>
      (
        await world.tell<{ lab: { purchasing: { currency: string; own: string[] } } }>(
          'setPurchasing',
          { currency: code },
          'lab { purchasing { currency own } }',
        )
      ).lab.purchasing;
    await world.tell('setPurchasing', { checkCost: '70' }, '__typename');
    // What a check cost in another currency does not go on counting.
    expect(await currency('JPY')).toEqual({ currency: 'JPY', own: expect.not.arrayContaining(['checkMinor']) });
    await currency('EUR');
    await world.tell('setSupplierTerms', { supplier: 'Marlpit Chemicals', deliveryFee: '18' }, '__typename');
    await world.tell('setStockItem', { sorbent: silica, checkCost: '40' }, '__typename');
    expect((await world.refused('setPurchasing', { currency: 'JPY' })).expected).toBe(
      'EUR: there are suppliers’ terms, costs of checks in it; they would be other amounts',
    );
  });

  it('of an offer: times that nobody told apart follow the usual one', async () => {
    const id = await buying.offer({ leadUsualWeeks: 2 });
    const fields = 'offer { leadLeastWeeks leadUsualWeeks leadMostWeeks }';
    const later = await world.tell('setOffer', { id, leadUsualWeeks: 5 }, fields);
    expect(later).toMatchObject({ offer: { leadLeastWeeks: 5, leadUsualWeeks: 5, leadMostWeeks: 5 } });
    await world.tell('setOffer', { id, leadMostWeeks: 9 }, fields);
    const sooner = await world.tell('setOffer', { id, leadUsualWeeks: 3 }, fields);
    expect(sooner).toMatchObject({ offer: { leadLeastWeeks: 3, leadUsualWeeks: 3, leadMostWeeks: 9 } });
    expect((await world.refused('setOffer', { id, prices: null })).path).toBe('input.prices');
  });
});
