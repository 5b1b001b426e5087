// A sorbent's own isotherm from samples weighed after standing over saturated salts.
import { expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld } from '../support/world.ts';

const query = `query ($input: IsothermFitInput!) { isothermFit(input: $input) {
  ... on IsothermFit { fromClass misfitPercent cannotTell notes source points { over relativeHumidityPercent waterFraction addedFraction }
    curve { relativeHumidityPercent classWaterFraction waterFraction low high } }
  ... on Refusal { message path expected } } }`;

interface Fit {
  fromClass: string;
  cannotTell: string[];
  notes: string[];
  source: string;
  points: { over: string; relativeHumidityPercent: number; waterFraction: number; addedFraction: number }[];
  curve: {
    relativeHumidityPercent: number;
    classWaterFraction: number;
    waterFraction: number;
    low: number;
    high: number;
  }[];
  message?: string;
  path?: string;
}

const magnesium = 'Magnesium silicate';

describeEngines('a sorbent’s own isotherm', (on) => {
  async function lab() {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    await world.tell('addSorbent', { name: magnesium, sorbentClass: 'magnesium silicate' }, '__typename');
    const fit = async (points: object[], more: object = {}) =>
      (await world.ask<{ isothermFit: Fit }>(query, { input: { sorbent: magnesium, points, ...more } })).isothermFit;
    return { world, fit };
  }

  it('one sample over a salt makes the class’s curve higher or lower, and says what it cannot tell', async () => {
    const { fit } = await lab();
    // 10 g dry in a bottle of 20 g, 10.55 g with its water: 5.5 %.
    const sample = { salt: 'magnesium chloride', temperatureC: 25, tareGrams: 20, beforeGrams: 30.55, afterGrams: 30 };
    const shown = await fit([sample], { by: 'bench lead', weighedOn: '2026-02-27T12:00:00Z' });
    // Greenspan 1977: 32.78 % RH over magnesium chloride at 25 °C.
    expect(shown.points[0]?.relativeHumidityPercent).toBeCloseTo(32.78, 1);
    expect(shown.points[0]?.waterFraction).toBeCloseTo(0.055, 9);
    expect(shown.source).toBe(
      'weighed over magnesium chloride at 25 °C; 2026-02-27, by bench lead; begun from magnesium silicate',
    );
    const at = (percent: number) => shown.curve.find((one) => Math.abs(one.relativeHumidityPercent - percent) < 0.01);
    const [low, high] = [at(20), at(60)];
    expect((high?.waterFraction ?? 0) / (high?.classWaterFraction ?? 1)).toBeCloseTo(
      (low?.waterFraction ?? 0) / (low?.classWaterFraction ?? 1),
      9,
    );
    expect(shown.cannotTell[0]).toMatch(/^One point cannot tell the shape/);
    expect(shown.cannotTell.join(' ')).toMatch(/above 33 % RH/);
    // Weighed to 5 % where it stood; as unsure as its class, a factor of two, where nothing was weighed.
    expect((low?.high ?? 0) / (low?.waterFraction ?? 1)).toBeCloseTo(Math.exp(1.645 * 0.05), 6);
    const wet = at(80);
    expect((wet?.high ?? 0) / (wet?.waterFraction ?? 1)).toBeCloseTo(2 ** 1.645, 6);
  });

  it('a sample dried at 105 °C counts what that leaves behind', async () => {
    const { fit } = await lab();
    const sample = { salt: 'magnesium chloride', temperatureC: 25, waterFraction: 0.05, basis: 'DRY' };
    const [hot, cool] = [await fit([sample]), await fit([{ ...sample, driedAtC: 105 }])];
    expect(hot.points[0]?.addedFraction).toBeCloseTo(0, 12);
    expect(cool.points[0]?.addedFraction).toBeGreaterThan(0.0005);
    expect(cool.points[0]?.waterFraction).toBeGreaterThan(hot.points[0]?.waterFraction ?? 1);
  });

  it('impossible weighings are refused where they stand, with what would be right', async () => {
    const { fit } = await lab();
    const sample = { salt: 'magnesium chloride', temperatureC: 25, beforeGrams: 10.5, afterGrams: 10 };
    const refusal = async (more: object) => {
      const { message, path } = await fit([sample, { ...sample, ...more }]);
      return `${path} | ${message}`;
    };
    expect(await refusal({ afterGrams: 10.7 })).toMatch(
      /^input\.points\.1\.afterGrams \| invalid input\.points\.1\.afterGrams: 10\.7, no more than the weighing before/,
    );
    expect(await refusal({ afterGrams: 10.5 })).toMatch(
      /^input\.points\.1\.afterGrams \| .*without water tells nothing/,
    );
    expect(await refusal({ tareGrams: 11 })).toMatch(/^input\.points\.1\.tareGrams/);
    expect(await refusal({ salt: 'potassium acetate', temperatureC: 45 })).toMatch(
      /^input\.points\.1\.temperatureC \| .*0 to 30 °C/,
    );
    expect(await refusal({ salt: 'sugar' })).toMatch(/^input\.points\.1\.salt \| unknown .*one of: lithium chloride/);
    expect(await refusal({ salt: 'potassium sulfate' })).toMatch(/^input\.points\.1\.salt \| .*below 95 % RH/);
    expect(await refusal({ salt: null })).toMatch(/^input\.points\.1\.salt \| missing/);
    expect(await refusal({ beforeGrams: null })).toMatch(/^input\.points\.1\.beforeGrams \| missing/);
  });

  it('what is far from its class is asked about, not refused', async () => {
    const { fit } = await lab();
    const { notes } = await fit([{ salt: 'sodium chloride', temperatureC: 25, waterFraction: 0.45, basis: 'DRY' }]);
    expect(notes[0]).toMatch(/^45\.0 % at 75 % RH is \d times what magnesium silicate holds there/);
  });

  it('kept, its numbers are measured, its estimates follow, and they can be put back', async () => {
    const { world } = await lab();
    const lot = { sorbent: magnesium };
    const { label } = await world.drum(400, { closure: 'OPEN' }, lot);
    type Water = { container: { exposure: { meanWaterFraction: number; low: number; high: number } } };
    const water = async () =>
      (
        await world.ask<Water>(
          `query ($label: String!) { container(label: $label) { exposure { meanWaterFraction low high } } }`,
          { label },
        )
      ).container.exposure;
    const before = await water();
    type Kept = {
      sorbent: { properties: { name: string; value: number; origin: string; confidence: string; source: string }[] };
    };
    const properties = 'sorbent { properties { name value origin confidence source } }';
    const was = (
      await world.ask<{ sorbents: { nodes: { name: string; properties: object[] }[] } }>(
        '{ sorbents { nodes { name properties { name value origin confidence source } } } }',
      )
    ).sorbents.nodes.find(({ name }) => name === magnesium)?.properties;
    const points = [{ salt: 'magnesium chloride', temperatureC: 25, waterFraction: 0.09, basis: 'DRY' }];
    const { sorbent } = await world.tell<Kept>(
      'fitSorbentIsotherm',
      { sorbent: magnesium, points, by: 'stores' },
      properties,
    );
    const film = sorbent.properties.find(({ name }) => name === 'filmCapacity');
    expect(film).toMatchObject({
      origin: 'MEASURED',
      source: expect.stringMatching(/^weighed over magnesium chloride at 25 °C; 2026-03-02, by stores/),
    });
    const after = await water();
    expect(after.meanWaterFraction).toBeGreaterThan(1.1 * before.meanWaterFraction);
    expect(after.high / after.low).toBeLessThan(before.high / before.low);
    await world.tell('setSorbentProperties', { sorbent: magnesium, properties: was }, properties);
    expect((await water()).meanWaterFraction).toBeCloseTo(before.meanWaterFraction, 12);
  });

  it('a class that no table knows begins from one that the lab chooses, with its packing as a guess', async () => {
    const { world } = await lab();
    await world.tell('addSorbent', { name: 'House gel', sorbentClass: 'house gel' }, '__typename');
    const { label } = await world.drum(300, {}, { sorbent: 'House gel' });
    const state = async () =>
      (
        await world.ask<{ container: { exposure: { state: string } } }>(
          `query ($label: String!) { container(label: $label) { exposure { state } } }`,
          { label },
        )
      ).container.exposure.state;
    expect(await state()).toBe('UNKNOWN');
    const points = [{ salt: 'potassium carbonate', temperatureC: 22, waterFraction: 0.07 }];
    expect((await world.refused('fitSorbentIsotherm', { sorbent: 'House gel', points })).message).toMatch(
      /^missing input\.fromClass, the class to begin from/,
    );
    await world.tell('fitSorbentIsotherm', { sorbent: 'House gel', fromClass: 'silica', points }, '__typename');
    expect(await state()).toBe('GOOD');
  });
});
