// A code typed without a network finds the container it would find with one.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keptLabel } from '../../../admin/later/kept-label.ts';
import { labelMeant, labelOf } from '../../../api/stock/label.ts';

const labels = Array.from({ length: 500 }, (_, n) => labelOf(n));

describe('a code without a network', () => {
  it('is read as the API reads it: any case, any dash, look-alikes', () => {
    const known = fc.constantFrom(...labels);
    const written = known.chain((label) =>
      fc.record({
        label: fc.constant(label),
        text: fc.constantFrom(
          label,
          label.toLowerCase(),
          label.replace('-', ''),
          ` ${label.replace('-', ' ')} `,
          label.replaceAll('0', 'o').replaceAll('1', 'l').replaceAll('8', 'B').replaceAll('V', 'u'),
        ),
      }),
    );
    fc.assert(
      fc.property(written, ({ label, text }) => {
        expect(labelMeant(text)).toBe(label);
        expect(keptLabel(text, labels)).toBe(label);
      }),
    );
  });
  it('with one sign that cannot be read is found when only one is like it', () => {
    const label = labels[7] ?? '';
    expect(keptLabel(`?${label.slice(1)}`, labels)).toBe(label);
    expect(keptLabel(`??${label.slice(2)}`, labels)).toBeNull();
  });
  it('of a container that was never seen finds nothing', () => {
    expect(keptLabel(labelOf(900), labels)).toBeNull();
    expect(keptLabel('silica', labels)).toBeNull();
  });
});
