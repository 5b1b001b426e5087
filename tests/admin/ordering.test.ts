// The ledger and ordering in words: what is typed as prices is read, weeks are counted, amounts keep their basis.
import { describe, expect, it } from 'vitest';
import { becameWords, cell, mondayBack, takenOutWords, usedBetween, weekWords } from '../../admin/tally/words.ts';
import type { Stock } from '../../admin/tally/questions.ts';
import {
  chanceWords,
  daysFrom,
  pricesRead,
  pricesWords,
  usesWords,
  weeklyWords,
  weekSummary,
  planWords,
  supposedWords,
} from '../../admin/order/words.ts';

const none = { opening: 0, cameIn: 0, used: 0, writtenOff: 0, lost: 0, spentOnChecks: 0, counted: 0, onHand: 0 };
const stock = (more: Partial<Stock>): Stock => ({
  ...{
    kind: 'SORBENT',
    asReceivedPerDry: 1.1,
    sorbent: { name: 'silica' },
    lot: { id: '1', lotNumber: 'F-1', supplier: null },
  },
  ...{ shelf: none, takenOut: none, reasons: [], weeks: [] },
  ...more,
});

describe('prices', () => {
  it('are typed with breaks, with point or comma, and come back as they are', () => {
    const read = pricesRead('84,50; from 3: 80; from 8: 76.20');
    expect(read).toEqual([
      { from: 1, price: '84.50' },
      { from: 3, price: '80' },
      { from: 8, price: '76.20' },
    ]);
    const told = (read ?? []).map(({ from, price }) => ({ from, price: { amount: price } }));
    expect(pricesRead(pricesWords(told))).toEqual(read);
  });

  it('that cannot be read are none', () => {
    for (const text of ['', 'eighty', '84.50 80', 'from 3: 80', '84.50; 80', '1,000.00'])
      expect(pricesRead(text)).toBeNull();
  });
});

describe('a campaign', () => {
  it('takes the same every week, over a change of the month and the year', () => {
    expect(daysFrom('2026-12-20', 3, 1)).toEqual(['2026-12-20', '2026-12-27', '2027-01-03']);
    const uses = daysFrom('2026-12-20', 3, 1).map((day) => ({ day, amount: 250, isOver: false }));
    expect(usesWords({ uses, backing: null }, '2026-11-26').replace(/\s/g, ' ')).toBe(
      '3 × 250 g dry, 20 December to 3 January 2027',
    );
  });

  it('is told chances, and never more surely than they are', () => {
    expect(chanceWords(0.9).replace(/\s/g, ' ')).toBe('a chance of 90 %');
    expect([chanceWords(0.999), chanceWords(0.001)]).toEqual(['almost certainly', 'almost certainly not']);
  });
});

describe('a week', () => {
  it('begins on Monday, whichever day it is asked for', () => {
    for (const day of ['2026-03-02', '2026-03-05', '2026-03-08']) expect(mondayBack(day, 0)).toBe('2026-03-02');
    expect(mondayBack('2026-03-08', 9)).toBe('2025-12-29');
    expect(weekWords('2025-12-29', '2026')).toBe('29 Dec 2025');
  });

  it('in which nothing happened is a bar of nothing, and what came back is none below nothing', () => {
    const weeks = [
      { week: '2026-03-02', shelf: { used: 5 } },
      { week: '2026-03-16', shelf: { used: -2 } },
    ];
    expect(usedBetween({ weeks }, '2026-02-23', '2026-03-16')).toEqual([0, 5, 0, 0]);
  });

  it('costs what is to be paid, also where what is left at the end is worth more', () => {
    const eur = (amount: number) => ({ minor: String(100 * amount), text: `${amount}.00 EUR` });
    const plan = { spend: eur(695), saves: eur(0), cost: eur(-2226) };
    expect(planWords(plan)).toBe('695.00 EUR to be paid; no better than ordering at reorder points.');
    expect(planWords({ ...plan, saves: eur(40) })).toMatch(/; all counted, 40\.00 EUR better than ordering/);
    const late = { spend: eur(700), cost: eur(-2000) };
    expect(supposedWords(late, plan)).toMatch(/^700\.00 EUR to be paid, against 695\.00 EUR; .* comes out worse\./);
  });

  it('uses a part of a plate, and says what is due and late', () => {
    expect(weeklyWords(0.375, { unit: 'PLATES' })).toBe('about 0.38 plates');
    expect(weekSummary(1, [{ state: 'BOUGHT', isLate: true }])).toBe(
      '1 thing to order this week; 1 on the way, 1 late.',
    );
  });
});

describe('what became of a lot', () => {
  it('is said on the basis that is shown, with why it was lost and written off', () => {
    const of = stock({
      shelf: { ...none, cameIn: 1000, used: 200, writtenOff: 50 },
      takenOut: { ...none, lost: 10 },
      reasons: [
        { account: 'WRITTEN_OFF', why: 'wet', amount: 50 },
        { account: 'LOST', why: null, amount: 10 },
      ],
    });
    const words = (basis: 'dry' | 'received') => becameWords(of, basis).replace(/\s/g, ' ');
    expect(words('dry')).toBe('1000 g came in, 200 g used, 50 g written off (wet)');
    expect(words('received')).toBe('1100 g came in, 220 g used, 55 g written off (wet)');
    // What was lost later had been taken before, and is in what was used.
    expect(takenOutWords(of, 'dry')?.replace(/\s/g, ' ')).toBe('Of what was taken 10 g lost');
    expect(cell(0, of, 'dry')).toBe('');
  });
});
