// Labels: short, read aloud, smudged, mistyped.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refused } from '../../api/errors.ts';
import { labelCount, labelMeant, labelOf } from '../../api/stock/label.ts';

const signs = '0123456789ACDEFGHJKMNPQRTVWXY';
const label = fc.integer({ min: 0, max: labelCount - 1 }).map(labelOf);
const position = fc.constantFrom(0, 1, 2, 4, 5, 6);

const withSign = (text: string, at: number, sign: string): string => text.slice(0, at) + sign + text.slice(at + 1);

describe('a label', () => {
  it('has six signs of twenty-nine, three and three', () => {
    fc.assert(
      fc.property(
        label,
        (text) =>
          /^[0-9A-Z]{3}-[0-9A-Z]{3}$/.test(text) && [...text.replace('-', '')].every((sign) => signs.includes(sign)),
      ),
    );
  });

  it('is different for each running number', () => {
    const labels = new Set(Array.from({ length: 50_000 }, (_, n) => labelOf(n)));
    expect(labels.size).toBe(50_000);
    // An affine map is a bijection when its factor is prime to 29; the last numbers meet none of the first.
    expect(labels.has(labelOf(labelCount - 1))).toBe(false);
  });

  it('of neighbours on the shelf does not begin alike', () => {
    for (let n = 1; n < 2000; n += 1) expect(labelOf(n).slice(0, 2)).not.toBe(labelOf(n - 1).slice(0, 2));
  });

  it('is not given beyond the last', () => {
    expect(() => labelOf(labelCount)).toThrow(RangeError);
    expect(() => labelOf(-1)).toThrow(RangeError);
  });

  it('means itself', () => {
    fc.assert(fc.property(label, (text) => labelMeant(text) === text));
  });

  it('may be read in small letters, with spaces, without its dash', () => {
    fc.assert(
      fc.property(label, (text) => {
        const spoken = ` ${text.toLowerCase().replace('-', ' ')} `;
        return labelMeant(spoken) === text && labelMeant(text.replace('-', '')) === text;
      }),
    );
  });

  it('may be written with look-alikes', () => {
    const alike: Record<string, string[]> = {
      '0': ['O', 'o'],
      '1': ['I', 'l', 'L'],
      '2': ['Z'],
      '5': ['S'],
      '8': ['B'],
      V: ['U'],
    };
    fc.assert(
      fc.property(label, fc.nat(), (text, which) => {
        const written = [...text].map((sign) => alike[sign]?.[which % (alike[sign]?.length ?? 1)] ?? sign).join('');
        return labelMeant(written) === text;
      }),
    );
  });

  it('with one wrong sign is refused as misread', () => {
    fc.assert(
      fc.property(label, position, fc.constantFrom(...signs), (text, at, sign) => {
        fc.pre(text[at] !== sign);
        expect(() => labelMeant(withSign(text, at, sign))).toThrow(/a sign is wrong/);
      }),
    );
  });

  it('with two signs swapped is refused as misread', () => {
    fc.assert(
      fc.property(label, position, position, (text, a, b) => {
        fc.pre(text[a] !== text[b]);
        const swapped = withSign(withSign(text, a, text[b] ?? ''), b, text[a] ?? '');
        expect(() => labelMeant(swapped)).toThrow(/two are swapped/);
      }),
    );
  });

  it('with one sign smudged is found again', () => {
    fc.assert(fc.property(label, position, (text, at) => labelMeant(withSign(text, at, '?')) === text));
  });

  it.each([
    ['', 'missing input.label'],
    ['4M7', 'six signs'],
    ['??4-2XK', 'at most one sign'],
    ['4M7-2X*', '* is no sign'],
  ])('of %j is refused with what would be right', (text, words) => {
    expect(() => labelMeant(text)).toThrow(Refused);
    expect(() => labelMeant(text)).toThrow(words);
  });
});
