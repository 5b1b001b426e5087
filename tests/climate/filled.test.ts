// What stands where nobody measured.
import { describe, expect, it } from 'vitest';
import { type RecordedAir, filledDays } from '../../api/climate/filled.ts';
import { airOfDay } from '../../api/climate/rules.ts';
import { constantDay, typicalDayBefore } from '../../api/climate/typical.ts';
import { day, hour, minute, start } from './lab.ts';
import { every, sensor } from './series.ts';

const first = start / day;

/** Days of a room that is at 20 °C by night and at 26 °C from 8 to 16 UTC, the humidity that of the day's number. */
function record(
  from: number,
  until: number,
  humidity: (dayNumber: number) => number,
  skip: (at: number) => boolean = () => false,
): RecordedAir {
  const times = every(from * day, until * day, 10 * minute).filter((at) => !skip(at));
  const warmth = (at: number) => (at % day >= 8 * hour && at % day < 16 * hour ? 26 : 20);
  const one = sensor(times, warmth, (at) => humidity(Math.floor(at / day)));
  const measured = Array.from({ length: until - from }, (_, index) => airOfDay(from + index, [one])).filter(
    ({ uncertain }) => uncertain.includes(0),
  );
  return { measured, lastDay: measured.at(-1)?.day ?? null, assumed: null };
}

const humidityOf = (air: { vapourKgPerM3: Float64Array; saturatedKgPerM3: Float64Array } | undefined, block: number) =>
  (100 * (air?.vapourKgPerM3[block] ?? NaN)) / (air?.saturatedKgPerM3[block] ?? NaN);

describe('the typical day', () => {
  it('has the median of each hour, so that nights are nights and one wet week does not count', () => {
    const { measured } = record(first, first + 30, (number) => (number < first + 7 ? 80 : 40));
    const typical = typicalDayBefore((number) => measured.find((one) => one.day === number), (first + 30) * 288);
    expect(typical?.temperatureC[3 * 12]).toBeCloseTo(20, 6);
    expect(typical?.temperatureC[12 * 12]).toBeCloseTo(26, 6);
    expect(humidityOf(typical ?? undefined, 3 * 12)).toBeCloseTo(40, 3);
  });

  it('looks back thirty days and no further', () => {
    const { measured } = record(first, first + 45, (number) => (number < first + 14 ? 80 : number % 2 === 0 ? 39 : 41));
    const typical = typicalDayBefore((number) => measured.find((one) => one.day === number), (first + 45) * 288);
    expect(humidityOf(typical ?? undefined, 36)).toBeGreaterThan(38.9);
    expect(humidityOf(typical ?? undefined, 36)).toBeLessThan(41.1);
  });
});

describe('a record with gaps', () => {
  const night = (at: number) => at >= (first + 10) * day + 2 * hour && at < (first + 10) * day + 7 * hour;
  const gapped = record(first, first + 20, () => 45, night);

  it('is filled where it is silent for long, counted as uncertain, and measured elsewhere', () => {
    const days = filledDays(gapped, first, first + 20);
    expect(days.flatMap(({ uncertain }) => [...uncertain]).filter((doubt) => doubt === 2)).toEqual([]);
    const filled = days[10]?.uncertain.filter((doubt) => doubt === 1).length ?? 0;
    // From 01:50, the last reading, to 07:00, the next: 01:55 to 07:00 has no reading in its blocks.
    expect(filled).toBe(61);
    expect(days[10]?.temperatureC[5 * 12]).toBeCloseTo(20, 6);
  });

  it('reads the same from any day on, however much of it is asked for', () => {
    const whole = filledDays(gapped, first, first + 25);
    for (const from of [3, 10, 11, 19, 22])
      expect(filledDays(gapped, first + from, first + 25)).toEqual(whole.slice(from));
  });

  it('a gap is filled by what was before it: later readings do not change it', () => {
    const longer = record(first, first + 24, (number) => (number < first + 20 ? 45 : 70), night);
    expect(filledDays(longer, first, first + 19)).toEqual(filledDays(gapped, first, first + 19));
  });

  it('has nothing before its first reading unless something is taken for granted', () => {
    expect(filledDays(gapped, first - 1, first)[0]?.uncertain[0]).toBe(2);
    const granted = { ...gapped, assumed: constantDay(22, 30) };
    const [before] = filledDays(granted, first - 1, first);
    expect(before?.uncertain[0]).toBe(1);
    expect(humidityOf(before, 5)).toBeCloseTo(30, 9);
  });
});
