// The lab's settings in words, a desiccant's renewal, and what stands where nothing is read.
import { describe, expect, it } from 'vitest';
import { renewalWords, stepWords } from '../../admin/air/desiccant.ts';
import { isOtherSpan } from '../../admin/air/plots.ts';
import { airFrom } from '../../admin/air/room-words.ts';
import { dayWords, groups, inputBefore, isDefault } from '../../admin/keep/figures.ts';

const clock = { now: new Date('2026-03-31T12:00:00Z'), zone: 'Europe/Helsinki' };
const plain = (words: string): string => words.replaceAll('\u00a0', ' ');
const settings = {
  redryChance: 0.4,
  useSoonChance: 0.2,
  useSoonHours: 48,
  tooDryChance: 0.5,
  scoopGrams: 50,
  topMm: 10,
  filmMmPerS: 3,
  pressurePa: 101_325,
  workingFrom: '08:00',
  workingTo: '18:00',
  workingDays: [1, 2, 3, 4, 5],
  desiccantDays: 30,
  leastHoodHours: 12,
  equilibratedBandPercent: 5,
  own: ['redryChance', 'workingDays'],
};
const group = (name: string) => {
  const found = groups.find((one) => one.name === name);
  if (!found) throw new Error(`no group ${name}`);
  return found;
};

describe('the lab’s settings', () => {
  it('days are said as one says them', () => {
    expect(dayWords([1, 2, 3, 4, 5, 6, 7])).toBe('every day');
    expect(dayWords([5, 1, 2, 3, 4])).toBe('Monday to Friday');
    expect(dayWords([1, 2, 4])).toBe('Monday, Tuesday and Thursday');
    expect(dayWords([3])).toBe('Wednesday');
    expect(dayWords([6, 7])).toBe('Saturday and Sunday');
  });
  it('what the lab did not set looks like a default, and undo makes it one again', () => {
    expect(isDefault(group('scoop'), settings)).toBe(true);
    expect(isDefault(group('states'), settings)).toBe(false);
    expect(inputBefore(group('states'), settings)).toEqual({
      redryChance: 0.4,
      useSoonChance: null,
      useSoonHours: null,
      tooDryChance: null,
    });
    expect(inputBefore(group('hours'), settings)).toEqual({
      workingFrom: null,
      workingTo: null,
      workingDays: [1, 2, 3, 4, 5],
    });
  });
  it('ticked days become numbers from Monday on', () => {
    const input = group('hours').input({ workingFrom: '07:30', workingTo: '16:00', day1: true, day5: true });
    expect(input).toEqual({ workingFrom: '07:30', workingTo: '16:00', workingDays: [1, 5] });
  });
});

describe('a desiccant', () => {
  it('says how long since, and when it is due by the lab’s interval', () => {
    expect(renewalWords('2026-03-20T12:00:00Z', 30, clock)).toEqual({
      words: 'Desiccant renewed 11 days ago, next 19 April.',
      isDue: false,
    });
    expect(renewalWords('2026-02-20T12:00:00Z', 30, clock)).toEqual({
      words: 'Desiccant renewed 39 days ago, due since 22 March.',
      isDue: true,
    });
    expect(renewalWords('2026-03-31T10:00:00Z', 1, clock).words).toBe('Desiccant renewed today, next tomorrow.');
    expect(renewalWords(null, 30, clock).isDue).toBe(true);
  });
  it('a note by hand says what is taken for granted from then on', () => {
    expect(plain(stepWords({ from: '', why: 'RENEWED', humidityPercent: 1, temperatureC: null }))).toBe(
      'desiccant renewed, 1 % RH from then on',
    );
    expect(plain(stepWords({ from: '', why: 'READ', humidityPercent: 18, temperatureC: 21 }))).toBe(
      'read off, 18 % RH from then on at 21 °C',
    );
    expect(stepWords({ from: '', why: 'RENEWED', humidityPercent: null, temperatureC: null })).toBe(
      'desiccant renewed',
    );
  });
  it('the newest of note and reading says where its air comes from', () => {
    const room = {
      temperatureC: 22,
      relativeHumidityPercent: 18,
      vapourGramsPerM3: 3,
      isAirFilled: true,
      assumedHumidityPercent: null,
    };
    const noted = [{ from: '2026-03-31T06:00:00Z', why: 'READ' as const, humidityPercent: 18, temperatureC: null }];
    expect(airFrom({ ...room, lastReadingAt: null, assumedAir: noted }, clock)).toBe(
      'noted by hand 09:00, and taken for granted since',
    );
    expect(airFrom({ ...room, lastReadingAt: '2026-03-31T11:00:00Z', assumedAir: noted }, clock)).toMatch(
      /^read 60 min ago/,
    );
    expect(airFrom({ ...room, lastReadingAt: null, assumedAir: [] }, clock)).toMatch(/^nobody knows its air/);
  });
});

describe('looking closer', () => {
  it('a span that was zoomed is another one, a rounding is not', () => {
    expect(isOtherSpan([0, 100], [0, 100.5])).toBe(false);
    expect(isOtherSpan([20, 60], [0, 100])).toBe(true);
  });
});
