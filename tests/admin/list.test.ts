// The list under a hand: it refreshes without moving what somebody is about to tap, and its views have addresses.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { suggested } from '../../admin/act/suggest.ts';
import { dayParts } from '../../admin/watch/day.ts';
import { isNarrowed, viewOf } from '../../admin/watch/filter.ts';
import { heldOrder, outOfPlace } from '../../admin/watch/order.ts';

const lines = (...labels: string[]) => labels.map((label) => ({ label }));

describe('a list under a hand', () => {
  it('keeps every line where it is and takes its newest value', () => {
    const shown = [
      { label: 'A', water: 1 },
      { label: 'B', water: 1 },
    ];
    const fresh = [
      { label: 'B', water: 2 },
      { label: 'C', water: 2 },
    ];
    expect(heldOrder(shown, fresh)).toEqual([
      { label: 'A', water: 1 },
      { label: 'B', water: 2 },
    ]);
  });
  it('counts what would move: come, gone, and the fewest lines that change places', () => {
    expect(outOfPlace(lines('A', 'B', 'C'), lines('A', 'B', 'C'))).toBe(0);
    expect(outOfPlace(lines('A', 'B', 'C'), lines('C', 'A', 'B'))).toBe(1);
    expect(outOfPlace(lines('A', 'B'), lines('B', 'C'))).toBe(2);
  });
  it('one line moved anywhere is one line moved', () => {
    const places = fc.integer({ min: 0, max: 19 });
    fc.assert(
      fc.property(places, places, (from, to) => {
        const before = lines(...Array.from({ length: 20 }, (_, i) => `L${i}`));
        const after = [...before];
        const [moved] = after.splice(from, 1);
        if (moved) after.splice(to, 0, moved);
        expect(outOfPlace(before, after)).toBe(from === to ? 0 : 1);
      }),
    );
  });
});

describe('a view', () => {
  it('is all in its address', () => {
    const { filter, show, state } = viewOf(new URLSearchParams('show=all&state=weigh-first&room=wet+bench&q=alumina'));
    expect({ show, state }).toEqual({ show: 'all', state: 'UNKNOWN' });
    expect(filter).toEqual({ inUse: true, state: ['UNKNOWN'], room: 'wet bench', search: 'alumina' });
  });
  it('is what stands open when the address says nothing, and a word nobody knows narrows nothing', () => {
    expect(viewOf(new URLSearchParams('')).filter).toEqual({
      inUse: true,
      closure: ['OPEN', 'LOOSELY_COVERED', 'WELL_CLOSED', 'TIGHT'],
    });
    expect(viewOf(new URLSearchParams('show=lid-off')).filter).toEqual({ inUse: true, isOpen: true });
    expect(isNarrowed(viewOf(new URLSearchParams('state=purple')))).toBe(false);
    expect(isNarrowed(viewOf(new URLSearchParams('show=all')))).toBe(false);
    expect(isNarrowed(viewOf(new URLSearchParams('lot=F-118')))).toBe(true);
  });
});

describe('the day', () => {
  it('names what wants doing, most urgent first, and not what is good', () => {
    const n = (totalCount: number) => ({ totalCount });
    const parts = dayParts({ redry: n(0), useSoon: n(2), weighFirst: n(1), tooDry: n(0) });
    expect(parts.map(({ words }) => words)).toEqual(['2 to use soon', '1 to weigh first']);
  });
});

describe('what a line offers first', () => {
  const of = (state: 'GOOD' | 'REDRY' | 'UNKNOWN', isOpen: boolean, kind: 'PORTION' | 'COLUMN' = 'PORTION') =>
    suggested({ kind, isOpen, exposure: { state } as never });
  it('answers the state: the oven for what is wet, the balance for what is unknown, the lid for the rest', () => {
    expect(of('REDRY', true)).toEqual(['dry', 'lid']);
    expect(of('UNKNOWN', false)).toEqual(['weigh']);
    expect(of('GOOD', true)).toEqual(['lid']);
  });
  it('never sends a packed column to the oven', () => {
    expect(of('REDRY', true, 'COLUMN')).toEqual(['lid']);
  });
});
