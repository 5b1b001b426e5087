// What offers, campaigns and orders must say, money without fractions, and the chance that stock lasts.
import fc from 'fast-check';
import { poissonDistribution } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { chanceOfLasting, weeksWithChance } from '../../api/purchasing/cover.ts';
import { amountOf, currencyNamed, minorOf, moneyText } from '../../api/purchasing/money.ts';
import { movedBetween, movedSentence, type Ordered } from '../../api/purchasing/moved.ts';
import { fridayOf, lineSentence, orderBy, said } from '../../api/purchasing/plan-words.ts';
import { noDearer } from '../../api/purchasing/policy.ts';
import { wholeWeeks } from '../../api/purchasing/problem.ts';
import {
  checkPrices,
  checkStep,
  coveredCount,
  leadChances,
  plannedWeeks,
  priceFor,
  stillToCome,
  usesInOrder,
} from '../../api/purchasing/rules.ts';
import { usableOf } from '../../api/purchasing/shelf.ts';
import type { PurchaseAnswer } from '../../api/science/purchase/types.ts';
import { amount, inWeek, ofLot, type Sentence, sentence, span } from '../../api/science/purchase/words.ts';
import { daySaid, mondayOf, weekOf } from '../../api/purchasing/weeks.ts';

const euro = { code: 'EUR', minorDigits: 2 };

describe('money', () => {
  it('is read and written back exactly, in currencies with no, two and three digits', () => {
    const digits = fc.constantFrom(0, 2, 3);
    const minor = fc.integer({ min: 0, max: 2_000_000_000 });
    fc.assert(
      fc.property(minor, digits, (of, minorDigits) => {
        const currency = { code: 'CHF', minorDigits };
        expect(minorOf(amountOf(of, currency), currency, 'price')).toBe(of);
      }),
    );
  });

  it('knows the digits of a currency as ISO 4217 has them', () => {
    const digits = (code: string) => currencyNamed(code, 'currency').minorDigits;
    expect(['eur', 'JPY', 'KWD'].map(digits)).toEqual([2, 0, 3]);
    expect(() => currencyNamed('EURO', 'currency')).toThrow('invalid currency: EURO, the three letters');
  });

  it('takes a comma for a point, and no third digit of a cent', () => {
    expect(minorOf('84,5', euro, 'price')).toBe(8450);
    expect(() => minorOf('84.505', euro, 'price')).toThrow(
      'invalid price: 84.505, an amount in EUR with at most 2 digits',
    );
    expect(() => minorOf('1e3', euro, 'price')).toThrow('invalid price');
    expect(() => minorOf(' ', euro, 'price')).toThrow('missing price');
    expect(moneyText(1_208_450, euro)).toBe('12\u202f084.50 EUR');
    expect(moneyText(-5, euro)).toBe('−0.05 EUR');
  });
});

describe('an offer', () => {
  const prices = [
    { from: 1, minor: 8450 },
    { from: 3, minor: 8000 },
    { from: 8, minor: 7400 },
  ];

  it('costs what the step says that its packs reach', () => {
    expect([1, 2, 3, 7, 8, 100].map((packs) => priceFor(prices, packs))).toEqual([8450, 8450, 8000, 8000, 7400, 7400]);
  });

  it('is refused when more packs are dearer, or the first price is not from one pack', () => {
    const checked = (of: typeof prices) => () => checkPrices(of, (minor) => amountOf(minor, euro));
    expect(checked(prices)).not.toThrow();
    expect(checked([{ from: 2, minor: 1 }])).toThrow('invalid input.prices.0.from: 2, 1');
    expect(checked([...prices, { from: 9, minor: 7401 }])).toThrow(
      'invalid input.prices.3.price: 74.01, at most 74.00, the price of fewer packs',
    );
    expect(checked([...prices, { from: 8, minor: 7000 }])).toThrow('invalid input.prices.3.from');
  });

  it('comes within its spread of weeks for sure, and is planned to come when nine in ten have', () => {
    const least = fc.integer({ min: 0, max: 6 });
    fc.assert(
      fc.property(least, least, least, (a, b, c) => {
        const lead = { leadLeastWeeks: a, leadUsualWeeks: a + b, leadMostWeeks: a + b + c };
        const chances = leadChances(lead);
        expect(chances.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 12);
        const planned = plannedWeeks(lead);
        const by = (week: number) => chances.reduce((sum, { weeks, chance }) => sum + (weeks <= week ? chance : 0), 0);
        expect(by(planned)).toBeGreaterThanOrEqual(0.9 - 1e-9);
        expect(by(planned - 1)).toBeLessThan(0.9);
      }),
    );
  });
});

describe('a campaign', () => {
  it('takes its uses by day, and plates are whole', () => {
    const uses = [
      { day: '2026-03-09', amount: 5 },
      { day: '2026-03-02', amount: 4 },
      { day: '2026-03-09', amount: 1 },
    ];
    expect(usesInOrder(uses, 'GLASS')).toEqual([
      { day: '2026-03-02', amount: 4 },
      { day: '2026-03-09', amount: 6 },
    ]);
    expect(() => usesInOrder([{ day: '2026-03-02', amount: 1.5 }], 'GLASS')).toThrow('a whole number of plates');
  });

  it('wants beside its needs what they do not take of their week, and nothing of weeks that are over', () => {
    const uses = [
      { week: 0, amount: 9 },
      { week: 1, amount: 10 },
      { week: 2, amount: 10 },
    ];
    const needs = [
      { week: 1, amount: 4, had: 4 },
      { week: 2, amount: 12, had: 12 },
      { week: 3, amount: 5, had: 5 },
    ];
    expect(stillToCome(uses, needs, 1)).toEqual([{ week: 1, amount: 6 }]);
  });

  it('wants for its needs too what nothing is kept for yet', () => {
    const uses = [{ week: 1, amount: 10 }];
    const needs = [
      { week: 1, amount: 4, had: 1 },
      { week: 2, amount: 12, had: 0 },
      { week: 3, amount: 5, had: 5 },
    ];
    // Of week 1 the use is more than its need: 10, of which 1 was had.
    expect(stillToCome(uses, needs, 1)).toEqual([
      { week: 1, amount: 9 },
      { week: 2, amount: 12 },
    ]);
  });

  it('lasts until the last use that what is kept covers, one after the other', () => {
    const uses = [{ amount: 100 }, { amount: 200 }, { amount: 50 }];
    expect(coveredCount(uses, 99)).toBe(0);
    expect(coveredCount(uses, 320)).toBe(2);
    expect(coveredCount(uses, 350)).toBe(3);
  });
});

describe('an order', () => {
  it('goes from asked for to bought to the shelf, and not from called off to the shelf', () => {
    expect(() => checkStep('ASKED_FOR', 'BOUGHT', 'x')).not.toThrow();
    expect(() => checkStep('BOUGHT', 'ON_THE_SHELF', 'x')).not.toThrow();
    expect(() => checkStep('CALLED_OFF', 'ON_THE_SHELF', 'x')).toThrow(
      'an order that can be on the shelf: this one is called off',
    );
  });
});

describe('what is opened', () => {
  const drum = { kind: 'DRUM', touchedSolventAt: null } as const;
  const by = { canDry: true, lossFraction: 0.02, limitWaterFraction: null };
  const wet = { state: 'REDRY', scoopWaterFraction: 0.07 } as const;

  it('loses a little to redrying when it is too wet, and nothing when it is good', () => {
    expect(usableOf({ ...drum, exposure: wet }, 500, by)).toEqual({ usable: 490, mustRedry: true, lost: 10 });
    const good = { state: 'GOOD', scoopWaterFraction: 0.03 } as const;
    expect(usableOf({ ...drum, exposure: good }, 500, by)).toEqual({ usable: 500, mustRedry: false, lost: 0 });
  });

  it('cannot be used when it touched solvent, or is too wet and must not be dried', () => {
    expect(usableOf({ ...drum, touchedSolventAt: new Date(0), exposure: null }, 500, by).usable).toBe(0);
    expect(usableOf({ ...drum, exposure: wet }, 500, { ...by, canDry: false }).usable).toBe(0);
  });

  it('is used as it is under a wider limit, and redried under a narrower one', () => {
    expect(usableOf({ ...drum, exposure: wet }, 500, { ...by, limitWaterFraction: 0.08 }).usable).toBe(500);
    const good = { state: 'GOOD', scoopWaterFraction: 0.03 } as const;
    expect(usableOf({ ...drum, exposure: good }, 500, { ...by, limitWaterFraction: 0.02 }).mustRedry).toBe(true);
  });
});

describe('the chance that something lasts', () => {
  /** P(Poisson ≤ count), summed from an independent table. */
  const poisson = (mean: number, count: number) =>
    (poissonDistribution(mean) ?? []).slice(0, count + 1).reduce((sum, chance) => sum + chance, 0);

  it('is that of a Poisson count where the history shows no more spread than that', () => {
    expect(chanceOfLasting(12, { mean: 2, variance: 0 }, 4)).toBeCloseTo(poisson(8, 12), 4);
    expect(chanceOfLasting(5, { mean: 2, variance: 0 }, 4)).toBeCloseTo(poisson(8, 5), 4);
  });

  it('falls with the weeks, rises with the stock, and is 0 for what is promised already', () => {
    const weekly = fc.record({
      mean: fc.double({ min: 0.1, max: 500, noNaN: true }),
      variance: fc.double({ min: 0, max: 1e5, noNaN: true }),
    });
    const amount = fc.double({ min: 0, max: 5000, noNaN: true });
    fc.assert(
      fc.property(weekly, amount, amount, fc.integer({ min: 1, max: 40 }), (of, free, more, weeks) => {
        const chance = chanceOfLasting(free, of, weeks);
        expect(chanceOfLasting(free + more, of, weeks)).toBeGreaterThanOrEqual(chance - 1e-9);
        expect(chanceOfLasting(-1, of, weeks)).toBe(0);
        const last = weeksWithChance(free, of, 0.9, 104);
        if (last > 0) expect(chanceOfLasting(free, of, last)).toBeGreaterThanOrEqual(0.9);
        if (last < 104) expect(chanceOfLasting(free, of, last + 1)).toBeLessThan(0.9);
      }),
      { numRuns: 60 },
    );
  });
});

describe('weeks', () => {
  it('begin on Monday and are counted from the one a plan is made in', () => {
    expect(mondayOf('2026-03-08')).toBe('2026-03-02');
    const days = ['2026-03-01', '2026-03-02', '2026-03-08', '2026-03-09'];
    expect(days.map((day) => weekOf('2026-03-02', day))).toEqual([0, 1, 1, 2]);
    expect(daySaid('2027-03-12', '2026-11-26')).toBe('12 March 2027');
  });

  it('are said as days, and large amounts in kilograms', () => {
    const calendar = { monday: '2026-03-02', today: '2026-03-03' };
    const offers = [{ id: 'packs of silica', supplier: 'Marlpit Chemicals' }];
    const words = (of: Sentence) => said(of, { offers, orders: { 'order 7': 'id' } }, calendar);
    expect(words(sentence`${ofLot('F-118')} ends in ${inWeek(3)}, ${amount(2600, 'g')} in ${span(4, 6)}.`)).toBe(
      'lot F-118 ends in the week of 16 March, 2.6 kg in the weeks of 23 March to 6 April.',
    );
    expect(words(sentence`${ofLot('order 7')}, ${ofLot('packs of silica@2')} and ${ofLot('week 3')} end.`)).toBe(
      'the lot of order 7, the lot to be ordered from Marlpit Chemicals in the week of 9 March and lot week 3 end.',
    );
    expect(orderBy(1, calendar)).toBe('2026-03-06');
    expect(orderBy(1, { ...calendar, today: '2026-03-08' })).toBe('2026-03-08');
    const reason = words(sentence`Without it, ${amount(400, 'g')} would be missing from ${inWeek(5)} on.`);
    expect(lineSentence('2 packs of 5 kg', '2026-03-13', reason, calendar)).toBe(
      'Order 2 packs of 5 kg by 13 March: without it, 400 g would be missing from the week of 30 March on.',
    );
  });

  it('carry whole units that add up to what is expected', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 900, noNaN: true }), fc.integer({ min: 1, max: 52 }), (mean, weeks) => {
        const all = wholeWeeks(mean, weeks);
        expect(all.every((one) => Number.isInteger(one) && one >= 0)).toBe(true);
        expect(all.reduce((sum, one) => sum + one, 0)).toBe(Math.round(mean * weeks));
      }),
    );
  });
});

describe('a plan', () => {
  const of = (cost: number, bound: number | null) =>
    ({ status: bound === null ? 'gap' : 'time', cost, bound, gap: 0.4, gapControllable: 0.5 }) as PurchaseAnswer;

  it('is never dearer than ordering at reorder points, and keeps what was proven', () => {
    expect(noDearer(of(900, 800), of(1000, null))).toEqual(of(900, 800));
    expect(noDearer(of(1200, 800), of(1000, null))).toMatchObject({ status: 'time', cost: 1000, bound: 800, gap: 0.2 });
  });
});

describe('what moved since the plan before', () => {
  const order = (offerId: string, monday: string, packs: number): Ordered => ({
    ...{ offerId, monday, packs },
    by: fridayOf(monday),
  });
  const sentences = (before: Ordered[], after: Ordered[]) =>
    movedBetween(before, after).map((one) =>
      movedSentence(one, (packs) => `${packs} packs of 1 kg`, 'silica from Marlpit Chemicals', '2026-03-03'),
    );

  it('is nothing where both order the same', () => {
    const all = [order('a', '2026-03-02', 2), order('b', '2026-03-09', 1)];
    expect(movedBetween(all, [...all].reverse())).toEqual([]);
  });

  it('is said line by line, the soonest first: new, no more, of other packs, for another week', () => {
    const before = [order('a', '2026-03-09', 2), order('b', '2026-03-16', 3), order('c', '2026-03-23', 1)];
    const after = [order('a', '2026-03-09', 4), order('b', '2026-03-30', 3), order('d', '2026-03-02', 2)];
    expect(sentences(before, after)).toEqual([
      'New: 2 packs of 1 kg of silica from Marlpit Chemicals by 6 March.',
      'Now 4 packs of 1 kg instead of 2 of silica from Marlpit Chemicals by 13 March.',
      'No more: 1 packs of 1 kg of silica from Marlpit Chemicals by 27 March.',
      'Now 3 packs of 1 kg of silica from Marlpit Chemicals by 3 April instead of 20 March.',
    ]);
  });

  it('accounts for every pack: what there was, less what went, with what came, is what there is', () => {
    const weeks = ['2026-03-02', '2026-03-09', '2026-03-16', '2026-03-23'];
    const plan = fc
      .uniqueArray(fc.tuple(fc.constantFrom('a', 'b'), fc.constantFrom(...weeks)), { selector: String })
      .chain((lines) =>
        fc.tuple(...lines.map(([id, monday]) => fc.integer({ min: 1, max: 9 }).map((n) => order(id, monday, n)))),
      );
    const sum = (some: readonly (Ordered | null)[]) => some.reduce((total, one) => total + (one?.packs ?? 0), 0);
    fc.assert(
      fc.property(plan, plan, (before, after) => {
        const moved = movedBetween(before, after);
        const change = sum(moved.map((one) => one.after)) - sum(moved.map((one) => one.before));
        expect(change).toBe(sum(after) - sum(before));
        expect(
          moved.every(({ before: old, after: now }) => old?.monday !== now?.monday || old?.packs !== now?.packs),
        ).toBe(true);
      }),
    );
  });
});
