// What stands behind the stock is put right afterwards, and the estimates follow.
import { expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';

interface Exposure {
  state: string;
  meanWaterFraction: number;
  upperWaterFraction: number | null;
  lowerWaterFraction: number | null;
}

const silica = 'Silica 40–63 µm';

async function exposureOf(world: World, label: string): Promise<Exposure> {
  const { container } = await world.ask<{ container: { exposure: Exposure } }>(
    `query ($label: String!) { container(label: $label) { exposure { state meanWaterFraction upperWaterFraction lowerWaterFraction } } }`,
    { label },
  );
  return container.exposure;
}

const oneLot = `query { lots { nodes { lotNumber retestOn certificateWaterFraction supplier { name } note } } }`;

describeEngines('what stands behind the stock', (on) => {
  it('another band is another answer at once, and a lot’s own band goes before its sorbent’s', async () => {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    await world.tell('addSorbent', { name: 'Another silica', sorbentClass: 'silica' }, '__typename');
    await world.drum(600, { startWaterFraction: 0.03 }, { sorbent: 'Another silica' });
    const { label } = await world.drum(600, { startWaterFraction: 0.03 }, { lotNumber: 'F-1' });
    expect((await exposureOf(world, label)).state).toBe('GOOD');
    const set = { sorbent: silica, policy: 'DRY', upperWaterFraction: 0.025 };
    const change = (more: object = {}) =>
      world.ask<{ targetChange: unknown }>(
        `query ($input: TargetChangeInput!) { targetChange(input: $input) { ... on TargetChange { containers judged changed { label before after } } ... on Refusal { path expected } } }`,
        { input: { ...set, ...more } },
      );
    expect((await change()).targetChange).toEqual({
      containers: 1,
      judged: 1,
      changed: [{ label, before: 'GOOD', after: 'REDRY' }],
    });
    expect((await exposureOf(world, label)).state).toBe('GOOD');
    await world.tell('setSorbentTarget', set, '__typename');
    expect(await exposureOf(world, label)).toMatchObject({ state: 'REDRY', upperWaterFraction: 0.025 });
    await world.tell(
      'setLotTarget',
      { sorbent: silica, lotNumber: 'F-1', policy: 'DRY', upperWaterFraction: 0.06 },
      '__typename',
    );
    expect(await exposureOf(world, label)).toMatchObject({ state: 'GOOD', upperWaterFraction: 0.06 });
    expect((await change()).targetChange).toMatchObject({ containers: 0, changed: [] });
    await world.tell('setLotTarget', { sorbent: silica, lotNumber: 'F-1' }, '__typename');
    expect(await exposureOf(world, label)).toMatchObject({ state: 'REDRY', upperWaterFraction: 0.025 });
  });

  it('bands are told in the ways a lab speaks: as received, by grade, set to a value with a band', async () => {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    await world.tell('addSorbent', { name: 'Alumina', sorbentClass: 'alumina' }, '__typename');
    const fields = 'sorbent { targetPolicy targetUpperWaterFraction targetLowerWaterFraction targetBandWaterFraction }';
    type Kept = { sorbent: Record<string, number | string | null> };
    const set = async (input: Record<string, unknown>) =>
      (await world.tell<Kept>('setSorbentTarget', { sorbent: 'Alumina', ...input }, fields)).sorbent;
    // 5 % of the whole is 5 in 95 dry: 5.263 %.
    expect(
      (await set({ policy: 'DRY', upperWaterFraction: 0.05, basis: 'AS_RECEIVED' })).targetUpperWaterFraction,
    ).toBeCloseTo(1 / 19, 12);
    // Brockmann II of alumina is 3 % water of the whole (from memory, as everywhere).
    expect((await set({ policy: 'DRY', grade: 'ii' })).targetUpperWaterFraction).toBeCloseTo(0.03 / 0.97, 12);
    const made = await set({ policy: 'SET', valueWaterFraction: 0.06, bandWaterFraction: 0.01 });
    expect(made.targetLowerWaterFraction).toBeCloseTo(0.05, 12);
    expect(made.targetUpperWaterFraction).toBeCloseTo(0.07, 12);
    expect(await set({ policy: 'AS_RECEIVED', bandWaterFraction: 0.004 })).toEqual({
      targetPolicy: 'AS_RECEIVED',
      targetUpperWaterFraction: null,
      targetLowerWaterFraction: null,
      targetBandWaterFraction: 0.004,
    });
    const wrong = async (input: Record<string, unknown>) =>
      (await world.refused('setSorbentTarget', { sorbent: 'Alumina', ...input })).message;
    expect(await wrong({ policy: 'DRY', lowerWaterFraction: 0.01 })).toMatch(
      /^invalid input\.lowerWaterFraction: 0\.01, nothing/,
    );
    expect(await wrong({ policy: 'DRY', grade: 'VI' })).toBe('unknown input.grade: VI, one of I, II, III, IV, V');
    expect(await wrong({ policy: 'DRY', grade: 'I' })).toMatch(/^invalid input\.grade: I, grade I has no water/);
    expect(await wrong({ policy: 'SET', valueWaterFraction: 0.05 })).toMatch(/^missing input\.bandWaterFraction/);
    expect(await wrong({ policy: 'SET', lowerWaterFraction: 0.06, upperWaterFraction: 0.05 })).toMatch(
      /^invalid input\.lowerWaterFraction/,
    );
    expect(await wrong({ policy: 'SET' })).toMatch(/^missing input\.valueWaterFraction/);
  });

  it('as received, each lot is held to its own certificate, as far either side as was said', async () => {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    const wet = await world.drum(600, {}, { certificateWaterPercent: 4, certificateBasis: 'DRY' });
    const dry = await world.drum(600, {}, { certificateWaterPercent: 1, certificateBasis: 'DRY' });
    await world.tell(
      'setSorbentTarget',
      { sorbent: silica, policy: 'AS_RECEIVED', bandWaterFraction: 0.008 },
      '__typename',
    );
    const [one, other] = [await exposureOf(world, wet.label), await exposureOf(world, dry.label)];
    expect(one.upperWaterFraction).toBeCloseTo(0.048, 9);
    expect(one.lowerWaterFraction).toBeCloseTo(0.032, 9);
    expect(other.upperWaterFraction).toBeCloseTo(0.018, 9);
    expect(other.lowerWaterFraction).toBeCloseTo(0.002, 9);
  });

  it('a certificate put right is another beginning, told on the timeline; grams and water follow', async () => {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    const certificate = { certificateWaterPercent: 2, certificateBasis: 'DRY', lotNumber: 'F-2' };
    const { label, dryGrams } = await world.drum(510, {}, certificate);
    const given = await world.drum(510, { startWaterFraction: 0.03 }, { ...certificate, lotNumber: 'F-2' });
    expect(dryGrams).toBeCloseTo(500, 6);
    const { notes } = await world.tell<{ notes: string[] }>(
      'setLot',
      {
        sorbent: silica,
        lotNumber: 'F-2',
        certificateWaterPercent: 6.25,
        certificateBasis: 'DRY',
        retestOn: '2027-01-01T00:00:00Z',
        newLotNumber: 'F-2b',
        supplier: 'Marlpit Chemicals',
        note: 'typed wrong',
      },
      'notes',
    );
    expect(notes[0]).toMatch(/^1 arrival now begins with 6\.3\s?%/);
    expect((await world.look(label)).dryGrams).toBeCloseTo(480, 6);
    expect((await exposureOf(world, label)).meanWaterFraction).toBeCloseTo(0.0625, 3);
    expect((await world.look(given.label)).dryGrams).toBeCloseTo(given.dryGrams, 9);
    const { lots } = await world.ask<{ lots: { nodes: unknown[] } }>(oneLot);
    expect(lots.nodes).toEqual([
      {
        lotNumber: 'F-2b',
        retestOn: '2027-01-01T00:00:00.000Z',
        certificateWaterFraction: 0.0625,
        supplier: { name: 'Marlpit Chemicals' },
        note: 'typed wrong',
      },
    ]);
    // And back again, as undo does.
    await world.tell(
      'setLot',
      {
        sorbent: silica,
        lotNumber: 'F-2b',
        newLotNumber: 'F-2',
        certificateWaterPercent: 2,
        certificateBasis: 'DRY',
        retestOn: null,
        note: null,
      },
      'notes',
    );
    expect((await world.look(label)).dryGrams).toBeCloseTo(500, 6);
    const refusal = await world.refused('setLot', {
      sorbent: silica,
      lotNumber: 'F-2',
      certificateMaxWaterPercent: 1,
      certificateBasis: 'DRY',
    });
    expect(refusal).toMatchObject({
      path: 'input.certificateWaterPercent',
      expected: 'at most the highest that the certificate allows',
    });
    expect((await world.refused('setLot', { sorbent: silica, lotNumber: 'F-9', note: 'x' })).message).toBe(
      'unknown input.lotNumber: F-9, one of: F-2',
    );
  });

  it('a sorbent is mended field by field; another class brings its numbers but leaves what was measured', async () => {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    const { label } = await world.drum(600, { closure: 'OPEN' });
    const before = await exposureOf(world, label);
    await world.tell(
      'setSorbentProperty',
      { sorbent: silica, name: 'bulkDensityKgPerM3', value: 530, source: 'weighed a litre' },
      '__typename',
    );
    type Kept = {
      sorbent: { name: string; meshLow: number | null; properties: { name: string; value: number; origin: string }[] };
    };
    const { sorbent } = await world.tell<Kept>(
      'setSorbent',
      {
        sorbent: silica,
        name: 'Alumina, found out',
        sorbentClass: 'Alumina',
        meshLow: 70,
        meshHigh: 230,
        particleSizeLowUm: null,
      },
      'sorbent { name meshLow properties { name value origin } }',
    );
    expect(sorbent).toMatchObject({ name: 'Alumina, found out', meshLow: 70 });
    const number = (name: string) => sorbent.properties.find((one) => one.name === name);
    expect(number('filmC')).toMatchObject({ value: 33.8, origin: 'TABLE' });
    expect(number('bulkDensityKgPerM3')).toMatchObject({ value: 530, origin: 'MEASURED' });
    expect((await exposureOf(world, label)).meanWaterFraction).not.toBeCloseTo(before.meanWaterFraction, 6);
    const back = await world.tell<Kept>(
      'resetSorbentProperty',
      { sorbent: 'Alumina, found out', name: 'bulkDensityKgPerM3' },
      'sorbent { name meshLow properties { name value origin } }',
    );
    expect(back.sorbent.properties.find(({ name }) => name === 'bulkDensityKgPerM3')).toMatchObject({
      value: 950,
      origin: 'TABLE',
    });
    expect((await world.refused('setSorbent', { sorbent: 'Alumina, found out', meshLow: 400 })).path).toBe(
      'input.meshLow',
    );
    expect(
      (
        await world.refused('setSorbentProperty', {
          sorbent: 'Alumina, found out',
          name: 'filmK',
          value: 1.2,
          source: 'x',
        })
      ).message,
    ).toBe('invalid input.value: 1.2, filmK from 0.05 to 0.99 1');
  });

  it('people, suppliers and vessels get their right names; two of one name are refused', async () => {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    await world.tell('addPerson', { role: 'stores', shortName: 'st' }, '__typename');
    await world.tell('addPerson', { role: 'bench lead', shortName: 'bl' }, '__typename');
    await world.tell('addVessel', { name: 'jar', innerDiameterMm: 80, heightMm: 100 }, '__typename');
    const person = await world.tell(
      'setPerson',
      { shortName: 'st', newShortName: 'stores', role: 'stores person' },
      'person { role shortName }',
    );
    expect(person).toMatchObject({ person: { role: 'stores person', shortName: 'stores' } });
    expect((await world.refused('setPerson', { shortName: 'stores', newShortName: 'bl' })).path).toBe(
      'input.newShortName',
    );
    await world.tell('setSupplier', { supplier: 'Marlpit Chemicals', name: 'Marlpit' }, '__typename');
    expect((await world.refused('setSupplier', { supplier: 'Marlpit Chemicals', name: 'x' })).message).toMatch(
      /^unknown input\.supplier/,
    );
    const jar = await world.tell(
      'setVessel',
      { vessel: 'jar', name: 'wide jar', mouthDiameterMm: 60 },
      'vessel { name mouthDiameterMm heightMm }',
    );
    expect(jar).toMatchObject({ vessel: { name: 'wide jar', mouthDiameterMm: 60, heightMm: 100 } });
    expect((await world.refused('setVessel', { vessel: 'wide jar', volumeMl: 5000 })).path).toBe('input.volumeMl');
  });
});
