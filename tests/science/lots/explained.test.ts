// Is it the lot, the plate, the person or the air? Invented plates whose cause is known.
import { describe, expect, it } from 'vitest';
import { linearRegression, linearRegressionLine, rSquared } from 'simple-statistics';
import { explainedBy, type Explanation } from '../../../api/science/lots/explained.ts';
import { leastSquares } from '../../../api/science/lots/squares.ts';
import { amount } from '../../support/amount.ts';
import { normal } from '../support/normal.ts';

const numbers = (count: number, draw: () => number): number[] => Array.from({ length: count }, draw);
function found(values: readonly number[], explanations: readonly Explanation[]) {
  const explained = explainedBy(values, explanations);
  if (!explained) throw new Error('expected shares');
  return { ...explained, of: (name: string) => explained.each.find((one) => one.name === name) };
}

describe('what explains a retention', () => {
  const draw = normal(31);
  const water = numbers(40, () => 0.05 + 0.02 * draw());
  const lot = water.map((_, i) => (i % 2 === 0 ? 'F-117' : 'F-118'));
  const user = water.map((_, i) => ['AB', 'CD', 'EF'][Math.floor(i / 2) % 3] ?? '');
  const noise = numbers(40, () => 0.005 * draw());

  it('alone is what a line through the points explains', () => {
    const values = water.map((w, i) => 0.4 - 0.4 * w + (noise[i] ?? NaN));
    const points = water.map((w, i) => [w, values[i] ?? NaN]);
    const line = linearRegressionLine(linearRegression(points));
    const explained = found(values, [{ name: 'water', values: water }]);
    expect(explained.of('water')?.alone).toBeCloseTo(rSquared(points, line), 9);
  });

  it('is seen in the water when it is the water, and the lot and the user are little', () => {
    const values = water.map((w, i) => 0.4 - 1.5 * w + (noise[i] ?? NaN));
    const explained = found(values, [
      { name: 'water', values: water },
      { name: 'lot', values: lot },
      { name: 'user', values: user },
    ]);
    expect(explained.of('water')).toMatchObject({ told: 'seen', togetherWith: [] });
    expect(explained.of('water')?.share.value).toBeGreaterThan(0.8);
    expect(explained.of('lot')?.told).toBe('little');
    expect(explained.of('user')?.told).toBe('little');
    expect(explained.unexplained).toBeLessThan(0.1);
  });

  it('cannot be told when the humidity went with the water all along', () => {
    const values = water.map((w, i) => 0.4 - 1.5 * w + (noise[i] ?? NaN));
    const humidity = water.map((w) => 600 * w + 0.5 * draw());
    const explained = found(values, [
      { name: 'water', values: water },
      { name: 'humidity', values: humidity },
      { name: 'lot', values: lot },
    ]);
    expect(explained.of('humidity')).toMatchObject({ told: 'cannot tell', togetherWith: ['water'] });
    expect(explained.of('humidity')?.share.high).toBeGreaterThan(0.3);
    expect(explained.of('lot')?.told).toBe('little');
  });

  it('cannot be told when each lot had its own user', () => {
    const values = lot.map((name, i) => (name === 'F-117' ? 0.4 : 0.42) + (noise[i] ?? NaN));
    const own = lot.map((name) => (name === 'F-117' ? 'AB' : 'CD'));
    const explained = found(values, [
      { name: 'lot', values: lot },
      { name: 'user', values: own },
    ]);
    for (const [name, other] of [
      ['lot', 'user'],
      ['user', 'lot'],
    ] as const) {
      expect(explained.of(name)).toMatchObject({ told: 'cannot tell', togetherWith: [other], p: 1 });
      expect(explained.of(name)?.alone).toBeGreaterThan(0.5);
    }
    expect(explained.shared).toBeGreaterThan(0.5);
  });

  it('is not told of fewer than twenty plates, and is nothing of plates that ran the same', () => {
    const values = water.map((w) => 0.4 - 1.5 * w);
    const few = found(values.slice(0, 19), [{ name: 'lot', values: lot.slice(0, 19) }]);
    expect(few.of('lot')?.told).toBe('too few');
    expect(explainedBy([0.4, 0.4, 0.4], [{ name: 'lot', values: ['a', 'b', 'a'] }])).toBeNull();
    expect(explainedBy([0.4, 0.5, 0.6], [{ name: 'lot', values: ['a', 'b', 'c'] }])).toBeNull();
  });

  it('is said to be seen of pure chance in about one of twenty', () => {
    const runs = amount(150, 10_000);
    let seen = 0;
    for (let run = 0; run < runs; run++) {
      const explained = found(numbers(24, draw), [
        { name: 'lot', values: lot.slice(0, 24) },
        { name: 'water', values: water.slice(0, 24) },
      ]);
      seen += explained.each.filter(({ told }) => told === 'seen').length;
    }
    expect(Math.abs(seen / (2 * runs) - 0.05)).toBeLessThan(4 * Math.sqrt(0.0475 / runs));
  });
});

describe('the interval of a share', () => {
  it('holds the truth in about nine of ten, or more, also when water and humidity go half together', () => {
    const draw = normal(8);
    const water = numbers(36, draw);
    const humidity = water.map((w) => 0.7 * w + 0.7 * draw());
    const lot = water.map((_, i) => ['A', 'B', 'C'][i % 3] ?? '');
    const runs = amount(60, 5000);
    for (const slope of [0.5, 1]) {
      const middle = water.map((w, i) => slope * w + 0.5 * (i % 3));
      const variance = (values: readonly number[]): number => leastSquares(values, []).rest / values.length;
      const truth = (slope ** 2 * variance(water)) / (variance(middle) + 1);
      let held = 0;
      for (let run = 0; run < runs; run++) {
        const explained = found(
          middle.map((value) => value + draw()),
          [
            { name: 'water', values: water },
            { name: 'humidity', values: humidity },
            { name: 'lot', values: lot },
          ],
        );
        const { low = NaN, high = NaN } = explained.of('water')?.share ?? {};
        if (low <= truth && truth <= high) held += 1;
      }
      expect(held / runs).toBeGreaterThan(0.88 - 4 * Math.sqrt(0.09 / runs));
    }
  });
});

describe('least squares', () => {
  it('counts a column that the others already are as nothing, also with large numbers', () => {
    const one = numbers(10, normal(3));
    const other = one.map((x) => 1e6 + 3 * x);
    expect(leastSquares(one, [one, other])).toEqual({ rest: 0, rank: 2 });
    expect(leastSquares(one, []).rank).toBe(1);
  });
});
