// The demand command as a person runs it: a table in, JSON out, one line with line and column on what is wrong.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { BadInput } from '../../api/bad-input.ts';
import { askedOf } from '../../api/commands/demand/options.ts';
import { historiesOf } from '../../api/commands/demand/table.ts';
import { command } from '../support/command.ts';

const folder = mkdtempSync(join(tmpdir(), 'demand-'));
afterAll(() => rmSync(folder, { recursive: true }));

const file = (text: string): string => {
  const path = join(folder, 'use.csv');
  writeFileSync(path, text);
  return path;
};

function refused(work: () => unknown): string {
  try {
    work();
  } catch (error) {
    if (error instanceof BadInput) return error.message;
    throw error;
  }
  return 'not refused';
}

describe('the demand command', () => {
  it('counts weeks left out as nothing used and prints what the whole table foretells', async () => {
    const sparse =
      'item,week,quantity\nplates,3,3\nplates,1,0\nplates,7,2\nplates,9,5\nplates,12,1\nplates,14,4\nplates,16,0\n';
    const { code, stdout, stderr } = await command('demand', [file(`${sparse}silica,1,200\n`), '--lead', '3']);
    expect([code, stderr]).toEqual([0, '']);
    expect(JSON.parse(stdout)).toEqual([
      {
        item: 'plates',
        weeks: 16,
        method: 'croston-sb',
        rate: expect.closeTo(0.988501, 6),
        z: expect.closeTo(3.0091, 9),
        x: expect.closeTo(2.8919, 9),
        level: expect.closeTo(0.918065, 6),
        mse: { 'croston-sb': expect.closeTo(3.395317, 6), smoothing: expect.closeTo(4.603311, 6) },
        origins: 6,
        variance: expect.closeTo(2.729167, 6),
        leadTime: {
          mean: expect.closeTo(2.965502, 6),
          variance: expect.closeTo(9.480263, 6),
          family: 'negative-binomial',
          r: expect.closeTo(1.349889, 6),
          p: expect.closeTo(0.312808, 6),
        },
        quantiles: { '0.5': 2, '0.9': 7, '0.95': 9, '0.99': 14 },
      },
      expect.objectContaining({
        item: 'silica',
        weeks: 1,
        method: 'too-little-history',
        quantiles: null,
        asks: 'a weekly figure, until there are 8 weeks',
      }),
    ]);
  });

  it('ends with 1 and one line on standard error', async () => {
    const ended = await command('demand', [file('item,week,quantity\nplates,1,3\nplates,2,few\n')]);
    expect(ended).toEqual({
      code: 1,
      stdout: '',
      stderr: 'invalid quantity: few, expected a number of 0 or more with a decimal point (line 3, column 3)\n',
    });
  });
});

describe('a table of weekly use', () => {
  it('may have its columns in any order, weeks of the calendar, quotes, semicolons and empty lines', () => {
    expect(
      historiesOf('\uFEFFQuantity;Week;Item\r\n\r\n2.5;2026-W52;"silica; 60"\r\n1;2027-W01;"silica; 60"\r\n'),
    ).toEqual([
      // 2026 has a week 53 (ISO 8601).
      { item: 'silica; 60', weeks: [2.5, 0, 1] },
    ]);
  });

  it('says what is wrong, in which line and column', () => {
    const wrong: [string, string][] = [
      ['', 'missing item, expected a heading: item,week,quantity (line 1)'],
      ['item,week\n', 'missing quantity, expected a column of that name (line 1, column 3)'],
      [
        'item,week,quantity,lot\n',
        'unknown column: lot, expected item, week and quantity, each once (line 1, column 4)',
      ],
      ['item,item,quantity\n', 'unknown column: item, expected item, week and quantity, each once (line 1, column 2)'],
      ['item,week,quantity\n', 'missing item, expected at least one row below the heading (line 2)'],
      ['item,week,quantity\n,1,2', 'missing item, expected the name of an item (line 2, column 1)'],
      [
        'item,week,quantity\nA,1,',
        'missing quantity, expected a number of 0 or more with a decimal point (line 2, column 3)',
      ],
      [
        'item,week,quantity\n\nA,1,-2',
        'invalid quantity: -2, expected a number of 0 or more with a decimal point (line 3, column 3)',
      ],
      ['item,week,quantity\nA,1,2,3', 'unknown cell: 3, expected 3 columns as in the heading (line 2, column 4)'],
      [
        'item,week,quantity\nA,2026-W54,1',
        'invalid week: 2026-W54, expected a whole number or a week such as 2026-W07 (line 2, column 2)',
      ],
      [
        'item,week,quantity\nA,2025-W53,1',
        'invalid week: 2025-W53, expected a whole number or a week such as 2026-W07 (line 2, column 2)',
      ],
      ['item,week,quantity\nA,1,2\nA,1,3', 'invalid week: 1, expected each week of A once (line 3, column 2)'],
      [
        'item,week,quantity\nA,1,2\nA,2026-W03,3',
        'invalid week: 2026-W03, expected weeks of A within 1040 of each other (line 3, column 2)',
      ],
      [
        'item,week,quantity\n"A,1,2\n',
        'invalid FILE: a quote that does not end or stands amid a cell, expected a table (line 2, column 1)',
      ],
    ];
    for (const [text, message] of wrong) expect(refused(() => historiesOf(text))).toBe(message);
  });
});

describe('the lead time', () => {
  it('is whole weeks, or weeks with their chances, or one week when nothing is said', () => {
    expect(askedOf(['use.csv']).lead).toEqual([{ weeks: 1, chance: 1 }]);
    expect(askedOf(['use.csv', '--lead', '3']).lead).toEqual([{ weeks: 3, chance: 1 }]);
    expect(askedOf(['--lead=2:.25,3:0.5,4:.25', 'use.csv']).lead.map(({ chance }) => chance)).toEqual([
      0.25, 0.5, 0.25,
    ]);
  });

  it('is refused when it cannot be', () => {
    expect(refused(() => askedOf([]))).toMatch(/^missing FILE.csv, /);
    expect(refused(() => askedOf(['use.csv', 'more']))).toMatch(/^unknown argument: more, /);
    expect(refused(() => askedOf(['use.csv', '--lag', '3']))).toBe('unknown option: --lag, expected --lead');
    expect(refused(() => askedOf(['use.csv', '--lead']))).toMatch(/^missing --lead, expected weeks/);
    expect(refused(() => askedOf(['use.csv', '--lead', '0']))).toBe('invalid --lead: 0, expected 1 to 520 weeks');
    expect(refused(() => askedOf(['use.csv', '--lead', '2.5']))).toMatch(/^invalid --lead: 2.5, expected whole weeks/);
    expect(refused(() => askedOf(['use.csv', '--lead', '2:0.3,3:0.3']))).toBe(
      'invalid --lead: 2:0.3,3:0.3, expected chances that add up to 1, not 0.6',
    );
  });
});
