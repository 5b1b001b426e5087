// A code that nobody has finds those it could have been.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alikeIds } from '../../api/stock/alike.ts';
import { labelOf } from '../../api/stock/label.ts';

const coded = Array.from({ length: 500 }, (_, n) => ({
  id: String(n),
  label: labelOf(n),
  oldCode: n === 7 ? 'B-02' : null,
}));
const signs = '0123456789ACDEFGHJKMNPQRTVWXY';

describe('a code with a wrong sign', () => {
  it('is nearest to the one it was, whichever sign was misread', () => {
    fc.assert(
      fc.property(fc.nat(499), fc.nat(5), fc.constantFrom(...signs), (n, at, sign) => {
        const whole = labelOf(n).replace('-', '');
        const read = whole.slice(0, at) + sign + whole.slice(at + 1);
        expect(alikeIds(read.toLowerCase(), coded)).toContain(String(n));
      }),
    );
  });

  it('is found by the code it had before, in any case', () => {
    expect(alikeIds(' b-02 ', coded)[0]).toBe('7');
  });

  it('is found by nothing where nothing is near', () => {
    expect(alikeIds('a shelf', coded)).toEqual([]);
  });
});
