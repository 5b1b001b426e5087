// The ledger balances over random timelines, held against a shelf that is kept apart from the product.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linesOf, weeksOf, type Account, type Kept, type Line } from '../../api/lots/rules.ts';
import type { Said } from '../../api/stock/details.ts';
import type { Base, Entry } from '../../api/stock/stand.ts';
import { shelfAfter, type Act } from '../stock/ledger.ts';

const drum: Base = { kind: 'DRUM', usualClosure: 'TIGHT', dryGramsPerPlate: null };
const minute = (at: number): Date => new Date(Date.UTC(2026, 0, 5) + 60_000 * at);

const weighed = { grams: 1, basis: 'DRY', bookedWaterFraction: null, waterAssumed: false } as const;
const opening = { openMinutes: 5, leftOpen: false } as const;
const into = { into: { roomId: 'bench', closure: 'TIGHT' } } as const;

function said({ kind, grams }: Act): Said {
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
      return { type: 'PORTION_TAKEN', detail: { ...weighed, ...opening, ...into, scooping: null } };
    case 'used':
      return { type: 'SPENT_ON_CHECK', detail: { ...weighed, what: 'two dyes' } };
    case 'lost':
      return { type: 'LOST', detail: { ...weighed, why: 'spilled' } };
    case 'combined':
      return { type: 'COMBINED', detail: { ...weighed, ...opening } };
    case 'counted':
      return {
        type: 'COUNTED',
        detail: {
          ...{ ...weighed, of: 'GRAMS', grossGrams: null, tareGrams: null },
          ...{ dryGrams: grams, plates: null, bookDryGrams: 0, bookPlates: null },
        },
      };
    case 'discarded':
      return { type: 'DISCARDED', detail: { ...weighed, all: true, why: 'too old' } };
  }
}

const entryOf = (act: Act, role: Entry['role']): Entry => ({
  ...{ id: `event ${act.place}`, at: minute(act.at), place: act.place, role },
  ...{ dryGrams: act.kind === 'counted' ? null : act.grams, plates: null },
  ...said(act),
});

/** The containers' timelines of a list of acts, all of one lot. */
function keptOf(acts: readonly Act[]): Kept[] {
  const names = [...new Set(acts.flatMap(({ of, into: to }) => (to === undefined ? [of] : [of, to])))];
  return names.map((container) => ({
    ...{ container, item: 'silica', lot: 'F-118', base: drum },
    entries: acts.flatMap((act) => [
      ...(act.of === container ? [entryOf(act, 'own')] : []),
      ...(act.into === container ? [entryOf(act, 'filled')] : []),
    ]),
  }));
}

/** Random acts, each kept only when the shelf says that it can be true. */
const timeline = fc
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
      grams: fc.double({ min: 0.001, max: 400, noNaN: true }),
      at: fc.nat(60_000),
    }),
    { minLength: 5, maxLength: 60 },
  )
  .map((wanted) => {
    let acts: Act[] = [{ at: 0, place: 0, kind: 'came', of: 'drum 0', grams: 5000 }];
    for (const [i, { kind, which, other, grams, at }] of wanted.entries()) {
      const names = [...new Set(acts.flatMap(({ of, into: to }) => (to === undefined ? [of] : [of, to])))];
      const of = kind === 'came' ? `drum ${i + 1}` : (names[which % names.length] ?? '');
      const to = kind === 'poured' ? `portion ${i + 1}` : kind === 'combined' ? names[other % names.length] : undefined;
      if (to === of) continue;
      const before = shelfAfter(acts.filter((act) => act.at <= at))?.get(of) ?? 0;
      const moved = kind === 'combined' || kind === 'discarded' ? before : grams;
      if (moved === 0) continue;
      const act: Act = { at, place: i + 1, kind, of, grams: moved, ...(to !== undefined && { into: to }) };
      // What is poured over or thrown away is all that was there, also when earlier acts are told later.
      const next = [...acts, act];
      if (shelfAfter(next) !== null && wholesHold(next)) acts = next;
    }
    return acts;
  });

function wholesHold(acts: readonly Act[]): boolean {
  return acts.every((act) => {
    if (act.kind !== 'combined' && act.kind !== 'discarded') return true;
    const earlier = acts.filter(({ at, place }) => at < act.at || (at === act.at && place < act.place));
    return Math.abs((shelfAfter(earlier)?.get(act.of) ?? NaN) - act.grams) < 1e-9;
  });
}

const sumOf = (lines: readonly Line[]): number => lines.reduce((sum, { dryGrams }) => sum + dryGrams, 0);
const named = (lines: readonly Line[], account: Account): Line[] => lines.filter((line) => line.account === account);
/** 1e-9 kg. */
const allowedGrams = 1e-6;
const week = (at: Date): string => String(Math.floor(at.getTime() / 604_800_000)).padStart(8, '0');

describe('the ledger', () => {
  it('balances to a billionth of a kilogram at any time, container by container and over all', () => {
    fc.assert(
      fc.property(timeline, fc.array(fc.nat(60_000), { minLength: 3, maxLength: 3 }), (acts, instants) => {
        const lines = keptOf(acts).flatMap(linesOf);
        for (const instant of [...instants, 60_000]) {
          const shelf = shelfAfter(acts.filter(({ at }) => at <= instant)) ?? new Map<string, number>();
          const until = lines.filter(({ at }) => at <= minute(instant));
          for (const [container, grams] of shelf) {
            const own = until.filter((line) => line.container === container);
            expect(Math.abs(sumOf(own) - grams)).toBeLessThan(allowedGrams);
          }
          for (const account of ['taken', 'combined'] as const) {
            expect(Math.abs(sumOf(named(until, account)))).toBeLessThan(allowedGrams);
          }
        }
      }),
    );
  });

  it('opens every figure down to the events behind it, each in one account', () => {
    fc.assert(
      fc.property(timeline, (acts) => {
        const lines = keptOf(acts).flatMap(linesOf);
        for (const act of acts) {
          if (act.kind === 'counted') continue;
          const own = lines.filter(({ event, container }) => event === `event ${act.place}` && container === act.of);
          const sign = act.kind === 'came' ? 1 : -1;
          expect(Math.abs(sumOf(own) - sign * act.grams)).toBeLessThan(allowedGrams);
        }
        for (const told of weeksOf(lines, week)) {
          expect(
            Math.abs(sumOf(told.lines) - Object.values(told.dryGrams).reduce((sum, x) => sum + x, 0)),
          ).toBeLessThan(allowedGrams);
        }
      }),
    );
  });

  it('goes over from week to week, and ends at what is there', () => {
    fc.assert(
      fc.property(timeline, (acts) => {
        const weeks = weeksOf(keptOf(acts).flatMap(linesOf), week);
        for (const [i, one] of weeks.entries()) {
          expect(one.openingDryGrams).toBe(weeks[i - 1]?.closingDryGrams ?? 0);
        }
        const there = [...(shelfAfter(acts) ?? [])].reduce((sum, [, grams]) => sum + grams, 0);
        expect(Math.abs((weeks.at(-1)?.closingDryGrams ?? NaN) - there)).toBeLessThan(allowedGrams);
      }),
    );
  });

  it('counts as used what leaves the shelf, not what goes on in the beaker', () => {
    const acts: Act[] = [
      { at: 0, place: 0, kind: 'came', of: 'drum', grams: 1000 },
      { at: 1, place: 1, kind: 'poured', of: 'drum', into: 'beaker', grams: 100 },
      { at: 2, place: 2, kind: 'used', of: 'beaker', grams: 30 },
      { at: 3, place: 3, kind: 'lost', of: 'drum', grams: 5 },
      { at: 4, place: 4, kind: 'counted', of: 'drum', grams: 890 },
      { at: 5, place: 5, kind: 'combined', of: 'beaker', into: 'drum', grams: 70 },
    ];
    const [told] = weeksOf(keptOf(acts).flatMap(linesOf), week);
    expect(told?.usedDryGrams).toBeCloseTo(100 + 5 - 70, 9);
    expect(told?.dryGrams).toMatchObject({ received: 1000, 'spent on checks': -30, lost: -5, counted: -5 });
    expect(told?.closingDryGrams).toBeCloseTo(960, 9);
    expect(told?.lines.find(({ account }) => account === 'lost')?.why).toBe('spilled');
  });

  it('counts plates one by one', () => {
    const box: Base = { kind: 'PLATE_BOX', usualClosure: 'WELL_CLOSED', dryGramsPerPlate: 4 };
    const came = entryOf({ at: 0, place: 0, kind: 'came', of: 'box', grams: 0 }, 'own');
    const taken = { ...entryOf({ at: 9, place: 1, kind: 'used', of: 'box', grams: 12 }, 'own'), plates: 3 };
    const entries = [{ ...came, dryGrams: 100, plates: 25 }, taken];
    const [told] = weeksOf(linesOf({ container: 'box', item: 'plates', lot: 'P-7', base: box, entries }), week);
    expect(told).toMatchObject({ usedPlates: 3, usedDryGrams: 12, closingDryGrams: 88 });
  });

  it('refuses a timeline that cannot be true', () => {
    const [kept] = keptOf([{ at: 0, place: 0, kind: 'lost', of: 'drum', grams: 5 }]);
    expect(() => kept && linesOf(kept)).toThrow(/cannot be true/);
  });
});
