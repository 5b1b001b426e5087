// The planner's working hours and series on weekends on which the clocks change (Europe/Helsinki 2026: 29 March at 03:00 to
// 04:00, 25 October at 04:00 back to 03:00; Directive 2000/84/EC: at 01:00 UTC).
import { describe, expect, it } from 'vitest';
import { instantOf, instantOn, workingMinutes } from '../../api/prep/hours.ts';
import { daysOf } from '../../api/prep/series.ts';

const timeZone = 'Europe/Helsinki';
const lab = (from: string, to: string) => ({ timeZone, settings: { workingHours: { from, to } } });
const hoursOf = (from: string, to: string, begins: string, ends: string) =>
  workingMinutes(lab(from, to), [], new Date(begins), new Date(ends)).map((each) => [
    instantOf(each.from).toISOString().slice(0, 16),
    (each.to - each.from) / 60,
  ]);

describe('working hours when the clocks change', () => {
  it('a day’s hours keep to the clock on the wall, in March and in October', () => {
    expect(hoursOf('08:00', '18:00', '2026-03-28T12:00:00Z', '2026-03-29T12:00:00Z').slice(-2)).toEqual([
      ['2026-03-28T06:00', 10],
      ['2026-03-29T05:00', 10],
    ]);
    expect(hoursOf('08:00', '18:00', '2026-10-24T12:00:00Z', '2026-10-25T12:00:00Z').slice(-2)).toEqual([
      ['2026-10-24T05:00', 10],
      ['2026-10-25T06:00', 10],
    ]);
  });

  it('a night shift is an hour shorter in March and an hour longer in October', () => {
    const nights = (begins: string, ends: string) => hoursOf('22:00', '06:00', begins, ends);
    expect(nights('2026-03-28T12:00:00Z', '2026-03-29T12:00:00Z')).toContainEqual(['2026-03-28T20:00', 7]);
    expect(nights('2026-10-24T12:00:00Z', '2026-10-25T12:00:00Z')).toContainEqual(['2026-10-24T19:00', 9]);
  });

  it('hours that begin in the hour that is lost begin when it is over; nothing is planned within it', () => {
    // 03:30 is not on the wall that night: half past four stands there an hour after half past two.
    expect(hoursOf('03:30', '08:00', '2026-03-29T00:00:00Z', '2026-03-29T12:00:00Z').at(-1)).toEqual([
      '2026-03-29T01:30',
      3.5,
    ]);
    expect(instantOn('2026-03-29', '03:30', timeZone).toISOString()).toBe('2026-03-29T01:30:00.000Z');
    // It comes twice in October; the first counts.
    expect(instantOn('2026-10-25', '03:30', timeZone).toISOString()).toBe('2026-10-25T00:30:00.000Z');
  });

  it('a weekday is a weekday of the calendar, over the change too', () => {
    expect(daysOf([5], '2026-03-20', '2026-04-05')).toEqual(['2026-03-20', '2026-03-27', '2026-04-03']);
    expect(daysOf([7], '2026-10-18', '2026-11-01')).toEqual(['2026-10-18', '2026-10-25', '2026-11-01']);
  });
});
