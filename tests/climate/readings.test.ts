// A day's readings as a row.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeDay, encodeDay, merged } from '../../api/climate/readings.ts';
import { byDay, inOrder, joined, nothingRead, type Series } from '../../api/climate/series.ts';
import { day, start } from './lab.ts';

const first = start / day;
const reading = fc.tuple(fc.integer({ min: 0, max: day - 1 }), fc.double({ min: -40, max: 103, noNaN: true }));
const readings = fc.uniqueArray(reading, { selector: ([at]) => at, maxLength: 60 });
const seriesOf = (rows: readonly (readonly [number, number])[]): Series =>
  inOrder(
    rows.map(([at]) => start + at),
    rows.map(([, value]) => value),
  );

describe('a day of readings', () => {
  it('comes back from its row to the last bit', () => {
    fc.assert(
      fc.property(readings, (rows) => {
        const series = seriesOf(rows);
        expect(decodeDay(first, encodeDay(first, series))).toEqual(series);
      }),
    );
  });

  it('is the same whatever order its readings came in, and in however many parts', () => {
    fc.assert(
      fc.property(readings, fc.array(fc.nat(5), { minLength: 60, maxLength: 60 }), (rows, parts) => {
        const pieces = [0, 1, 2, 3, 4, 5].map((part) => seriesOf(rows.filter((_, index) => parts[index] === part)));
        const whole = [...pieces, ...pieces].reduce((before, piece) => merged(before, piece).series, nothingRead);
        expect(encodeDay(first, whole)).toEqual(encodeDay(first, seriesOf(rows)));
      }),
    );
  });

  it('keeps the first of two values for one instant and names the other', () => {
    const before = seriesOf([
      [1000, 21],
      [2000, 22],
    ]);
    const now = merged(
      before,
      seriesOf([
        [1000, 21],
        [2000, 23],
        [3000, 24],
      ]),
    );
    expect(now).toMatchObject({ added: 1, repeated: 1, disagreeing: [{ atMs: start + 2000, kept: 22, other: 23 }] });
    expect([...now.series.values]).toEqual([21, 22, 24]);
  });

  it('is cut at midnight UTC and loses nothing', () => {
    const series = seriesOf([
      [0, 1],
      [day - 1, 2],
      [day, 3],
      [5 * day + 7, 4],
    ]);
    const days = byDay(series);
    expect([...days.keys()]).toEqual([first, first + 1, first + 5]);
    expect(joined([...days.values()])).toEqual(series);
  });
});
