// A supplier's barcode is learned once and known from then on, on both engines.
import { beforeAll, expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';

describeEngines('a supplier’s barcode', (on) => {
  let world: World;
  beforeAll(async () => {
    world = await newWorld(await on.fresh(), { estimates: false });
    await world.furnished();
  });

  const learned = 'learned { sorbent { name } supplier { name } kind grams plates vessel { name } backing closure }';
  const read = (code: string) =>
    world
      .ask<{
        barcode: { code: string; lotNumber: string | null; learned: Record<string, unknown> | null };
      }>(`query ($code: String!) { barcode(code: $code) { code lotNumber expiresOn ${learned} } }`, { code })
      .then(({ barcode }) => barcode);
  const drum = { sorbent: 'Silica 40–63 µm', supplier: 'Marlpit Chemicals', kind: 'DRUM', grams: 1000 };

  it('nobody knows at first, though its lot can be read', async () => {
    expect(await read('(01)09501101020917(17)270531(10)F-118')).toMatchObject({
      code: '09501101020917',
      lotNumber: 'F-118',
      expiresOn: '2027-05-31',
      learned: null,
    });
  });

  it('once learned is known by every text with its trade item number', async () => {
    await world.tell('learnBarcode', { ...drum, code: '(01)09501101020917(10)F-118', closure: 'SEALED' });
    for (const code of ['9501101020917', ']d2010950110102091710F-119']) {
      expect((await read(code)).learned).toEqual({
        sorbent: { name: 'Silica 40–63 µm' },
        supplier: { name: 'Marlpit Chemicals' },
        kind: 'DRUM',
        grams: 1000,
        plates: null,
        vessel: null,
        backing: null,
        closure: 'SEALED',
      });
    }
  });

  it('learned anew says the last thing', async () => {
    const box = { sorbent: 'Silica 40–63 µm', kind: 'PLATE_BOX', plates: 25, backing: 'ALUMINIUM' };
    await world.tell('learnBarcode', { ...box, code: '9501101020917' });
    expect((await read('9501101020917')).learned).toMatchObject({ kind: 'PLATE_BOX', plates: 25, grams: null });
    const { barcodes } = await world.ask<{ barcodes: { totalCount: number } }>('{ barcodes { totalCount } }');
    expect(barcodes.totalCount).toBe(1);
  });

  it('can be forgotten, once', async () => {
    await world.tell('forgetBarcode', { code: '9501101020917' });
    expect((await read('9501101020917')).learned).toBeNull();
    expect((await world.refused('forgetBarcode', { code: '9501101020917' })).path).toBe('input.code');
  });

  it.each([
    [{ code: 'MC-1', kind: 'DRUM' }, 'input.grams'],
    [{ code: 'MC-1', kind: 'PLATE_BOX' }, 'input.plates'],
    [{ code: 'MC-1', kind: 'DRUM', grams: 5, sorbent: 'Chalk' }, 'input.sorbent'],
    [{ code: 'MC-1', kind: 'DRUM', grams: 5, vessel: 'a bath' }, 'input.vessel'],
    [{ code: 'x', kind: 'DRUM', grams: 5 }, 'input.code'],
    [{ code: 'MC-1', kind: 'COLUMN', grams: 5 }, 'input.kind'],
  ])('%j is refused at %s', async (input, path) => {
    expect((await world.refused('learnBarcode', { sorbent: 'Silica 40–63 µm', ...input })).path).toBe(path);
  });
});

describeEngines('labels to print', (on) => {
  it('are of the containers asked for, in that order, whatever else was asked', async () => {
    const world = await newWorld(await on.fresh(), { estimates: false });
    await world.furnished();
    const [a, b] = await world.came([
      { kind: 'DRUM', grams: 1000, innerDiameterMm: 120, heightMm: 250 },
      { kind: 'PLATE_BOX', plates: 25, backing: 'PLASTIC' },
    ]);
    const labels = [b?.label, a?.label.toLowerCase().replace('-', ''), 'no label', b?.label];
    const { labelled } = await world.ask<{ labelled: { label: string; labelCautions: string[] }[] }>(
      'query ($labels: [String!]!) { labelled(labels: $labels) { label labelCautions } }',
      { labels },
    );
    expect(labelled).toEqual([
      { label: b?.label, labelCautions: ['plastic backing: at most 90 °C, flat'] },
      { label: a?.label, labelCautions: ['dry powder: hood or mask', 'warms when wetted'] },
    ]);
  });
});
