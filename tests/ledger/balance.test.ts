// The ledger balances over random timelines of sorbent and of plates, held against a shelf that is kept apart from the product.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  figuresOf,
  linesOf,
  places,
  usedByWeek,
  type Figures,
  type Kept,
  type Line,
  type Sum,
} from '../../api/ledger/rules.ts';
import type { Said } from '../../api/stock/details.ts';
import type { Base, Entry } from '../../api/stock/stand.ts';
import { shelfAfter, type Act } from '../stock/ledger.ts';

const drum: Base = { kind: 'DRUM', usualClosure: 'TIGHT', dryGramsPerPlate: null };
const perPlate = 3.7;
const box: Base = { kind: 'PLATE_BOX', usualClosure: 'WELL_CLOSED', dryGramsPerPlate: perPlate };
const minute = (at: number): Date => new Date(Date.UTC(2026, 0, 5) + 60_000 * at);

const weighed = { grams: 1, basis: 'DRY', bookedWaterFraction: null, waterAssumed: false } as const;
const opening = { openMinutes: 5, leftOpen: false } as const;
const into = { into: { roomId: 'bench', closure: 'TIGHT' } } as const;

/** What is used at once is taken, packed or spent on a check, in turn; what is finished is thrown away or used up. */
function said({ kind, grams, place }: Act, base: Base): Said {
  const isPlates = base.kind === 'PLATE_BOX';
  const taken: Said = isPlates
    ? { type: 'PLATES_TAKEN', detail: { ...opening, ...into } }
    : { type: 'PORTION_TAKEN', detail: { ...weighed, ...opening, ...into, scooping: null } };
  switch (kind) {
    case 'came':
      return {
        type: 'CAME_IN',
        detail: {
          ...{ roomId: 'store', closure: 'TIGHT', grams, basis: 'DRY', startWaterFraction: 0.02 },
          ...{ startWaterFrom: 'GIVEN', bookedWaterFraction: 0.02, waterAssumed: false },
        },
      };
    case 'poured':
      return taken;
    case 'used':
      if (place % 3 === 0) return taken;
      if (place % 3 === 1 && !isPlates) return { type: 'COLUMN_PACKED', detail: { ...weighed, ...opening, ...into } };
      return { type: 'SPENT_ON_CHECK', detail: { ...weighed, what: 'two dyes' } };
    case 'lost':
      return { type: 'LOST', detail: { ...weighed, why: 'spilled' } };
    case 'combined':
      return { type: 'COMBINED', detail: { ...weighed, ...opening } };
    case 'counted':
      return {
        type: 'COUNTED',
        detail: {
          ...{ ...weighed, of: isPlates ? 'PLATES' : 'GRAMS', grossGrams: null, tareGrams: null },
          ...{ dryGrams: grams, plates: isPlates ? grams : null, bookDryGrams: 0, bookPlates: null },
        },
      };
    case 'discarded':
      if (place % 2 === 0) return { type: 'USED_UP', detail: {} };
      return { type: 'DISCARDED', detail: { ...weighed, all: true, why: 'too old' } };
  }
}

function entryOf(act: Act, role: Entry['role'], base: Base): Entry {
  const isPlates = base.kind === 'PLATE_BOX';
  const counted = act.kind === 'counted';
  return {
    ...{ id: `event ${act.place}`, at: minute(act.at), place: act.place, role },
    ...{
      dryGrams: counted ? null : act.grams * (isPlates ? perPlate : 1),
      plates: isPlates && !counted ? act.grams : null,
    },
    ...said(act, base),
  };
}

const namesIn = (acts: readonly Act[]): string[] => [
  ...new Set(acts.flatMap(({ of, into: to }) => (to === undefined ? [of] : [of, to]))),
];

/** The containers' timelines of a list of acts, all of one lot. */
function keptOf(acts: readonly Act[], base: Base): Kept[] {
  return namesIn(acts).map((container) => ({
    ...{ container, base },
    entries: acts.flatMap((act) => [
      ...(act.of === container ? [entryOf(act, 'own', base)] : []),
      ...(act.into === container ? [entryOf(act, 'filled', base)] : []),
    ]),
  }));
}

/** Random acts, each kept only when the shelf says that it can be true; plates are whole and never poured together. */
const timeline = (isPlates: boolean) =>
  fc
    .array(
      fc.record({
        kind: fc.constantFrom<Act['kind']>(
          'came',
          'poured',
          'poured',
          'used',
          'lost',
          'combined',
          'counted',
          'discarded',
        ),
        which: fc.nat(30),
        other: fc.nat(30),
        // Fractions of grams, so that sums round.
        grams: isPlates ? fc.integer({ min: 1, max: 60 }) : fc.double({ min: 0.001, max: 400, noNaN: true }),
        at: fc.nat(60_000),
      }),
      { minLength: 5, maxLength: 60 },
    )
    .map((wanted) => {
      let acts: Act[] = [{ at: 0, place: 0, kind: 'came', of: 'drum 0', grams: 5000 }];
      for (const [i, { kind, which, other, grams, at }] of wanted.entries()) {
        const names = [...new Set(acts.flatMap(({ of, into: to }) => (to === undefined ? [of] : [of, to])))];
        const of = kind === 'came' ? `drum ${i + 1}` : (names[which % names.length] ?? '');
        const to =
          kind === 'poured' ? `portion ${i + 1}` : kind === 'combined' ? names[other % names.length] : undefined;
        if (to === of || (isPlates && kind === 'combined')) continue;
        const before = shelfAfter(acts.filter((act) => act.at <= at))?.get(of) ?? 0;
        const moved = kind === 'combined' || kind === 'discarded' ? before : grams;
        // Less than what rounding leaves is nothing.
        if (moved < 1e-6) continue;
        const act: Act = { at, place: i + 1, kind, of, grams: moved, ...(to !== undefined && { into: to }) };
        // What is poured over or thrown away is all that was there, also when earlier acts are told later.
        const next = [...acts, act];
        if (shelfAfter(next) !== null && wholesHold(next)) acts = next;
      }
      return acts;
    });

/** What stands on the shelf then; the acts before an instant can be true, as all of them can. */
function shelfAt(acts: readonly Act[], instant: number): ReadonlyMap<string, number> {
  const shelf = shelfAfter(acts.filter(({ at }) => at <= instant));
  if (!shelf) throw new Error('acts that cannot be true');
  return shelf;
}

function wholesHold(acts: readonly Act[]): boolean {
  return acts.every((act) => {
    if (act.kind !== 'combined' && act.kind !== 'discarded') return true;
    const earlier = acts.filter(({ at, place }) => at < act.at || (at === act.at && place < act.place));
    return Math.abs((shelfAfter(earlier)?.get(act.of) ?? NaN) - act.grams) < 1e-9;
  });
}

/** 1e-9 kg. */
const allowedGrams = 1e-6;
/** The end of the time that acts lie in, minutes. */
const end = 60_000;

const kinds = [
  { title: 'sorbent', base: drum, amountOf: (line: Line) => line.dryGrams },
  { title: 'plates', base: box, amountOf: (line: Line) => line.plates ?? 0 },
];

const sumOf = (amounts: readonly number[]): number => amounts.reduce((sum, amount) => sum + amount, 0);
const balanceOf = (of: Figures): number =>
  of.opening + of.cameIn + of.filled - of.used - of.writtenOff - of.lost - of.spentOnChecks + of.counted;

describe.each(kinds)('the ledger of $title', ({ base, amountOf }) => {
  const isPlates = base.kind === 'PLATE_BOX';
  const sumsOf = (lines: readonly Line[]): Sum[] =>
    lines.map((line) => ({ isStock: line.isStock, account: line.account, amount: amountOf(line) }));

  it('is tried on acts of every kind', () => {
    const kept = fc.sample(timeline(isPlates), 60).flat();
    const every = ['came', 'poured', 'used', 'lost', ...(isPlates ? [] : ['combined']), 'counted', 'discarded'];
    expect([...new Set(kept.map(({ kind }) => kind))].sort()).toEqual(every.sort());
    expect(kept.length).toBeGreaterThan(60 * 5);
  });

  it('balances to a billionth of a kilogram at any time, container by container', () => {
    fc.assert(
      fc.property(timeline(isPlates), fc.array(fc.nat(end), { minLength: 3, maxLength: 3 }), (acts, instants) => {
        const lines = keptOf(acts, base).flatMap(linesOf);
        for (const instant of [...instants, end]) {
          const shelf = shelfAt(acts, instant);
          expect(instant < end || shelf.size === namesIn(acts).length).toBe(true);
          const until = lines.filter(({ at }) => at <= minute(instant));
          for (const [container, amount] of shelf) {
            const own = until.filter((line) => line.container === container);
            expect(Math.abs(sumOf(own.map(amountOf)) - amount)).toBeLessThan(allowedGrams);
            if (isPlates)
              expect(Math.abs(sumOf(own.map(({ dryGrams }) => dryGrams)) - amount * perPlate)).toBeLessThan(
                allowedGrams,
              );
          }
        }
      }),
    );
  });

  it('says of any stretch of time what came, was used, was written off and lost, and what is left of it', () => {
    fc.assert(
      fc.property(timeline(isPlates), fc.nat(end), fc.nat(end), (acts, one, other) => {
        const [from, until] = [Math.min(one, other), Math.max(one, other)];
        const lines = keptOf(acts, base).flatMap(linesOf);
        const within = (at: Date): boolean => at > minute(from) && at <= minute(until);
        const at = (instant: number) => shelfAt(acts, instant);
        const came = new Set(acts.filter(({ kind }) => kind === 'came').map(({ of }) => of));
        for (const place of places) {
          const there = (name: string): boolean => place === 'WHOLE' || came.has(name) === (place === 'SHELF');
          const held = (instant: number): number =>
            sumOf([...at(instant)].filter(([name]) => there(name)).map(([, amount]) => amount));
          const sums = sumsOf(lines.filter((line) => within(line.at)));
          const told = figuresOf(place, held(from), sums);
          expect(Math.abs(told.onHand - held(until))).toBeLessThan(allowedGrams);
          expect(Math.abs(balanceOf(told) - told.onHand)).toBeLessThan(allowedGrams);
          const acted = (which: (act: Act) => boolean): number =>
            sumOf(
              acts.filter((act) => within(minute(act.at)) && there(act.of) && which(act)).map(({ grams }) => grams),
            );
          const near = (said: number, meant: number): void => expect(Math.abs(said - meant)).toBeLessThan(allowedGrams);
          near(
            told.cameIn,
            acted(({ kind }) => kind === 'came'),
          );
          near(
            told.writtenOff,
            acted(({ kind, place: turn }) => kind === 'discarded' && turn % 2 === 1),
          );
          near(
            told.usedUp,
            acted(({ kind, place: turn }) => kind === 'discarded' && turn % 2 === 0),
          );
          if (place !== 'SHELF') continue;
          const isTaken = ({ kind, place: turn }: Act): boolean =>
            kind === 'poured' || (kind === 'used' && turn % 3 === 0);
          near(told.taken, acted(isTaken));
        }
      }),
    );
  });

  it('opens every figure down to the events behind it, each in one account', () => {
    fc.assert(
      fc.property(timeline(isPlates), (acts) => {
        const lines = keptOf(acts, base).flatMap(linesOf);
        for (const act of acts) {
          if (act.kind === 'counted') continue;
          const own = lines.filter(({ event, container }) => event === `event ${act.place}` && container === act.of);
          const sign = act.kind === 'came' ? 1 : -1;
          expect(Math.abs(sumOf(own.map(amountOf)) - sign * act.grams)).toBeLessThan(allowedGrams);
          expect(new Set(own.map(({ account }) => account)).size).toBe(1);
        }
      }),
    );
  });
});

describe('the ledger', () => {
  const acts: Act[] = [
    { at: 0, place: 0, kind: 'came', of: 'drum', grams: 1000 },
    { at: 1, place: 1, kind: 'poured', of: 'drum', into: 'beaker', grams: 100 },
    { at: 2, place: 2, kind: 'used', of: 'beaker', grams: 30 },
    { at: 3, place: 3, kind: 'lost', of: 'drum', grams: 5 },
    { at: 4, place: 4, kind: 'counted', of: 'drum', grams: 890 },
    { at: 5, place: 5, kind: 'combined', of: 'beaker', into: 'drum', grams: 70 },
  ];
  const lines = keptOf(acts, drum).flatMap(linesOf);
  const sums = lines.map(({ isStock, account, dryGrams: amount }) => ({ isStock, account, amount }));

  it('counts as used what leaves the shelf, not what goes on in the beaker', () => {
    expect(figuresOf('SHELF', 0, sums)).toMatchObject({ cameIn: 1000, taken: 100, putBack: 70, used: 30, lost: 5 });
    expect(figuresOf('SHELF', 0, sums)).toMatchObject({ counted: -5, spentOnChecks: 0, onHand: 960 });
    expect(figuresOf('TAKEN_OUT', 0, sums)).toMatchObject({ filled: 100, spentOnChecks: 30, onHand: 0 });
    expect(figuresOf('WHOLE', 0, sums)).toMatchObject({ used: 0, spentOnChecks: 30, lost: 5, onHand: 960 });
  });

  it('says why something was lost, and with how much water it came', () => {
    expect(lines.find(({ account }) => account === 'LOST')?.why).toBe('spilled');
    expect(lines.find(({ account }) => account === 'CAME_IN')?.asReceivedGrams).toBeCloseTo(1020, 9);
  });

  it('refuses a timeline that cannot be true', () => {
    const [kept] = keptOf([{ at: 0, place: 0, kind: 'lost', of: 'drum', grams: 5 }], drum);
    expect(() => kept && linesOf(kept)).toThrow(/cannot be true/);
  });
});

describe('use by week', () => {
  it('is never below nothing: what came back is taken off the weeks before', () => {
    expect(usedByWeek([100, 0, 40, -60, 5])).toEqual([80, 0, 0, 0, 5]);
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -200, max: 200 }), { maxLength: 40 }), (net) => {
        const used = usedByWeek(net);
        expect(used).toHaveLength(net.length);
        expect(used.every((amount) => amount >= 0)).toBe(true);
        // From any week on, use is the most that was taken net of what came back, counted from that week or a later one.
        for (const [from] of net.entries()) {
          const later = net.map((_, at) => sumOf(net.slice(at))).slice(from);
          expect(sumOf(used.slice(from))).toBe(Math.max(0, ...later));
        }
      }),
    );
  });
});
