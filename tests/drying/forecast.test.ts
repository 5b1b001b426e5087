// What an oven would leave, asked before it is done: figures of the tray model, words, refusals, and that it goes the right way.
import { beforeAll, describe, expect, it } from 'vitest';
import { floorSentence, roughly, summaryLine } from '../../api/drying/forecast-words.ts';
import { describeEngines } from '../support/engines.ts';
import { newWorld } from '../support/world.ts';

describe('the words of a forecast', () => {
  const oven = { temperatureC: 130, vacuum: true, fan: false, waterMbar: 5, waterFrom: 'USUAL' } as const;

  it('say no more digits than the model means', () => {
    expect([0.0048, 0.0019, 0.0003, 0.00002, 0.123, 0.0101].map(roughly)).toEqual([
      'half a percent',
      '0.2 %',
      '0.03 %',
      'less than 0.01 %',
      '12 %',
      'one percent',
    ]);
  });

  it('say what stays whatever one does', () => {
    const room = { ...oven, temperatureC: 105, vacuum: false, waterMbar: 14, waterFrom: 'ROOM' } as const;
    expect(floorSentence('this silica', room, 0.0048)).toBe(
      'At 105 °C in this room’s air this silica still keeps about half a percent.',
    );
    expect(floorSentence('these plates', oven, 0.00002)).toBe(
      'At 130 °C under vacuum (5 mbar of water in the chamber) these plates still keep less than 0.01 %.',
    );
  });

  it('say at a glance what is left, and how deep one may go', () => {
    const of = { depthMm: 10, minutes: 60, mean: 0.0019, wettest: 0.0031, deepestMm: 25.4 };
    expect(summaryLine(oven, of, 0.01)).toBe(
      '10 mm of this, 60 min at 130 °C under vacuum: about 0.2 % left, wettest 0.3 %; deepest tray 25 mm',
    );
    expect(summaryLine(oven, { ...of, deepestMm: null }, 0.01)).toMatch(/no tray is dry to one percent by then$/);
    expect(summaryLine(oven, { ...of, depthMm: null }, 0.01)).toMatch(/^these plates, 60 min .* wettest 0.3 %$/);
  });
});

interface Forecast {
  summary: string;
  meanWaterFraction: number;
  wettestWaterFraction: number;
  meanLow: number;
  meanHigh: number;
  minutesToMean: number | null;
  minutesToWettest: number | null;
  deepestMm: number | null;
  limitedBy: string | null;
  floorWaterFraction: number;
  floorSentence: string;
  waterMbar: number;
  startFrom: string;
  depthMm: number | null;
  notes: string[];
}

const fields = `summary meanWaterFraction wettestWaterFraction meanLow meanHigh minutesToMean minutesToWettest deepestMm
  limitedBy floorWaterFraction floorSentence waterMbar startFrom depthMm notes`;

describeEngines('a forecast of a drying', (on) => {
  let world: Awaited<ReturnType<typeof newWorld>>;
  let silica = '';
  beforeAll(async () => {
    world = await newWorld(await on.fresh());
    await world.furnished();
    silica = 'Silica 40–63 µm';
  });

  const forecast = async (args: Record<string, string | number | boolean>): Promise<Forecast> => {
    const said = Object.entries(args).map(([name, value]) => `${name}: ${JSON.stringify(value)}`);
    const { dryingForecast } = await world.ask<{ dryingForecast: Forecast }>(
      `{ dryingForecast(${said.join(', ')}) { ${fields} } }`,
    );
    return dryingForecast;
  };

  it('is that of the fine-grid table: 10 mm of silica from 10 % under vacuum at 130 °C', async () => {
    const of = { sorbent: silica, depthMm: 10, startWaterFraction: 0.1, temperatureC: 130, vacuum: true, target: 0.01 };
    const after = async (minutes: number) => forecast({ ...of, minutes });
    const short = await after(15);
    expect(Math.abs(short.meanWaterFraction - 0.00822)).toBeLessThan(1e-4);
    expect(Math.abs(short.wettestWaterFraction - 0.01109)).toBeLessThan(2.3e-4);
    expect(Math.abs((short.minutesToMean ?? 0) / 14.35 - 1)).toBeLessThan(0.01);
    expect(Math.abs((short.minutesToWettest ?? 0) / 15.29 - 1)).toBeLessThan(0.01);
    expect(short.meanLow).toBeLessThan(short.meanWaterFraction);
    expect(short.meanHigh).toBeGreaterThan(short.meanWaterFraction);
    const long = await after(60);
    expect(Math.abs((long.deepestMm ?? 0) / 25.47 - 1)).toBeLessThan(0.01);
    expect(long.summary).toBe('10 mm of this, 60 min at 130 °C under vacuum: about 0.1 % left; deepest tray 25 mm');
    expect(long.limitedBy).toBe('HEAT');
  });

  it('says what air from the room leaves, and that no time helps below that', async () => {
    const of = { sorbent: silica, depthMm: 5, temperatureC: 105, vacuum: false, minutes: 600, waterMbar: 14 };
    const found = await forecast({ ...of, target: 0.001 });
    expect(found.floorWaterFraction).toBeCloseTo(0.0048, 4);
    expect(found.meanWaterFraction).toBeCloseTo(found.floorWaterFraction, 4);
    expect(found).toMatchObject({ limitedBy: 'FLOOR', minutesToWettest: null, deepestMm: null });
    expect(found.floorSentence).toMatch(/this silica still keeps about half a percent/);
    // The wet bench: 45 % RH at 22 °C is 11.9 mbar.
    const room = await forecast({ sorbent: silica, temperatureC: 105, vacuum: false, room: 'wet bench' });
    expect(room.waterMbar).toBeCloseTo(11.9, 0);
    expect(room.floorSentence).toMatch(/^At 105 °C in this room’s air this silica still keeps about/);
  });

  it('takes a container’s own water, and grams over the tray’s area for a depth', async () => {
    const drum = await world.drum(500, { startWaterFraction: 0.08 });
    const found = await forecast({ label: drum.label, grams: 500, trayAreaCm2: 900 });
    expect(found.startFrom).toBe('ESTIMATE');
    // 500 g over 900 cm² at 0.5 g/cm³ or so.
    expect(found.depthMm).toBeGreaterThan(8);
    expect(found.depthMm).toBeLessThan(16);
    const box = await world.plates(5, { backing: 'GLASS' });
    expect((await forecast({ label: box.label })).summary).toMatch(/^these plates, 30 min at 130 °C under vacuum/);
  });

  it('leaves more in a deeper tray, from a cooler oven, from a wetter start or more water in the chamber', async () => {
    const mean = async (more: Record<string, number>) =>
      (
        await forecast({
          sorbent: silica,
          minutes: 40,
          startWaterFraction: 0.1,
          temperatureC: 130,
          depthMm: 15,
          vacuum: true,
          ...more,
        })
      ).meanWaterFraction;
    const rises = async (name: string, values: number[]) => {
      const means: number[] = [];
      for (const value of values) means.push(await mean({ [name]: value }));
      for (const [i, value] of means.entries()) if (i > 0) expect(value, name).toBeGreaterThan(means[i - 1] ?? 0);
    };
    await rises('depthMm', [2, 5, 10, 20, 40]);
    await rises('temperatureC', [160, 140, 120, 100, 80]);
    await rises('waterMbar', [1, 5, 10, 18]);
    await rises('startWaterFraction', [0.02, 0.05, 0.1, 0.2]);
  });

  it('is refused above what the material stands, and for what nobody knows the water of', async () => {
    const said = async (args: string) =>
      (await world.post(`{ dryingForecast(${args}) { summary } }`)).errors?.[0]?.message;
    expect(await said(`sorbent: "${silica}", temperatureC: 210`)).toMatch(
      /^invalid temperatureC: 210, at most 200 °C for silica gel: above that it loses silanols/,
    );
    expect(await said('temperatureC: 100')).toMatch(/^missing label/);
    expect(await said(`sorbent: "${silica}", minutes: 0`)).toMatch(/^invalid minutes: 0, more than 0 min/);
    expect(await said(`sorbent: "${silica}", grams: 100`)).toMatch(/^missing trayAreaCm2/);
    const box = await world.plates(5, { backing: 'PLASTIC' });
    expect(await said(`label: "${box.label}", temperatureC: 100`)).toMatch(/the plastic backing gives way/);
    await world.tell('addSorbent', { name: 'Amino', sorbentClass: 'amino' }, '__typename');
    expect(await said('sorbent: "Amino", temperatureC: 60')).toMatch(/Amino/);
  });
});
