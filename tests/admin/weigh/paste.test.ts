// Weighings as people type and paste them: tabs, semicolons, commas and spaces; decimal commas; times with and without a day.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weighingsRead } from '../../../admin/weigh/paste.ts';

const zone = 'Europe/Helsinki';
/** 12:07 in Helsinki. */
const now = new Date('2026-03-04T10:07:00Z');
const read = (text: string) => weighingsRead(text, now, zone);

describe('a pasted round with the balance', () => {
  it.each([
    ['K7M-2QX\t412.6\t2026-03-04 09:30'],
    ['K7M-2QX;412,6;2026-03-04 09:30'],
    ['K7M-2QX,412.6,2026-03-04 09:30'],
    ['K7M-2QX 412,6 g 2026-03-04 09:30'.replace(' g', '')],
    ['label\tgross g\twhen\nK7M-2QX\t412.6 g\t4.3.2026 09:30'],
    ['K7M-2QX  412.6  9:30'],
    ['"K7M-2QX","412.6","2026-03-04T09:30:00+02:00"'],
  ])('%j says one weight and when', (text) => {
    expect(read(text)).toMatchObject({
      weighings: [{ label: 'K7M-2QX', grossGrams: 412.6, at: '2026-03-04T07:30:00.000Z' }],
      wrong: [],
    });
  });
  it('a time still to come was yesterday’s; without a time it is now', () => {
    expect(read('K7M-2QX 10 14:00').weighings[0]?.at).toBe('2026-03-03T12:00:00.000Z');
    expect(read('K7M-2QX 10').weighings).toEqual([{ label: 'K7M-2QX', grossGrams: 10 }]);
  });
  it('what is wrong is said by its line, and what is right keeps its place', () => {
    const { wrong, lines } = read('K7M-2QX 10\n\nB3T-9WD heavy\nB3T-9WD 12 noon\nB3T-9WD\nA11-222 7');
    expect(wrong).toEqual([
      { line: 3, words: '“heavy”: a weight in g such as 412.6' },
      { line: 4, words: '“noon”: a time such as 14:00, or 2026-03-04 14:00' },
      { line: 5, words: 'what the balance showed is missing: label, grams, when' },
    ]);
    expect(lines).toEqual([1, 6]);
  });
  it('every line is either a weighing or wrong, whatever is typed', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ maxLength: 30 }), { maxLength: 12 }), (typed) => {
        const text = ['K7M-2QX 1', ...typed].join('\n');
        const { weighings, wrong } = read(text);
        const there = text.split(/\r?\n/).filter((line) => line.trim() !== '').length;
        expect(weighings.length + wrong.length).toBe(there);
      }),
    );
  });
});
