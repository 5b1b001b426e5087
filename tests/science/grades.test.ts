// Activity grades: water to reach one, and how dyes show one.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gradeOfColumn, gradeOfPlate } from '../../api/science/grade-observed.ts';
import { gradeTables } from '../../api/science/grade-tables.ts';
import { deactivationCautions, waterToAddG } from '../../api/science/grade-water.ts';
import { gradeOf } from '../../api/science/grades.ts';

describe('water for a grade', () => {
  // Recomputed: m (w − w₀)/(1 − w).
  it.each([
    [100, 0, 0.03, 3.093],
    [100, 0, 0.06, 6.383],
    [100, 0, 0.1, 11.111],
    [100, 0, 0.15, 17.647],
    [500, 0.012, 0.06, 25.53],
  ])('%d g at %d of water need, for %d, %d g', (grams, now, wanted, water) => {
    expect(waterToAddG(grams, now, wanted)).toBeCloseTo(water, 2);
  });

  it('is none for a batch that is wetter already', () => {
    expect(waterToAddG(100, 0.08, 0.06)).toBeNull();
    expect(waterToAddG(100, 0.06, 0.06)).toBe(0);
  });

  it('brings any batch to the grade it was reckoned for, by the table it was taken from', () => {
    const batch = fc.record({
      table: fc.constantFrom(...gradeTables),
      grams: fc.double({ min: 1, max: 5000, noNaN: true }),
      now: fc.double({ min: 0, max: 0.4, noNaN: true }),
    });
    fc.assert(
      fc.property(batch, ({ table, grams, now }) => {
        for (const { grade, waterOfTotal } of table.grades) {
          const water = waterToAddG(grams, now, waterOfTotal);
          if (water === null) continue;
          const wet = grams * now + water;
          expect(gradeOf(table.grades, wet / (grams + water - wet))).toBe(grade);
        }
      }),
    );
    expect(deactivationCautions.join(' ')).toMatch(/shake.*stand/i);
  });

  it('rises from grade to grade in every table, each with its source', () => {
    for (const { grades, source } of gradeTables) {
      expect(grades.map(({ grade }) => grade)).toEqual(['I', 'II', 'III', 'IV', 'V']);
      expect(grades.every(({ waterOfTotal }, i) => i === 0 || waterOfTotal > (grades[i - 1]?.waterOfTotal ?? 1))).toBe(
        true,
      );
      expect(source).not.toBe('');
    }
  });
});

describe('a grade by dyes', () => {
  it('is read from a column of two', () => {
    expect(gradeOfColumn({ upper: 'p-methoxyazobenzene', lower: null, eluate: 'azobenzene' })).toBe('II');
    expect(gradeOfColumn({ upper: 'Sudan red', lower: 'Sudan yellow', eluate: null })).toBe('III');
    expect(gradeOfColumn({ upper: 'p-hydroxyazobenzene', lower: 'p-aminoazobenzene', eluate: null })).toBe('V');
    expect(gradeOfColumn({ upper: 'azobenzene', lower: 'Sudan red', eluate: null })).toBeNull();
  });

  it('is read from a plate, also when spots are a little off', () => {
    expect(gradeOfPlate({ azobenzene: 0.59, 'p-methoxyazobenzene': 0.16, 'Sudan yellow': 0.01 })).toBe('II');
    expect(gradeOfPlate({ azobenzene: 0.72, 'Sudan yellow': 0.28 })).toBe('III');
    expect(gradeOfPlate({ 'Sudan red': 0.35, 'p-aminoazobenzene': 0.07 })).toBe('IV');
    expect(gradeOfPlate({ azobenzene: 0.97 })).toBe('V');
    expect(gradeOfPlate({ 'p-hydroxyazobenzene': 0.1 })).toBeNull();
    expect(gradeOfPlate({})).toBeNull();
  });
});
