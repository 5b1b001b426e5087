// Where shelf and book differ, and what the book is told of it.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { differences, sumWords, toTell, type Seen } from '../../admin/count/differences.ts';
import type { OnShelf } from '../../admin/count/questions.ts';

const drum = (label: string, more: Partial<OnShelf> = {}): OnShelf => ({
  label,
  kind: 'DRUM',
  isOpen: false,
  finishedAt: null,
  asReceivedGrams: 500,
  sorbent: { name: 'Silica' },
  lot: { lotNumber: 'F-118' },
  room: { name: 'wet bench' },
  ...more,
});
const seen = (label: string, more: Partial<Seen> = {}): Seen => ({
  label,
  amount: '',
  isGross: false,
  leave: false,
  ...more,
});

const here = drum('A');
const missing = drum('B');
const elsewhere = drum('C', { room: { name: 'cold store' } });
const finished = drum('D', { finishedAt: '2026-03-01T00:00:00Z' });
const box = drum('E', { kind: 'PLATE_BOX', plates: 25 });

describe('shelf and book', () => {
  const found = [here, elsewhere, finished, box];
  const differing = differences('Wet bench', [here, missing, box], found);

  it('differ in what is elsewhere by the book, used up by the book, or not found', () => {
    expect(differing).toEqual({
      asBooked: [here, box],
      elsewhere: [elsewhere],
      finished: [finished],
      missing: [missing],
    });
    expect(sumWords(differing)).toBe('2 as the book says, 1 of another room, 1 used up by the book, 1 not found');
  });

  it('lose nothing: each is in one group, whatever was found', () => {
    fc.assert(
      fc.property(fc.subarray([here, missing, elsewhere, finished, box]), (some) => {
        const groups = differences('wet bench', [here, missing, box], some);
        const all = [...groups.asBooked, ...groups.elsewhere, ...groups.finished, ...groups.missing];
        expect(new Set(all)).toEqual(new Set([...some, here, missing, box]));
        expect(all).toHaveLength(new Set(all).size);
      }),
    );
  });

  it('are told apart from what nobody looked at: what was only seen as booked writes nothing', () => {
    expect(toTell(differing, [seen('A'), seen('C'), seen('D'), seen('E')], {})).toEqual({
      found: [{ label: 'C' }, { label: 'D' }],
      missed: [],
      wrong: {},
    });
  });

  it('may be left as they are', () => {
    const left = [seen('A'), seen('C', { leave: true }), seen('D', { leave: true }), seen('E')];
    expect(toTell(differing, left, { B: { as: 'LEFT', room: '', note: 'later' } })).toEqual({
      found: [],
      missed: [],
      wrong: {},
    });
  });

  it('agree by what was counted: net, with the vessel, or plates', () => {
    const counted = [
      seen('A', { amount: '240,5' }),
      seen('C', { amount: '812', isGross: true }),
      seen('D', { amount: '0' }),
      seen('E', { amount: '18' }),
    ];
    expect(toTell(differing, counted, {}).found).toEqual([
      { label: 'A', grams: 240.5 },
      { label: 'E', plates: 18 },
      { label: 'C', grossGrams: 812 },
      { label: 'D', grams: 0 },
    ]);
  });

  it('are not told what is no amount, or moved nobody knows where', () => {
    const told = toTell(differing, [seen('A', { amount: 'half' }), seen('E', { amount: '2.5' })], {
      B: { as: 'MOVED', room: '', note: '' },
    });
    expect(told.wrong).toEqual({
      A: 'grams, such as 240 or 12.5',
      E: 'a whole number of plates',
      B: 'the room it was moved to',
    });
    expect([...told.found, ...told.missed]).toEqual([]);
  });

  it('are told what became of the missing', () => {
    const became = (as: 'NOT_FOUND' | 'USED_UP' | 'MOVED') =>
      toTell(differing, [], { B: { as, room: 'cold store', note: ' asked ' } }).missed;
    expect(became('NOT_FOUND')).toEqual([{ label: 'B', as: 'NOT_FOUND', note: 'asked' }]);
    expect(became('USED_UP')).toEqual([{ label: 'B', as: 'USED_UP', note: 'asked' }]);
    expect(became('MOVED')).toEqual([{ label: 'B', as: 'MOVED', room: 'cold store', note: 'asked' }]);
  });
});
