// The words on the screen: times as a person says them, water with no more digits than are known.
import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { reasonBeyond } from '../../admin/say/reason.ts';
import { answerWords, closingHelps } from '../../admin/say/state.ts';
import { fullTime, instantOf, labClock, spokenSpan, spokenTime } from '../../admin/say/time.ts';
import { aboutPercent, air, bound, grams, percent, typedNumber } from '../../admin/say/water.ts';

const zone = 'Europe/Helsinki';
const now = new Date('2026-11-25T12:00:00Z');
const plain = (words: string): string => words.replaceAll('\u00a0', ' ');

describe('times', () => {
  it('today is said by the clock alone, its neighbours by name', () => {
    expect(spokenTime(new Date('2026-11-25T06:20:00Z'), now, zone)).toBe('08:20');
    expect(spokenTime(new Date('2026-11-24T14:00:00Z'), now, zone)).toBe('yesterday 16:00');
    expect(spokenTime(new Date('2026-11-26T12:00:00Z'), now, zone)).toBe('tomorrow 14:00');
  });
  it('a day within the week goes by its weekday, beyond it by its date', () => {
    expect(spokenTime(new Date('2026-11-27T07:00:00Z'), now, zone)).toBe('Friday 09:00');
    expect(spokenTime(new Date('2026-11-02T07:00:00Z'), now, zone)).toBe('2 November 09:00');
    expect(spokenTime(new Date('2025-11-02T07:00:00Z'), now, zone)).toBe('2 November 2025 09:00');
  });
  it('the day is the lab’s, not that of UTC', () => {
    expect(spokenTime(new Date('2026-11-24T22:30:00Z'), now, zone)).toBe('00:30');
    expect(spokenTime(new Date('2026-11-24T22:30:00Z'), now, 'UTC')).toBe('yesterday 22:30');
  });
  it('hovering shows everything, the zone too', () => {
    expect(fullTime(new Date('2026-11-25T14:00:00Z'), zone)).toBe(
      'Wednesday 25 November 2026, 16:00 (Europe/Helsinki)',
    );
  });
  it('spans are told in the largest unit that still tells something', () => {
    expect([0.001, 0.067, 1.2, 19.4, 47, 72, 24 * 90].map(spokenSpan)).toEqual([
      'less than a minute',
      '4 min',
      '72 min',
      '19 h',
      '47 h',
      '3 days',
      '90 days',
    ]);
  });
  // Luxon reads the same zones by other code.
  it('a field on the lab’s clock is read as another library reads it, all year, in zones of every kind', () => {
    const zones = [
      'Europe/Helsinki',
      'America/St_Johns',
      'Australia/Lord_Howe',
      'Asia/Kathmandu',
      'UTC',
      'Pacific/Apia',
    ];
    const minutes = fc.integer({ min: 0, max: 2 * 366 * 24 * 60 });
    fc.assert(
      fc.property(fc.constantFrom(...zones), minutes, (where, minute) => {
        const at = new Date(Date.UTC(2025, 0, 1) + minute * 60_000);
        const field = labClock(at, where);
        expect(field).toBe(DateTime.fromJSDate(at, { zone: where }).toFormat("yyyy-MM-dd'T'HH:mm"));
        const back = instantOf(field, where);
        expect(back && labClock(back, where)).toBe(field);
        // Where the clock shows it twice, the first.
        expect((back?.getTime() ?? Infinity) <= at.getTime()).toBe(true);
      }),
      { numRuns: 300 },
    );
  });
  it('an hour that the clocks skip is read an hour later', () => {
    // Finland's clocks went from 03:00 to 04:00 on 29 March 2026.
    expect(instantOf('2026-03-29T03:30', zone)?.toISOString()).toBe('2026-03-29T01:30:00.000Z');
    expect(instantOf('no time', zone)).toBeNull();
  });
});

describe('water and amounts', () => {
  it('a value comes with its range, and no more digits than are known', () => {
    expect(plain(aboutPercent({ value: 0.0412, low: 0.0318, high: 0.0531 }))).toBe('about 4.1 % (3.2 to 5.3)');
    expect(plain(aboutPercent({ value: 0.0041, low: 0.0038, high: 0.0043 }))).toBe('about 0.41 % (0.38 to 0.43)');
    expect(plain(aboutPercent({ value: 0.214, low: 0.11, high: 0.38 }))).toBe('about 21 % (11 to 38)');
  });
  it('grams have three figures, kilograms begin at ten', () => {
    expect([12.345, 210.4, 2500, 24_310].map((value) => plain(grams(value)))).toEqual([
      '12.3 g',
      '210 g',
      '2500 g',
      '24.3 kg',
    ]);
  });
  it('air that is half known says the half', () => {
    expect(plain(air(21.44, 48.2))).toBe('21.4 °C, 48 % RH');
    expect(plain(air(null, 48.2))).toBe('48 % RH');
    expect(air(null, null)).toBe('no air known');
  });
  it('a decimal comma is read; twelve hundred written as 1,200 is not guessed at', () => {
    expect(typedNumber('4,1')).toBe(4.1);
    expect(typedNumber(' .5 ')).toBe(0.5);
    expect(typedNumber('1,200')).toBeNull();
    expect(typedNumber('4.1 %')).toBeNull();
    expect(typedNumber('')).toBeNull();
  });
  it('every number that is shown can be typed again', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (fraction) => {
        const [shown = ''] = percent(fraction, 2).split('\u00a0');
        expect(Math.abs((typedNumber(shown) ?? Infinity) - fraction * 100)).toBeLessThanOrEqual(0.005 + 1e-9);
      }),
    );
  });
  it('a number stays on one line with its unit', () => {
    expect(bound('open 19 h at 48 % RH, the top 8 mm')).toBe('open 19\u00a0h at 48\u00a0%\u00a0RH, the top 8\u00a0mm');
  });
});

describe('answers', () => {
  const clock = { now, zone };
  it('good stock says until when, and simply good when nobody sees its end', () => {
    expect(answerWords({ state: 'GOOD', hoursToLimit: 24 }, clock)).toBe('Good to use until tomorrow 14:00');
    expect(answerWords({ state: 'GOOD', hoursToLimit: 100 }, clock)).toBe('Good to use until Sunday');
    expect(answerWords({ state: 'GOOD', hoursToLimit: null }, clock)).toBe('Good to use');
  });
  it('what will not last names its hour', () => {
    expect(answerWords({ state: 'USE_SOON', hoursToLimit: 2 }, clock)).toBe('Use by 16:00');
    expect(answerWords({ state: 'USE_SOON', hoursToLimit: 0.5 }, clock)).toBe('Use within 30 min');
  });
  it('closing is proposed only where it helps', () => {
    const open = { state: 'USE_SOON', isOpen: true, hoursToLimit: 5 } as const;
    expect(closingHelps({ ...open, hoursToLimitClosed: null }, clock)).toBe(
      'close it and it keeps for 90 days and more',
    );
    expect(closingHelps({ ...open, hoursToLimitClosed: 72 }, clock)).toBe('close it and it lasts until Saturday');
    expect(closingHelps({ ...open, hoursToLimitClosed: 5.1 }, clock)).toBe('');
    expect(closingHelps({ ...open, isOpen: false, hoursToLimitClosed: 72 }, clock)).toBe('');
    expect(closingHelps({ ...open, state: 'REDRY', hoursToLimitClosed: 72 }, clock)).toBe('');
  });
  it('a reason does not say again what the answer said', () => {
    expect(reasonBeyond('Redry first', 'redry: open 19 h at 48 % RH.')).toBe('open 19 h at 48 % RH');
    expect(reasonBeyond('Redry first', 'open 19 h; the top is past 5 %')).toBe('open 19 h; the top is past 5 %');
  });
});
