// A room's air from its readings, as the estimator gets it.
import { expect, it } from 'vitest';
import { addReadings } from '../../api/climate/add-readings.ts';
import { airOf, typicalDayOf } from '../../api/climate/air.ts';
import { saturatedKgPerM3 } from '../../api/science/air.ts';
import { describeEngines } from '../support/engines.ts';
import { day, labsOf, hour, minute, readings, room, start } from './lab.ts';

const first = start / day;

describeEngines('room air', (on) => {
  const newLab = labsOf(on);
  it('steady air is what was read, in every block', async () => {
    const lab = await newLab();
    const id = await room(lab, 'wet bench');
    const sent = readings(start, start + day + hour, 10 * minute, () => [21, 50]);
    expect(await addReadings(lab, { room: 'wet bench', readings: sent })).toMatchObject({ added: 300, repeated: 0 });
    const [air] = await airOf(lab.database, id, first, first + 1);
    expect(air?.uncertain.every((doubt) => doubt === 0)).toBe(true);
    // ASHRAE Handbook Fundamentals 2017, ch. 1, table 3: saturation at 21 °C is 2487.7 Pa; p M / (R T) of half of it.
    const half = (0.5 * 2487.7 * 0.018015268) / (8.314462618 * 294.15);
    for (const vapour of air?.vapourKgPerM3 ?? []) expect(vapour).toBeCloseTo(half, 6);
    expect(air?.temperatureC[100]).toBeCloseTo(21, 5);
    expect(air?.saturatedKgPerM3[100]).toBeCloseTo(saturatedKgPerM3(21), 8);
  });

  it('after the last reading the air is held for two hours, then it is the typical day, and uncertain', async () => {
    const lab = await newLab();
    const id = await room(lab, 'wet bench');
    const sent = readings(start, start + 12 * hour + 1, 10 * minute, (at) => [21, at < start + 11 * hour ? 40 : 60]);
    await addReadings(lab, { room: 'WET BENCH', readings: sent });
    const [air, next] = await airOf(lab.database, id, first, first + 2);
    expect([...(air?.uncertain ?? [])].findLastIndex((doubt) => doubt === 0)).toBe(144 + 24);
    expect((air?.vapourKgPerM3[160] ?? 0) / saturatedKgPerM3(21)).toBeCloseTo(0.6, 3);
    expect((air?.vapourKgPerM3[200] ?? 0) / saturatedKgPerM3(21)).toBeCloseTo(0.4, 3);
    expect(next?.uncertain.every((doubt) => doubt === 1)).toBe(true);
    expect(await typicalDayOf(lab.database, id)).not.toBeNull();
  });

  it('a room that nobody reads is unknown, or what the lab takes for granted, and that is uncertain', async () => {
    const lab = await newLab();
    const [none] = await airOf(lab.database, await room(lab, 'attic'), first, first + 1);
    expect(none?.uncertain.every((doubt) => doubt === 2)).toBe(true);
    const store = await room(lab, 'cold store', { humidity: 60, temperature: 4 });
    const [cold] = await airOf(lab.database, store, first, first + 1);
    expect(cold?.uncertain.every((doubt) => doubt === 1)).toBe(true);
    expect((cold?.vapourKgPerM3[7] ?? 0) / saturatedKgPerM3(4)).toBeCloseTo(0.6, 9);
  });
});
