// A year of air in a few hundred points.
import { expect, it } from 'vitest';
import { addReadings } from '../../api/climate/add-readings.ts';
import { plotOf } from '../../api/climate/plot.ts';
import { describeEngines } from '../support/engines.ts';
import { day, labsOf, hour, minute, readings, room, start } from './lab.ts';

describeEngines('air for a plot', (on) => {
  const newLab = labsOf(on);
  it('a peak of ten minutes is still there when weeks are thinned to a few points', async () => {
    const lab = await newLab();
    const id = await room(lab, 'wet bench');
    const peak = start + 9 * day + 7 * hour;
    const sent = readings(start, start + 28 * day, 10 * minute, (at) => [21, at === peak ? 90 : 40]);
    await addReadings(lab, { room: 'wet bench', readings: sent });
    const points = await plotOf(lab.database, id, new Date(start), new Date(start + 28 * day), 28);
    expect(points).toHaveLength(28);
    const worst = Math.max(...points.map(({ humidityHighPercent }) => humidityHighPercent ?? 0));
    // Two blocks rise to the peak and two fall from it; each holds the mean of its straight line: (65 + 90) / 2.
    expect(worst).toBeCloseTo(77.5, 3);
    expect(points[3]?.humidityPercent).toBeCloseTo(40, 4);
    const middle = points.reduce((sum, { humidityPercent }) => sum + (humidityPercent ?? 0), 0) / 28;
    expect(middle).toBeCloseTo(40 + (50 * 10) / (28 * 24 * 60), 4);
  });

  it('says what was not measured, and nothing where nothing is known', async () => {
    const lab = await newLab();
    const id = await room(lab, 'wet bench');
    await addReadings(lab, { room: 'wet bench', readings: readings(start, start + day, 10 * minute, () => [21, 40]) });
    const points = await plotOf(lab.database, id, new Date(start - day), new Date(start + 3 * day), 4);
    expect(points.map(({ temperatureC }) => temperatureC === null)).toEqual([true, false, false, false]);
    expect(points.map(({ filledFraction }) => filledFraction)).toEqual([0, 0, expect.closeTo(11 / 12, 1), 1]);
  });
});
