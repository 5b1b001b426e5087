// What is noted by hand of a room's air holds from then on, and readings go before it.
import { describe, expect, it } from 'vitest';
import { blocksPerDay } from '../../api/science/climate.ts';
import { filledDays } from '../../api/climate/filled.ts';
import { constantDay } from '../../api/climate/typical.ts';
import { describeEngines } from '../support/engines.ts';
import { newWorld } from '../support/world.ts';

describeEngines('a desiccator', (on) => {
  async function lab() {
    const world = await newWorld(await on.fresh());
    await world.furnished();
    await world.tell(
      'addRoom',
      { name: 'jar', kind: 'DESICCATOR', assumedHumidityPercent: 35, assumedTemperatureC: 22 },
      '__typename',
    );
    const { label } = await world.drum(300, { room: 'jar', closure: 'OPEN' });
    type Seen = { container: { exposure: { meanWaterFraction: number } } };
    const water = async () =>
      (
        await world.ask<Seen>(
          `query ($label: String!) { container(label: $label) { exposure { meanWaterFraction } } }`,
          { label },
        )
      ).container.exposure.meanWaterFraction;
    const air = async (from: Date, until: Date) => {
      type Air = { room: { air: { relativeHumidityPercent: number; isFilled: boolean }[] } };
      const { room } = await world.ask<Air>(
        `query ($from: DateTime, $until: DateTime) { room(name: "jar") { air(from: $from, until: $until, points: 4) { relativeHumidityPercent isFilled } } }`,
        { from, until },
      );
      return room.air.map(({ relativeHumidityPercent }) => Math.round(relativeHumidityPercent));
    };
    return { world, water, air };
  }

  it('renewed four days ago, its contents took up less since, and the days before stay what they were', async () => {
    const { world, water, air } = await lab();
    const spent = await water();
    const at = world.ago(4 * 24 * 60);
    await world.tell('renewDesiccant', { room: 'jar', at, humidityPercent: 1 }, '__typename');
    const renewed = await water();
    expect(renewed).toBeLessThan(0.8 * spent);
    expect(await air(world.ago(8 * 24 * 60), world.now())).toEqual([35, 35, 1, 1]);
    await world.tell('takeRoomAirBack', { room: 'jar', from: at }, '__typename');
    expect(await water()).toBe(spent);
  });

  it('what its dial shows counts from then on, until the next', async () => {
    const { world, air } = await lab();
    await world.tell('noteRoomAir', { room: 'jar', at: world.ago(4 * 24 * 60), humidityPercent: 18 }, '__typename');
    await world.tell(
      'noteRoomAir',
      { room: 'jar', at: world.ago(2 * 24 * 60), humidityPercent: 24, temperatureC: 21 },
      '__typename',
    );
    expect(await air(world.ago(8 * 24 * 60), world.now())).toEqual([35, 35, 18, 24]);
    type Notes = { room: { assumedAir: object[]; desiccantRenewedAt: string | null } };
    const { room } = await world.ask<Notes>(
      '{ room(name: "jar") { desiccantRenewedAt assumedAir { from humidityPercent temperatureC why } } }',
    );
    expect(room).toEqual({
      desiccantRenewedAt: null,
      assumedAir: [
        { from: world.ago(4 * 24 * 60).toISOString(), humidityPercent: 18, temperatureC: null, why: 'READ' },
        { from: world.ago(2 * 24 * 60).toISOString(), humidityPercent: 24, temperatureC: 21, why: 'READ' },
      ],
    });
  });

  it('a renewal without a humidity is a date and no more; what cannot be is refused', async () => {
    const { world, water } = await lab();
    const before = await water();
    const { room } = await world.tell<{ room: { desiccantRenewedAt: string } }>(
      'renewDesiccant',
      { room: 'jar' },
      'room { desiccantRenewedAt }',
    );
    expect(room.desiccantRenewedAt).toBe(world.now().toISOString());
    expect(await water()).toBe(before);
    expect((await world.refused('renewDesiccant', { room: 'wet bench' })).expected).toBe('a desiccator');
    expect((await world.refused('noteRoomAir', { room: 'jar', humidityPercent: 140 })).path).toBe(
      'input.humidityPercent',
    );
    expect(
      (await world.refused('renewDesiccant', { room: 'jar', at: new Date(world.now().getTime() + 3_600_000) })).path,
    ).toBe('input.at');
    expect((await world.refused('takeRoomAirBack', { room: 'jar', from: world.ago(5) })).message).toMatch(
      /^invalid input\.from/,
    );
  });
});

describe('air noted by hand', () => {
  it('goes before the typical day only where it is newer than the last reading', () => {
    const measured = {
      day: 100,
      temperatureC: new Float64Array(blocksPerDay).fill(22),
      vapourKgPerM3: new Float64Array(blocksPerDay).fill(0.01),
      saturatedKgPerM3: new Float64Array(blocksPerDay).fill(0.02),
      uncertain: new Uint8Array(blocksPerDay),
    };
    const step = (day: number) => ({ fromBlock: day * blocksPerDay, typical: constantDay(22, 10) });
    const record = (day: number) => ({ measured: [measured], lastDay: 100, assumed: null, steps: [step(day)] });
    const share = (days: ReturnType<typeof filledDays>, index: number) =>
      (days[index]?.vapourKgPerM3[200] ?? NaN) / (days[index]?.saturatedKgPerM3[200] ?? NaN);
    const older = filledDays(record(99), 99, 103);
    expect([0, 1, 2, 3].map((i) => share(older, i).toFixed(2))).toEqual(['0.10', '0.50', '0.50', '0.50']);
    const newer = filledDays(record(102), 99, 103);
    expect([1, 2, 3].map((i) => share(newer, i).toFixed(2))).toEqual(['0.50', '0.50', '0.10']);
    expect(newer[3]?.uncertain[200]).toBe(1);
  });
});
