// Block means against sums made another way.
import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { roomDay, type SensorReadings } from '../../api/climate/blocks.ts';
import { nothingRead, type Series } from '../../api/climate/series.ts';
import { day, hour, minute, start } from './lab.ts';
import { every, sensor, seriesOf } from './series.ts';

psychrolib.SetUnitSystem(psychrolib.SI);
const first = start / day;

/** Straight line through a series, for a sum over seconds. */
function valueAt({ atMs, values }: Series, at: number): number {
  const next = atMs.findIndex((time) => time > at);
  const before = next - 1;
  const share = (at - (atMs[before] ?? NaN)) / ((atMs[next] ?? NaN) - (atMs[before] ?? NaN));
  return (values[before] ?? NaN) * (1 - share) + (values[next] ?? NaN) * share;
}

/** Vapour of a block by 3,000 points, with the saturation pressure of psychrolib (ASHRAE 2017). */
function vapourBySum({ temperature, humidity }: SensorReadings, block: number): number {
  let sum = 0;
  for (let i = 0; i < 3000; i++) {
    const at = start + (block * 300 + (i + 0.5) / 10) * 1000;
    const t = valueAt(temperature, at);
    const pressure = psychrolib.GetSatVapPres(t);
    sum += ((valueAt(humidity, at) / 100) * pressure * 0.018015268) / (8.314462618 * (t + 273.15));
  }
  return sum / 3000;
}

describe('the air of a day on blocks', () => {
  it('a block holds the integral of the straight lines between readings, wherever the readings fall', () => {
    const times = every(start - 2 * hour, start + 26 * hour, 7 * minute + 13_000);
    const odd = sensor(
      times,
      (at) => 22 + 6 * Math.sin(at / 4e5),
      (at) => 50 + 20 * Math.cos(at / 7e5),
    );
    const air = roomDay(first, [odd]);
    for (const block of [0, 17, 100, 250, 287]) {
      const vapour = vapourBySum(odd, block);
      expect(Math.abs((air.vapourKgPerM3[block] ?? 0) / vapour - 1)).toBeLessThan(2e-4);
    }
  });

  it('temperature and humidity may be read at different times, even by different sensors', () => {
    const warmth = seriesOf(every(start - hour, start + 25 * hour, 11 * minute), (at) => 20 + (at - start) / day);
    const damp = seriesOf(every(start - hour + 120_000, start + 25 * hour, 17 * minute), () => 40);
    const together = roomDay(first, [{ temperature: warmth, humidity: damp }]);
    const apart = roomDay(first, [
      { temperature: warmth, humidity: nothingRead },
      { temperature: nothingRead, humidity: damp },
    ]);
    expect(together.uncertain.every((doubt) => doubt === 0)).toBe(true);
    expect(apart.uncertain.every((doubt) => doubt === 0)).toBe(true);
    for (let block = 0; block < 288; block++) {
      expect(Math.abs((apart.vapourKgPerM3[block] ?? 0) / (together.vapourKgPerM3[block] ?? 1) - 1)).toBeLessThan(1e-6);
    }
  });

  it('of three sensors the middle one speaks, and of two their mean', () => {
    const times = every(start - hour, start + 25 * hour, 10 * minute);
    const at = (t: number) =>
      sensor(
        times,
        () => t,
        () => 50,
      );
    expect(roomDay(first, [at(20), at(21), at(35)]).temperatureC[50]).toBeCloseTo(21, 9);
    expect(roomDay(first, [at(20), at(21)]).temperatureC[50]).toBeCloseTo(20.5, 9);
  });

  it('two hours without a reading are bridged, and more are not', () => {
    const gap = (length: number) => {
      const times = [
        ...every(start - hour, start + 6 * hour, 5 * minute),
        ...every(start + 6 * hour + length - 5 * minute, start + day + hour, 5 * minute),
      ];
      return roomDay(first, [
        sensor(
          times,
          () => 21,
          () => 50,
        ),
      ]).uncertain.filter((doubt) => doubt === 2).length;
    };
    expect(gap(2 * hour)).toBe(0);
    // The block of the last reading before the gap is known, the next is not.
    expect(gap(2 * hour + 5 * minute)).toBe(24);
  });

  it('a reading that stands alone speaks for its own block', () => {
    const air = roomDay(first, [
      sensor(
        [start + 3 * hour, start + 9 * hour],
        () => 21,
        () => 50,
      ),
    ]);
    expect([...air.uncertain.keys()].filter((block) => air.uncertain[block] === 0)).toEqual([36, 108]);
  });

  it('no air holds more vapour than saturated air, whatever was read', () => {
    const reading = fc.tuple(
      fc.integer({ min: 0, max: 86_399 }),
      fc.double({ min: -40, max: 85, noNaN: true }),
      fc.double({ min: -3, max: 103, noNaN: true }),
    );
    fc.assert(
      fc.property(
        fc.array(fc.array(reading, { minLength: 1, maxLength: 30 }), { minLength: 1, maxLength: 4 }),
        (sensors) => {
          const air = roomDay(
            first,
            sensors.map((rows) => {
              const sorted = [...new Map(rows.map((row) => [row[0], row])).values()].sort((a, b) => a[0] - b[0]);
              const times = sorted.map(([second]) => start + second * 1000);
              return {
                temperature: seriesOf(times, (at) => sorted[times.indexOf(at)]?.[1] ?? 0),
                humidity: seriesOf(times, (at) => sorted[times.indexOf(at)]?.[2] ?? 0),
              };
            }),
          );
          for (let block = 0; block < 288; block++) {
            const vapour = air.vapourKgPerM3[block] ?? NaN;
            expect(vapour).toBeGreaterThanOrEqual(0);
            expect(vapour).toBeLessThanOrEqual(air.saturatedKgPerM3[block] ?? NaN);
          }
        },
      ),
      { numRuns: 50 },
    );
  });
});
