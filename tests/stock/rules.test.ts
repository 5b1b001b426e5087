// What may follow what, without a database.
import { describe, expect, it } from 'vitest';
import type { EventType, Said } from '../../api/stock/details.ts';
import { fits, fold, standAt } from '../../api/stock/rules.ts';
import type { Base, Entry, Stand } from '../../api/stock/stand.ts';

const drum: Base = { kind: 'DRUM', usualClosure: 'TIGHT', dryGramsPerPlate: null };
const box: Base = { kind: 'PLATE_BOX', usualClosure: 'WELL_CLOSED', dryGramsPerPlate: 4 };
const column: Base = { kind: 'COLUMN', usualClosure: 'WELL_CLOSED', dryGramsPerPlate: null };

const hour = (of: number): Date => new Date(Date.UTC(2026, 2, 2, of));
const weighed = { grams: 100, basis: 'DRY', bookedWaterFraction: null, waterAssumed: false } as const;
const scoop = {
  ...weighed,
  openMinutes: 5,
  leftOpen: false,
  scooping: null,
  into: { roomId: 'bench', closure: 'OPEN' },
} as const;

let place = 0;
function entry(at: number, said: Said, more: Partial<Entry> = {}): Entry {
  place += 1;
  return {
    id: `event ${place}`,
    at: hour(at),
    place,
    role: 'own',
    dryGrams: null,
    plates: null,
    ...said,
    ...more,
  } as Entry;
}

const cameIn = (at: number, dryGrams: number, closure: 'SEALED' | 'OPEN' = 'SEALED'): Entry =>
  entry(
    at,
    {
      type: 'CAME_IN',
      detail: {
        roomId: 'bench',
        closure,
        grams: dryGrams,
        basis: 'DRY',
        startWaterFraction: 0,
        startWaterFrom: 'GIVEN',
        bookedWaterFraction: 0,
        waterAssumed: false,
      },
    },
    { dryGrams },
  );
const boxIn = (at: number, plates: number): Entry => ({ ...cameIn(at, plates * 4), plates });
const opened = (at: number) => entry(at, { type: 'OPENED', detail: {} });
const closed = (at: number, closure: 'TIGHT' | 'LOOSELY_COVERED' = 'TIGHT') =>
  entry(at, { type: 'CLOSED', detail: { closure } });
const poured = (at: number, dryGrams: number, leftOpen = false) =>
  entry(at, { type: 'PORTION_TAKEN', detail: { ...scoop, leftOpen } }, { dryGrams });
const usedUp = (at: number) => entry(at, { type: 'USED_UP', detail: {} });
const counted = (at: number, dryGrams: number) =>
  entry(at, {
    type: 'COUNTED',
    detail: {
      of: 'GRAMS',
      ...weighed,
      grossGrams: null,
      tareGrams: null,
      dryGrams,
      plates: null,
      bookDryGrams: 0,
      bookPlates: null,
    },
  });

function stood(base: Base, ...entries: Entry[]): Stand {
  const { stand, impossible } = fold(base, entries);
  if (!stand) throw new Error(impossible?.why);
  return stand;
}

function refusal(base: Base, ...entries: Entry[]) {
  const { impossible } = fold(base, entries);
  if (!impossible) throw new Error('all of it could be true');
  return impossible;
}

describe('a timeline', () => {
  it('is read in the order of happening, whatever the order of writing', () => {
    const came = cameIn(8, 500);
    const shut = closed(12);
    const late = opened(10);
    expect(stood(drum, shut, late, came)).toMatchObject({ closure: 'TIGHT', openedAt: null, dryGrams: 500 });
  });

  it('takes events of one instant in the order they were written down', () => {
    const came = cameIn(8, 500);
    const [open, shut] = [opened(9), closed(9)];
    expect(stood(drum, came, open, shut).closure).toBe('TIGHT');
    const [shutFirst, openLast] = [closed(9), opened(9)];
    expect(stood(drum, came, shutFirst, openLast).closure).toBe('OPEN');
  });

  it('knows how the container stood at any time, and that it was not there before', () => {
    const entries = [cameIn(8, 500), opened(10), closed(12)];
    expect(standAt(drum, entries, hour(7))).toBeNull();
    expect(standAt(drum, entries, hour(11))).toMatchObject({ closure: 'OPEN', openedAt: hour(10) });
  });

  it('opened twice stands open since the first time, and says so', () => {
    const again = opened(11);
    const { stand, notes } = fold(drum, [cameIn(8, 500), opened(10), again]);
    expect(stand?.openedAt).toEqual(hour(10));
    expect(notes).toEqual([{ entryId: again.id, text: 'it was open already, since 2026-03-02 10:00 UTC' }]);
  });

  it('closed twice is closed as it was said last', () => {
    const { stand, notes } = fold(drum, [cameIn(8, 500, 'OPEN'), closed(10), closed(11, 'LOOSELY_COVERED')]);
    expect(stand?.closure).toBe('LOOSELY_COVERED');
    expect(notes).toHaveLength(1);
  });

  it('of a sealed drum: one scoop breaks the seal for good, and it is shut as usual', () => {
    expect(stood(drum, cameIn(8, 500), poured(9, 100))).toMatchObject({
      closure: 'TIGHT',
      dryGrams: 400,
      openedAt: null,
    });
    expect(stood(drum, cameIn(8, 500), poured(9, 100, true))).toMatchObject({ closure: 'OPEN', openedAt: hour(9) });
  });

  it('of which a check took some is no longer sealed either', () => {
    const check = entry(9, { type: 'SPENT_ON_CHECK', detail: { ...weighed, what: 'two dyes' } }, { dryGrams: 1 });
    expect(stood(drum, cameIn(8, 500), check).closure).toBe('TIGHT');
  });

  it('keeps what is shut shut and what is open open when a scoop is taken', () => {
    expect(stood(drum, cameIn(8, 500), closed(9, 'LOOSELY_COVERED'), poured(10, 1)).closure).toBe('LOOSELY_COVERED');
    expect(stood(drum, cameIn(8, 500), opened(9), poured(10, 1))).toMatchObject({ closure: 'OPEN', openedAt: hour(9) });
  });
});

describe('what cannot be true', () => {
  it('is more than was there, and a count is offered', () => {
    const take = poured(9, 600);
    expect(refusal(drum, cameIn(8, 500), take)).toMatchObject({
      entry: { id: take.id },
      about: 'grams',
      why: 'only 500 g (dry) were there',
      expected: 'at most 500 g (dry); if more is there, count it first',
    });
  });

  it('is a later scoop once an earlier one was written down late', () => {
    const written = poured(12, 400);
    expect(refusal(drum, cameIn(8, 500), written, poured(10, 200)).entry.id).toBe(written.id);
  });

  it('is opening what is used up', () => {
    expect(refusal(drum, cameIn(8, 500), usedUp(9), opened(10))).toMatchObject({
      why: 'it was used up at 2026-03-02 09:00 UTC',
    });
  });

  it('is a scoop from what was emptied, until a count finds some', () => {
    expect(refusal(drum, cameIn(8, 500), poured(9, 500), poured(10, 1)).why).toMatch(/nothing was left/);
    expect(stood(drum, cameIn(8, 500), poured(9, 500), counted(10, 20), poured(11, 5)).dryGrams).toBe(15);
  });

  it('is anything before it came in', () => {
    expect(refusal(drum, cameIn(8, 500), opened(7))).toMatchObject({
      about: 'at',
      expected: 'a time from 2026-03-02 08:00 UTC on',
    });
    expect(refusal(drum, opened(7)).why).toBe('it never came in');
  });

  it('is coming in twice', () => {
    expect(refusal(drum, cameIn(8, 500), cameIn(9, 500)).why).toBe('it was there already');
  });

  const all: [EventType, Base['kind'], boolean][] = [
    ['PORTION_TAKEN', 'DRUM', true],
    ['PORTION_TAKEN', 'PLATE_BOX', false],
    ['PORTION_TAKEN', 'COLUMN', false],
    ['PLATES_TAKEN', 'PLATE_BOX', true],
    ['PLATES_TAKEN', 'PORTION', false],
    ['PRE_WASHED', 'PLATE_BOX', true],
    ['PRE_WASHED', 'DRUM', false],
    ['SOLVENT_GONE', 'PORTION', false],
    ['CONDITIONED', 'COLUMN', true],
    ['CONDITIONED', 'DRUM', false],
    ['MIXED', 'PORTION', true],
    ['MIXED', 'COLUMN', false],
    ['COMBINED', 'COLUMN', false],
    ['DRIED', 'PLATE_BOX', true],
  ];
  it.each(all)('is not decided by wishing: %s of a %s is %s', (type, kind, may) => {
    expect(fits(type, kind) === null).toBe(may);
  });
});

describe('a count', () => {
  it('bends the book to the shelf and says by how much', () => {
    const count = counted(10, 380);
    const { stand, notes } = fold(drum, [cameIn(8, 500), poured(9, 100), count]);
    expect(stand?.dryGrams).toBe(380);
    expect(notes).toEqual([{ entryId: count.id, text: 'the book said 400 g (dry), the shelf says 380 g: 20 g less' }]);
  });

  it('of plates counts their sorbent', () => {
    const taken = entry(
      9,
      { type: 'PLATES_TAKEN', detail: { openMinutes: 5, leftOpen: false, into: scoop.into } },
      { plates: 5 },
    );
    expect(stood(box, boxIn(8, 25), taken)).toMatchObject({ plates: 20, dryGrams: 80 });
    expect(refusal(box, boxIn(8, 4), taken)).toMatchObject({ about: 'plates', why: 'only 4 plates were there' });
  });
});

describe('solvent', () => {
  const dried = (at: number) =>
    entry(at, { type: 'DRIED', detail: { temperatureC: 130, minutes: 30, vacuum: true, waterFraction: null } });

  it('on plates is noted until it is gone: before, an oven should not have seen them', () => {
    const washed = entry(9, { type: 'PRE_WASHED', detail: { solvent: 'methanol' } });
    const gone = entry(11, { type: 'SOLVENT_GONE', detail: {} });
    expect(stood(box, boxIn(8, 4), washed).wettedAt).toEqual(hour(9));
    expect(stood(box, boxIn(8, 4), washed, gone).wettedAt).toBeNull();
    expect(fold(box, [boxIn(8, 4), washed, dried(10)]).notes[0]?.text).toMatch(/wet with solvent/);
    expect(fold(box, [boxIn(8, 4), washed, gone, dried(12)]).notes).toEqual([]);
  });

  it('on sorbent stays for good', () => {
    const touched = entry(9, { type: 'TOUCHED_SOLVENT', detail: { what: 'crude extract' } });
    const { stand, notes } = fold(drum, [cameIn(8, 500), touched, dried(10)]);
    expect(stand?.touchedSolventAt).toEqual(hour(9));
    expect(notes[0]?.text).toMatch(/never goes to the oven/);
  });

  it('in a column makes it wetted, since the first time', () => {
    const packed = entry(8, { type: 'COLUMN_PACKED', detail: { ...scoop } }, { role: 'filled', dryGrams: 100 });
    const wet = (at: number) => entry(at, { type: 'CONDITIONED', detail: { mobilePhase: 'hexane', columnVolumes: 3 } });
    expect(stood(column, packed, wet(9), wet(10))).toMatchObject({ wettedAt: hour(9), dryGrams: 100 });
  });
});
