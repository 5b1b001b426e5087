// What was learned, said so that a bench understands it.
import { describe, expect, it } from 'vitest';
import { sentenceOf } from '../../api/learning/words.ts';
import { saidBy, words } from '../../api/learning/rules.ts';

describe('what was learned', () => {
  it('says by how much, how sure, and from how much', () => {
    const tight = { kind: 'CLOSURE', about: 'Tight lids' } as const;
    expect(sentenceOf(tight, { ln: Math.log(0.7), sd: 0.1, weighings: 9 })).toBe(
      'Tight lids here let in about 0.70 of what we assumed (0.59 to 0.83), from 9 weighings.',
    );
    expect(sentenceOf(tight, { ln: 0.01, sd: 0.1, weighings: 1 })).toBe(
      'Tight lids here let in what we assumed, within 11 %, from 1 weighing.',
    );
  });

  it('says which way the loggers are wrong', () => {
    const humidity = { kind: 'HUMIDITY', about: '' } as const;
    expect(sentenceOf(humidity, { ln: 0.012, sd: 0.004, weighings: 5 })).toBe(
      'The loggers read about 1.2 % RH too low, from 5 weighings.',
    );
    expect(sentenceOf(humidity, { ln: -0.012, sd: 0.004, weighings: 5 })).toContain('too high');
  });
});

describe('the whole on the balance', () => {
  const event = (eventId: string, type: string, grossGrams?: number) => ({
    eventId,
    at: Date.UTC(2026, 2, Number(eventId)),
    type,
    role: 'own' as const,
    gross: grossGrams === undefined ? null : { grossGrams, tareGrams: 200 },
  });

  it('says what it gained since the time before, and begins anew when something was taken out', () => {
    const said = saidBy(
      [
        event('1', 'WEIGHED', 1200),
        event('2', 'WEIGHED', 1201.5),
        event('3', 'PORTION_TAKEN'),
        event('4', 'WEIGHED', 1100),
        event('5', 'WEIGHED', 1100.5),
      ],
      new Map(),
      new Set(),
    );
    expect(said.map(({ why }) => why)).toEqual([words.first, null, words.first, null]);
    expect(said.map(({ found }) => (found?.of === 'gain' ? Number(found.gainKg.toFixed(9)) : null))).toEqual([
      null,
      0.0015,
      null,
      0.0005,
    ]);
  });
});
