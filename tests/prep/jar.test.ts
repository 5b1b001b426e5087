// The jar that sorbent for a need is poured into, where nobody names one: of its size for this sorbent.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jarFor } from '../../api/prep/done-apart.ts';

const litresOf = ({ innerDiameterMm: wide, heightMm: high }: ReturnType<typeof jarFor>): number =>
  (Math.PI * (wide / 100) ** 2 * (high / 100)) / 4;

describe('the jar for a need', () => {
  it('is about two thirds full, whatever the sorbent weighs', () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 5000, noNaN: true }), fc.constantFrom(250, 500, 950), (grams, density) => {
        const full = grams / density / litresOf(jarFor(grams, density));
        expect(full).toBeLessThanOrEqual(2 / 3 + 1e-9);
        expect(full).toBeGreaterThan(0.5);
      }),
    );
  });
  it('of alumina is narrower than of silica, gram for gram', () => {
    expect(jarFor(400, 950).innerDiameterMm).toBeLessThan(jarFor(400, 500).innerDiameterMm);
  });
});
