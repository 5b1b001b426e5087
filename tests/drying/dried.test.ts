// What waited was dried: all of it, or some of it in a vessel of its own; and weighings become water.
import { expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld } from '../support/world.ts';

interface Request {
  id: string;
  state: string;
}

describeEngines('what waited for the oven', (on) => {
  it('some of a drum dried in a tray of its own answers the request; the drum keeps the rest', async () => {
    const world = await newWorld(await on.fresh(), { estimates: false });
    await world.furnished();
    await world.tell('addVessel', { name: 'tray', innerDiameterMm: 300, heightMm: 40 }, 'vessel { name }');
    const drum = await world.drum(1000, { basis: 'DRY' });
    const request = await world.tell<Request>('requestDrying', { label: drum.label, why: 'for Friday', dryGrams: 200 });
    const stateNow = async () =>
      (
        await world.ask<{ node: Request }>('query ($id: ID!) { node(id: $id) { ... on DryingRequest { state } } }', {
          id: request.id,
        })
      ).node.state;

    expect((await world.refused('recordRequestedDrying', { id: request.id, grams: 200, basis: 'DRY' })).path).toBe(
      'input.vessel',
    );
    const dried = await world.tell('recordRequestedDrying', {
      id: request.id,
      grams: 200,
      basis: 'DRY',
      vessel: 'tray',
      temperatureC: 150,
      minutes: 60,
      waterFraction: 0.004,
    });
    expect(dried.made?.dryGrams).toBeCloseTo(200, 6);
    expect(dried.container.label).toBe(dried.made?.label);
    expect((await world.look(drum.label)).dryGrams).toBeCloseTo(800, 6);
    expect(await stateNow()).toBe('DRIED');
    // Taken back, it waits again; what was poured out stays poured out.
    await world.tell('correctEvent', { event: dried.event.id, void: true });
    expect(await stateNow()).toBe('WAITING');
    expect((await world.look(drum.label)).dryGrams).toBeCloseTo(800, 6);
  });

  it('all of it is dried where it is; a request taken off the list comes back to its place', async () => {
    const world = await newWorld(await on.fresh(), { estimates: false });
    await world.furnished();
    const labels = [await world.drum(10), await world.drum(20), await world.drum(30)].map(({ label }) => label);
    const ids: string[] = [];
    for (const label of labels) ids.push((await world.tell<Request>('requestDrying', { label, why: 'wet' })).id);
    const waiting = async () =>
      (
        await world.ask<{ dryingRequests: { nodes: Request[] } }>('{ dryingRequests { nodes { id } } }')
      ).dryingRequests.nodes.map(({ id }) => id);
    await world.tell('withdrawDrying', { id: ids[1] });
    expect(await waiting()).toEqual([ids[0], ids[2]]);
    await world.tell('restoreDrying', { id: ids[1] });
    expect(await waiting()).toEqual(ids);
    const dried = await world.tell('recordRequestedDrying', { id: ids[0], temperatureC: 150, minutes: 60 });
    expect(dried.made).toBeNull();
    expect(dried.container.label).toBe(labels[0]);
    expect(await waiting()).toEqual([ids[1], ids[2]]);
    expect((await world.refused('restoreDrying', { id: ids[0] })).expected).toMatch(/undo that drying/);
  });

  it('weighings are walked to constant mass: 2.0000 g of which 0.0400 g went is 2.04 % dry, 2.00 % as received', async () => {
    const world = await newWorld(await on.fresh(), { estimates: false });
    const walk = async (after: number[]) =>
      (
        await world.ask<{ lossOnDrying: Record<string, unknown> }>(
          `query ($after: [WeighingAfterInput!]!) { lossOnDrying(tareGrams: 20, beforeGrams: 22, after: $after, resolutionGrams: 0.0001) {
            waterFraction asReceivedFraction constantAt advice impossible { path expected } } }`,
          { after: after.map((grossGrams) => ({ grossGrams })) },
        )
      ).lossOnDrying;
    const found = await walk([21.961, 21.96]);
    expect(found['constantAt']).toBe(1);
    expect(found['asReceivedFraction']).toBeCloseTo(0.04 / 2, 9);
    expect(found['waterFraction']).toBeCloseTo(0.04 / 1.96, 9);
    expect((await walk([21.97]))['constantAt']).toBeNull();
    expect((await walk([21.97, 22.5]))['impossible']).toMatchObject({ path: 'after.1.grossGrams' });
  });
});
