// Sensors that do not speak for their room.
import { describe, expect, it } from 'vitest';
import type { SensorNearDay } from '../../api/climate/faults/fault.ts';
import { airOfDay, nearDay, spansLeftOut } from '../../api/climate/rules.ts';
import { saturatedKgPerM3 } from '../../api/science/air.ts';
import { day, hour, minute, start } from './lab.ts';
import { every, sensor, seriesOf, thermometer } from './series.ts';

const first = start / day;
const times = every(start - day, start + 2 * day, 10 * minute);
const wave = (at: number, size: number) => size * Math.sin((2 * Math.PI * (at - start)) / day);
const moving = sensor(
  times,
  (at) => 21 + wave(at, 3),
  (at) => 45 - wave(at, 8),
);

const faultsOf = (sensors: SensorNearDay[]) =>
  spansLeftOut(
    first,
    sensors.map((one) => nearDay(first, one)),
  ).map(({ sensor: which, measure, fault }) => `${which} ${measure} ${fault}`);
const humidityOf = (sensors: SensorNearDay[], block: number) => {
  const air = airOfDay(first, sensors);
  return (100 * (air.vapourKgPerM3[block] ?? NaN)) / (air.saturatedKgPerM3[block] ?? NaN);
};

describe('stuck sensors', () => {
  it('a sensor that stays at one value while the other moves is left out, and the room follows the other', () => {
    const stuck = sensor(
      times,
      (at) => 21 + wave(at, 3),
      () => 45,
    );
    expect(faultsOf([moving, stuck])).toEqual(['1 humidity stuck']);
    // Six in the morning, the crest of the wave: the moving sensor reads 37 %.
    expect(humidityOf([moving, stuck], 72)).toBeCloseTo(37, 0);
  });

  it('two that stay are not stuck because a third, far from them, reads nothing for an hour', () => {
    const still = sensor(
      times,
      () => 21,
      () => 12,
    );
    const gone = times.filter((at) => at < start + 8 * hour || at > start + 10 * hour);
    const third = sensor(
      gone,
      () => 21,
      (at) => 55 - wave(at, 2),
    );
    expect(faultsOf([still, third, still]).filter((fault) => fault.includes('stuck'))).toEqual([]);
  });

  it('a logger of whole per cents repeats for hours and is not stuck', () => {
    const whole = sensor(
      times,
      (at) => Math.round(21 + wave(at, 3)),
      (at) => Math.round(45 - wave(at, 8)),
    );
    expect(faultsOf([moving, whole])).toEqual([]);
  });

  it('in calm air nobody is stuck, however long the same value is read', () => {
    const calm = sensor(
      times,
      () => 21,
      (at) => 45 + wave(at, 1),
    );
    const same = sensor(
      times,
      () => 21,
      () => 45,
    );
    expect(faultsOf([calm, same])).toEqual([]);
  });

  it('a sensor that stands alone is never called stuck', () => {
    expect(
      faultsOf([
        sensor(
          times,
          (at) => 21 + wave(at, 3),
          () => 8,
        ),
      ]),
    ).toEqual([]);
  });
});

describe('absurd readings', () => {
  it('one absurd reading is left out and its neighbours are joined across it', () => {
    const spike = sensor(
      times,
      () => 21,
      (at) => (at === start + 6 * hour ? 400 : 50),
    );
    expect(faultsOf([spike])).toEqual(['0 humidity absurd']);
    expect(humidityOf([spike], 72)).toBeCloseTo(50, 6);
  });

  it('a sensor that is absurd every other time says nothing at all', () => {
    const broken = sensor(
      times,
      (at) => ((at / minute) % 20 === 0 ? -127 : 21),
      () => 50,
    );
    expect(airOfDay(first, [broken]).uncertain.every((doubt) => doubt === 2)).toBe(true);
  });

  it('a little past the ends is the end: saturated air reads 101 %', () => {
    const wet = sensor(
      times,
      () => 4,
      () => 101,
    );
    expect(faultsOf([wet])).toEqual([]);
    expect(airOfDay(first, [wet]).vapourKgPerM3[10]).toBeCloseTo(saturatedKgPerM3(4), 9);
  });
});

describe('sensors from elsewhere', () => {
  /** Newton's law of cooling with a time constant of half an hour. */
  const settling = (from: number, to: number) => (at: number) =>
    to + (from - to) * Math.exp(-(at - start - 2 * hour) / (30 * minute));
  const later = every(start + 2 * hour, start + 2 * day, 10 * minute);

  it('a logger carried in from the cold counts once it has taken on the room', () => {
    const carried = sensor(later, settling(-5, 21), settling(80, 40));
    expect(faultsOf([carried])).toEqual(['0 temperature carried in', '0 humidity carried in']);
    const air = airOfDay(first, [carried]);
    const known = air.uncertain.indexOf(0);
    // 40 % within 5 % takes ln(40/5) = 2.08, 21 °C within 2 K takes ln(26/2) = 2.56 time constants: 77 minutes.
    expect(known).toBeGreaterThanOrEqual(24 + 15);
    expect(known).toBeLessThanOrEqual(24 + 17);
    expect(air.temperatureC[known]).toBeGreaterThan(18.9);
  });

  it('a cold laboratory that is heated in the morning is not a carried sensor', () => {
    const heated = sensor(
      later,
      (at) => Math.min(21, 16 + (2.5 * (at - (start + 2 * hour))) / hour),
      () => 40,
    );
    expect(faultsOf([heated])).toEqual([]);
  });

  it('one of three that reads far from the others is left out while it does', () => {
    const window = sensor(
      times,
      (at) => 21 + wave(at, 3) - (at >= start + 8 * hour && at < start + 10 * hour ? 9 : 0),
      (at) => 45 - wave(at, 8),
    );
    const found = faultsOf([moving, window, moving]);
    expect(found).toEqual(['1 temperature far from the others', '1 temperature far from the others']);
  });

  it('one that reads alone does not take two that agree out with it: the room follows those two', () => {
    const dry = sensor(
      times,
      (at) => 21 + wave(at, 3),
      (at) => 14 - wave(at, 1),
    );
    const found = faultsOf([dry, moving, dry]);
    expect(new Set(found)).toEqual(new Set(['1 humidity far from the others']));
    // Six in the morning: 13 %.
    expect(humidityOf([dry, moving, dry], 72)).toBeCloseTo(13, 0);
  });

  it('of three that all disagree none is left out: the middle one speaks', () => {
    const at = (percent: number) =>
      sensor(
        times,
        (time) => 21 + wave(time, 3),
        (time) => percent - wave(time, 1),
      );
    const three = [at(60), at(14), at(38)];
    expect(faultsOf(three)).toEqual([]);
    expect(humidityOf(three, 72)).toBeCloseTo(37, 0);
  });

  it('of two that disagree neither is left out: nobody can say which is right', () => {
    const other = thermometer(seriesOf(times, () => 33));
    expect(faultsOf([thermometer(seriesOf(times, () => 21)), other])).toEqual([]);
  });
});
