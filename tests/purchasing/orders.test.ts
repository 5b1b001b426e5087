// Orders from asked for to the shelf: in parts, damaged, of another lot; each step taken back; as a list and as a letter.
import { beforeAll, expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';
import { buyingOf, orderFields, type SeenOrder, silica } from './lab.ts';

describeEngines('an order', (on) => {
  let world: World;
  let buying: ReturnType<typeof buyingOf>;
  let offer: string;
  beforeAll(async () => {
    world = await newWorld(await on.fresh());
    await world.furnished();
    buying = buyingOf(world);
    await world.tell(
      'setSupplierTerms',
      { supplier: 'Marlpit Chemicals', deliveryFee: '18', minOrder: '50' },
      '__typename',
    );
    offer = await buying.offer({ articleNumber: '=HYPERLINK(1)' });
  });

  const asked = async (packs = 3, more: object = {}) =>
    (await buying.order('askForOrder', { offer, packs, ...more })).order;
  const vessel = { room: 'wet bench', innerDiameterMm: 120, heightMm: 250 };
  const read = async ({ id }: { id: string }): Promise<SeenOrder> =>
    (
      await world.ask<{ node: SeenOrder }>(`query ($id: ID!) { node(id: $id) { ... on Order { ${orderFields} } } }`, {
        id,
      })
    ).node;

  it('is asked for at the price of so many packs, bought, and put on the shelf as anything that comes in', async () => {
    const order = await asked(3);
    expect(order).toMatchObject({ stateWords: 'asked for', packsToCome: 3, price: { amount: '80.00', minor: '8000' } });
    expect(order.total).toEqual({ amount: '240.00' });
    const { order: bought } = await buying.order('placeOrder', { id: order.id, theirNumber: 'M-77' });
    // Two weeks are usual, and today is Monday 2 March.
    expect(bought).toMatchObject({ stateWords: 'bought', expectedOn: '2026-03-16' });
    const { order: here } = await buying.order('shelveOrder', {
      id: order.id,
      lotNumber: 'F-200',
      certificateWaterPercent: 2,
      ...vessel,
    });
    expect(here).toMatchObject({ stateWords: 'on the shelf', packsToCome: 0 });
    const [delivery] = here.deliveries;
    expect(delivery?.containers.map(({ dryGrams }) => dryGrams)).toEqual([
      expect.closeTo(980, 6),
      expect.closeTo(980, 6),
      expect.closeTo(980, 6),
    ]);
    const { container } = await world.ask<{ container: { lot: { lotNumber: string; supplier: { name: string } } } }>(
      `{ container(label: "${delivery?.containers[0]?.label}") { lot { lotNumber supplier { name } } } }`,
    );
    expect(container.lot).toEqual({ lotNumber: 'F-200', supplier: { name: 'Marlpit Chemicals' } });
  });

  it('comes in parts, with a damaged drum, and is whole when nothing is to come', async () => {
    const { id } = await asked(4);
    const { order: part, notes } = await buying.order('shelveOrder', { id, packs: 1, lotNumber: 'F-201', ...vessel });
    expect(part).toMatchObject({ stateWords: 'bought', packsToCome: 3 });
    expect(notes.at(-1)).toBe('3 packs still to come');
    const tooMany = { id, packs: 4, lotNumber: 'F-201', ...vessel };
    expect((await world.refused('shelveOrder', tooMany)).message).toMatch(
      /at most 3: 3 packs of order \d+ are to come/,
    );
    const { order: rest, notes: said } = await buying.order('shelveOrder', {
      ...{ id, damagedPacks: 1, lotNumber: 'F-201', room: 'wet bench' },
    });
    expect(rest).toMatchObject({ stateWords: 'on the shelf', packsToCome: 0 });
    expect(rest.deliveries.map(({ packs, damagedPacks }) => [packs, damagedPacks])).toEqual([
      [1, 0],
      [2, 1],
    ]);
    expect(said).toContain('1 pack came damaged: not on the shelf, and not to come any more');
  });

  it('stands as the last pack of its size stood, and not as one of another size', async () => {
    const large = await buying.offer({ packGrams: 5000 });
    const ask = async (of: string) => (await buying.order('askForOrder', { offer: of, packs: 1 })).order.id;
    const wide = { room: 'wet bench', innerDiameterMm: 260, heightMm: 400 };
    await buying.order('shelveOrder', { id: await ask(large), lotNumber: 'F-210', ...wide });
    await buying.order('shelveOrder', { id: await ask(offer), lotNumber: 'F-211', ...vessel });
    const standing = async (of: string, lotNumber: string) => {
      const { order } = await buying.order('shelveOrder', { id: await ask(of), lotNumber, room: 'wet bench' });
      const label = order.deliveries[0]?.containers[0]?.label ?? '';
      const { container } = await world.ask<{ container: { innerDiameterMm: number } }>(
        `{ container(label: "${label}") { innerDiameterMm } }`,
      );
      return container.innerDiameterMm;
    };
    expect([await standing(large, 'F-212'), await standing(offer, 'F-213')]).toEqual([260, 120]);
    const other = await buying.offer({ packGrams: 450 });
    const nowhere = { id: await ask(other), lotNumber: 'F-214', room: 'wet bench' };
    expect((await world.refused('shelveOrder', nowhere)).message).toMatch(
      /^missing input.vessel.*no pack of this size/,
    );
    await world.tell('callOffOrder', { id: nowhere.id }, '__typename');
  });

  it('of more packs than may come in at once is put on the shelf in parts, and says so', async () => {
    const { id } = await asked(201);
    expect(await world.refused('shelveOrder', { id, lotNumber: 'F-220', ...vessel })).toMatchObject({
      path: 'input.packs',
      expected: 'at most 200 at once: put the others on the shelf after them',
    });
    expect((await world.refused('placeOrder', { id, price: '' })).path).toBe('input.price');
    await world.tell('callOffOrder', { id }, '__typename');
  });

  it('of another lot than wished for is kept only when that is said', async () => {
    const { id } = await asked(1, { lotWished: 'F-300' });
    const wrong = { id, lotNumber: 'F-301', ...vessel };
    expect(await world.refused('shelveOrder', wrong)).toMatchObject({
      path: 'input.takeOtherLot',
      expected: 'true, to keep F-301 although F-300 was asked for',
    });
    const { order } = await buying.order('shelveOrder', { ...wrong, takeOtherLot: true });
    expect(order.deliveries).toMatchObject([{ lotNumber: 'F-301', isOtherLot: true }]);
  });

  it('is taken back step by step, its drums with it, unless somebody has touched one', async () => {
    const { id } = await asked(1);
    await buying.order('placeOrder', { id });
    const { order: here } = await buying.order('shelveOrder', { id, lotNumber: 'F-400', ...vessel });
    const label = here.deliveries[0]?.containers[0]?.label ?? '';
    await world.tell('openContainer', { label });
    expect((await world.refused('takeOrderBack', { id })).message).toContain(`${label} was`);
    const { order: other } = await buying.order('askForOrder', { offer, packs: 1 });
    await buying.order('shelveOrder', { id: other.id, lotNumber: 'F-401', ...vessel });
    const { order: back } = await buying.order('takeOrderBack', { id: other.id });
    expect(back).toMatchObject({ stateWords: 'bought', packsToCome: 1, deliveries: [] });
    const { lots } = await world.ask<{ lots: { nodes: { lotNumber: string; dryGrams: number }[] } }>(
      '{ lots(first: 50) { nodes { lotNumber dryGrams } } }',
    );
    expect(lots.nodes.find(({ lotNumber }) => lotNumber === 'F-401')?.dryGrams).toBe(0);
    const steps = [];
    for (let step = 0; step < 2; step++)
      steps.push((await buying.order('takeOrderBack', { id: other.id })).order.stateWords);
    expect(steps).toEqual(['asked for', 'called off']);
    expect((await buying.order('takeOrderBack', { id: other.id })).order.stateWords).toBe('asked for');
    await buying.order('callOffOrder', { id: other.id });
    expect((await world.refused('shelveOrder', { id: other.id, lotNumber: 'F-402', ...vessel })).message).toMatch(
      /an order that can be on the shelf: this one is called off/,
    );
  });

  it('told twice under one key is one order', async () => {
    const input = { offer, packs: 2, clientKey: 'once' };
    const [first, second] = [await asked(2, { clientKey: 'once' }), await buying.order('askForOrder', input)];
    expect(second.order.id).toBe(first.id);
    await buying.order('callOffOrder', { id: first.id });
  });

  it('stands on a list as CSV without formulas, and in a letter to its supplier with what it comes to', async () => {
    const order = await read(await asked(2, { note: 'before Friday' }));
    const { orderList } = await world.ask<{ orderList: { csv: string; text: string; orders: number } }>(
      '{ orderList { orders csv text } }',
    );
    expect(orderList.orders).toBe(1);
    const [head, line] = orderList.csv.split('\n');
    expect(head).toBe(
      'order,state,supplier,article,item,packs,pack,pack unit,price of a pack,total,currency,lot wished,asked for on,expected on,note',
    );
    expect(line).toBe(
      `${order.number},asked for,Marlpit Chemicals,'=HYPERLINK(1),${silica},2,1000,g,84.50,169.00,EUR,,2026-03-02,,before Friday`,
    );
    expect(orderList.text).toBe(
      [
        'To Marlpit Chemicals',
        '',
        `- ${silica} (your no. =HYPERLINK(1)): 2 packs of 1 kg, 84.50 EUR each, 169.00 EUR`,
        `  our order ${order.number}`,
        '  before Friday',
        '',
        'Delivery: 18.00 EUR',
        'In all: 187.00 EUR',
        '',
      ].join('\n'),
    );
  });

  it('is refused for more packs than the offer has, and an offer for prices that rise', async () => {
    const few = await buying.offer({ mostPacks: 2 });
    expect((await world.refused('askForOrder', { offer: few, packs: 3 })).message).toMatch(/at most 2 packs/);
    await world.tell('removeOffer', { id: few }, '__typename');
    expect((await world.refused('askForOrder', { offer: few, packs: 1 })).message).toMatch(
      /an offer that still stands/,
    );
    const wrong = {
      ...{ supplier: 'Marlpit Chemicals', sorbent: silica, packGrams: 1000, leadUsualWeeks: 2 },
      prices: [
        { from: 1, price: '10' },
        { from: 2, price: '11' },
      ],
    };
    expect((await world.refused('addOffer', wrong)).path).toBe('input.prices.1.price');
    expect((await world.refused('setPurchasing', { currency: 'USD' })).message).toMatch(
      /EUR: there are offers, orders, suppliers’ terms in it/,
    );
    const cheaper = { id: offer, prices: [{ from: 1, price: '60' }] };
    const set = await world.tell<{ offer: { prices: { price: { text: string } }[]; supplier: { name: string } } }>(
      'setOffer',
      cheaper,
      'offer { prices { price { text } } supplier { name } }',
    );
    expect(set.offer).toEqual({ prices: [{ price: { text: '60.00 EUR' } }], supplier: { name: 'Marlpit Chemicals' } });
  });

  it('was asked for on the day of the lab’s clock, not of another one', async () => {
    const midnight = new Date('2026-03-03T22:30:00Z');
    world.later((midnight.getTime() - world.now().getTime()) / 60_000);
    const { number } = await asked(1);
    const { orderList } = await world.ask<{ orderList: { csv: string } }>('{ orderList { csv } }');
    const line = orderList.csv.split('\n').find((one) => one.startsWith(`${number},`));
    // Half past midnight in Helsinki.
    expect(line?.split(',')).toContain('2026-03-04');
  });
});
