// The list under a hand: it refreshes without moving what somebody is about to tap, and its views have addresses.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { suggested } from '../../admin/act/suggest.ts';
import { dayParts, plateParts } from '../../admin/watch/day.ts';
import { fits, isNarrowed, viewOf } from '../../admin/watch/filter.ts';
import { bandsOf, groupsOf, outOfPlace, stretchesOf } from '../../admin/watch/order.ts';
import type { Group } from '../../admin/watch/questions.ts';
import type { Line } from '../../admin/fields.ts';

const good = (...labels: string[]): Group[] => [{ state: 'GOOD', labels }];

describe('a list under a hand', () => {
  it('counts what would move: come, gone, and the fewest lines that change places', () => {
    expect(outOfPlace(good('A', 'B', 'C'), good('A', 'B', 'C'))).toBe(0);
    expect(outOfPlace(good('A', 'B', 'C'), good('C', 'A', 'B'))).toBe(1);
    expect(outOfPlace(good('A', 'B'), good('B', 'C'))).toBe(2);
  });
  it('a line that changes its group is one line that moves, not one gone and one come', () => {
    const shown: Group[] = [
      { state: 'REDRY', labels: ['A'] },
      { state: 'GOOD', labels: ['B', 'C'] },
    ];
    const fresh: Group[] = [
      { state: 'REDRY', labels: ['A', 'B'] },
      { state: 'GOOD', labels: ['C'] },
    ];
    expect(outOfPlace(shown, fresh)).toBe(1);
  });
  it('one line moved anywhere is one line moved', () => {
    const places = fc.integer({ min: 0, max: 19 });
    fc.assert(
      fc.property(places, places, (from, to) => {
        const before = Array.from({ length: 20 }, (_, i) => `L${i}`);
        const after = [...before];
        const [moved] = after.splice(from, 1);
        if (moved) after.splice(to, 0, moved);
        expect(outOfPlace(good(...before), good(...after))).toBe(from === to ? 0 : 1);
      }),
    );
  });
});

describe('a long list', () => {
  it('is all of its lines in stretches, each once, in order, with its place in the whole', () => {
    fc.assert(
      fc.property(fc.nat({ max: 60 }), fc.nat({ max: 500 }), fc.integer({ min: 1, max: 9 }), (n, before, size) => {
        const labels = Array.from({ length: n }, (_, i) => `L${i}`);
        const stretches = stretchesOf(labels, before, size);
        const bands = bandsOf(stretches, 3);
        expect(bands.flatMap((band) => band.stretches)).toEqual(stretches);
        expect(bands.reduce((sum, { lines }) => sum + lines, 0)).toBe(n);
        expect(stretches.flatMap((one) => one.labels)).toEqual(labels);
        for (const { place, labels: some } of stretches) {
          expect(some.length).toBeGreaterThan(0);
          expect(some.length).toBeLessThanOrEqual(size);
          expect(labels[place - before - 1]).toBe(some[0]);
        }
      }),
    );
  });
});

describe('a list that nobody answers for', () => {
  const line = (label: string, state: string, hoursToLimit: number | null, more: object = {}): Line =>
    ({
      ...{ label, kind: 'DRUM', isOpen: true, closure: 'OPEN', finishedAt: null },
      ...{ sorbent: { name: 'Silica' }, lot: { lotNumber: 'F-118' }, room: { name: 'wet bench' } },
      ...{ exposure: { state, hoursToLimit }, ...more },
    }) as Line;
  it('stands in the order of what was seen: most urgent first, then the fewest hours', () => {
    const seen = [line('A', 'GOOD', 30), line('B', 'GOOD', null), line('C', 'REDRY', null), line('D', 'GOOD', 3)];
    expect(groupsOf(seen)).toEqual([
      { state: 'REDRY', labels: ['C'] },
      { state: 'GOOD', labels: ['D', 'A', 'B'] },
    ]);
  });
  it('is narrowed as the address says', () => {
    const view = (words: string) => viewOf(new URLSearchParams(words));
    const drum = line('4M7-2XK', 'GOOD', 3);
    expect(fits(drum, view(''))).toBe(true);
    expect(fits(drum, view('room=Wet+Bench&state=good&sorbent=sil&lot=f-118'))).toBe(true);
    expect(fits(drum, view('q=4m72'))).toBe(true);
    expect(fits(drum, view('kind=plates'))).toBe(false);
    expect(fits(drum, view('room=cold+store'))).toBe(false);
    expect(fits(line('A', 'GOOD', 3, { closure: 'SEALED', isOpen: false }), view(''))).toBe(false);
    expect(fits(line('A', 'GOOD', 3, { closure: 'SEALED', isOpen: false }), view('show=all'))).toBe(true);
    expect(fits(line('A', 'GOOD', 3, { finishedAt: '2026-03-02T10:00:00Z' }), view('show=all'))).toBe(false);
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
    const parts = dayParts({ redry: 0, useSoon: 2, weighFirst: 1, tooDry: 0 });
    expect(parts.map(({ words }) => words)).toEqual(['2 to use soon', '1 to weigh first']);
  });
  it('counts plates as plates, with the time until which they are ready', () => {
    const clock = { now: new Date('2026-03-02T12:00:00Z'), zone: 'UTC' };
    const plates = { platesReady: 18, platesReadyUntil: '2026-03-03T14:00:00Z', platesToRedry: 6 };
    expect(plateParts(plates, clock)).toEqual({
      ready: '18 plates ready',
      until: ' until tomorrow 14:00',
      redry: '6 to redry',
      wet: '',
    });
    expect(plateParts({ ...plates, platesReadyUntil: null }, clock)?.until).toBe('');
    const byRegime = [
      { regime: 'DRY_UNTIL_SPOTTED' as const, plates: 12, until: '2026-03-03T14:00:00Z' },
      { regime: 'EQUILIBRATED' as const, plates: 6, until: null },
    ];
    expect(plateParts({ ...plates, platesByRegime: byRegime, platesWet: 4 }, clock)).toMatchObject({
      until: ': 12 dry until tomorrow 14:00, 6 equilibrated',
      wet: '4 wet with solvent',
    });
    expect(plateParts({ ...plates, platesReady: 0 }, clock)).toEqual({
      ready: 'No plate ready',
      until: '',
      redry: '6 to redry',
      wet: '',
    });
    expect(plateParts({ platesReady: 0, platesReadyUntil: null, platesToRedry: 0 }, clock)).toBeNull();
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
