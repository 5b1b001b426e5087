// The purchase programme's command as a person runs it: a file in, a plan as JSON out, one line on what is wrong.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { BadInput } from '../../api/bad-input.ts';
import { planOrdersOf } from '../../api/commands/plan-orders/input.ts';
import { lotSizing } from '../science/purchase/problems.ts';
import { command } from '../support/command.ts';

const folder = mkdtempSync(join(tmpdir(), 'plan-orders-'));
afterAll(() => rmSync(folder, { recursive: true }));

const input = lotSizing([90, 120, 80, 70], 500, 2);

function plan(value: unknown, ...words: string[]) {
  const file = join(folder, 'purchases.json');
  writeFileSync(file, JSON.stringify(value));
  return command('plan-orders', [file, ...words]);
}

describe('the plan-orders command', () => {
  it('plans, proves, and says why', async () => {
    const { code, stdout, stderr } = await plan(input);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    const order = { offer: 'bag', price: 0, reason: expect.stringMatching(/^Ordered a week later, .+\.$/) as unknown };
    expect(JSON.parse(stdout)).toEqual({
      status: 'optimal',
      cost: 1380,
      bound: 1380,
      gap: 0,
      gapControllable: 0,
      seconds: expect.any(Number) as unknown,
      costs: {
        goods: 0,
        fees: 1000,
        checks: 0,
        withoutOld: 0,
        holding: 380,
        waste: 0,
        shortage: 0,
        belowSafety: 0,
        uncovered: 0,
        overflow: 0,
        endValue: 0,
      },
      orders: [
        { ...order, orderWeek: 1, arriveWeek: 1, releaseWeek: 1, packs: 210 },
        { ...order, orderWeek: 3, arriveWeek: 3, releaseWeek: 3, packs: 150 },
      ],
      campaigns: [],
      lots: [
        { id: 'bag@1', lastUse: 2, waste: 0 },
        { id: 'bag@3', lastUse: 4, waste: 0 },
      ],
      nextLotBy: [{ item: 'silica', arriveBy: 1, releasedBy: 1 }],
      warnings: [],
    });
  });

  it('ends with 1 and one line that names the field', async () => {
    const { code, stdout, stderr } = await plan({ ...input, weeks: 0 });
    const line = 'invalid weeks: 0, expected a whole number of weeks, 1 to 104\n';
    expect({ code, stdout, stderr }).toEqual({ code: 1, stdout: '', stderr: line });
  });
});

describe('what the file says', () => {
  const refused = (value: unknown): string => {
    try {
      planOrdersOf(value);
    } catch (error) {
      if (error instanceof BadInput) return error.message;
      throw error;
    }
    return '';
  };
  const [item] = input.items;
  const [offer] = input.offers;
  const lot = { id: 'A', item: 'silica', quantity: 5, from: 1, lastWeek: null, status: 'accepted' };

  it.each([
    [{ ...input, currency: 'euro' }, 'invalid currency: "euro", expected three letters as in EUR'],
    [
      { ...input, items: [{ ...item, demand: [1, 2] }] },
      'invalid items[0].demand: [1,2], expected 4 figures, one for each week',
    ],
    [
      { ...input, items: [{ ...item, safety: 0.5 }] },
      'invalid items[0].safety: 0.5, expected whole base units, 0 or more',
    ],
    [{ ...input, items: [item, item] }, 'invalid items[1].id: "silica", expected a name that no other has'],
    [{ ...input, lots: [{ ...lot, item: 'clay' }] }, 'invalid lots[0].item: "clay", expected the id of an item'],
    [
      { ...input, lots: [{ ...lot, status: 'lost' }] },
      'unknown lots[0].status: "lost", expected one of accepted, in-check, rejected',
    ],
    [
      { ...input, offers: [{ ...offer, supplier: 'x' }] },
      'invalid offers[0].supplier: "x", expected the id of a supplier',
    ],
    [
      { ...input, offers: [{ ...offer, prices: [{ from: 2, price: 5 }] }] },
      'invalid offers[0].prices[0].from: 2, expected 1 for the first price',
    ],
    [
      { ...input, items: [{ ...item, endValueMicro: 1_000_000 }] },
      'invalid offers[0].prices[0].price: 0, expected a price above what the goods are worth at the end',
    ],
    [{ ...input, brand: 'x' }, 'unknown brand: "x", expected no such field here'],
  ])('%#: is refused with what would be right', (value, line) => {
    expect(refused(value)).toBe(line);
  });
});
