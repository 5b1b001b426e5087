// Variance components against SciPy's dense likelihood and against the mean squares of balanced data.
import { describe, expect, it } from 'vitest';
import reference from '../../../fixtures/reference/statistics.json' with { type: 'json' };
import { componentsOf } from '../../../api/science/lots/components.ts';
import { oneWay } from '../../../api/science/lots/one-way.ts';
import { fewestForShares, spreadOf, type Spot } from '../../../api/science/lots/spread.ts';
import { amount } from '../../support/amount.ts';
import { normal } from '../support/normal.ts';

function found(values: readonly number[], factors: readonly (readonly number[])[]) {
  const components = componentsOf({ values, factors });
  if (!components) throw new Error('expected components');
  return components;
}

/** Names to places, in the order in which they appear. */
const counted = (names: readonly number[]): number[] => {
  const levels = [...new Set(names)];
  return names.map((name) => levels.indexOf(name));
};

interface Shelf {
  boxes: number;
  plates: number;
  spots: number;
  /** Standard deviations. */
  ofBox: number;
  ofPlate: number;
  ofSpot: number;
}

function shelf({ boxes, plates, spots, ofBox, ofPlate, ofSpot }: Shelf, draw: () => number): Spot[] {
  return Array.from({ length: boxes }, (_, box) => {
    const shift = ofBox * draw();
    return Array.from({ length: plates }, (__, plate) => {
      const own = ofPlate * draw();
      return Array.from({ length: spots }, () => ({
        value: 0.4 + shift + own + ofSpot * draw(),
        of: { box: `B${box}`, plate: `P${box}-${plate}`, user: (box + plate) % 2 === 0 ? 'AB' : 'CD', lot: 'F-118' },
      }));
    }).flat();
  }).flat();
}

describe('variance components', () => {
  it('of unbalanced nested and of crossed data have the likelihood and the variances of SciPy', () => {
    for (const { value, factors, deviance, variances } of reference.mixed) {
      const components = found(value, factors.map(counted));
      expect(components.deviance).toBeCloseTo(deviance, 8);
      for (const [i, { sd }] of [...components.factors, components.rest].entries()) {
        expect(Math.abs(sd.value ** 2 / (variances[i] ?? NaN) - 1)).toBeLessThan(1e-5);
      }
    }
  });

  it('of balanced data are those of the mean squares, nested twice over', () => {
    const size = { boxes: 5, plates: 4, spots: 3 };
    const spots = shelf({ ...size, ofBox: 0.02, ofPlate: 0.015, ofSpot: 0.006 }, normal(2));
    const values = spots.map(({ value }) => value);
    const box = values.map((_, i) => Math.floor(i / (size.plates * size.spots)));
    const plate = values.map((_, i) => Math.floor(i / size.spots));
    const { factors, rest } = found(values, [box, plate]);
    // Mean squares by hand: plates within each box, boxes over all.
    const boxes = Array.from({ length: size.boxes }, (_, b) => values.filter((__, i) => box[i] === b));
    const inBox = boxes.map((of) =>
      oneWay(Array.from({ length: size.plates }, (_, p) => of.slice(p * size.spots, (p + 1) * size.spots))),
    );
    const mean = (numbers: readonly number[]): number => numbers.reduce((sum, x) => sum + x, 0) / numbers.length;
    const within = mean(inBox.map((one) => one?.squareWithin ?? NaN));
    const plates = mean(inBox.map((one) => one?.squareBetween ?? NaN));
    const between = oneWay(boxes)?.squareBetween ?? NaN;
    expect(rest.sd.value ** 2 / within).toBeCloseTo(1, 5);
    expect(((factors[1]?.sd.value ?? NaN) ** 2 * size.spots) / (plates - within)).toBeCloseTo(1, 5);
    expect(((factors[0]?.sd.value ?? NaN) ** 2 * size.spots * size.plates) / (between - plates)).toBeCloseTo(1, 5);
  });

  it('grow with the unit, and their shares do not', () => {
    const spots = shelf({ boxes: 3, plates: 4, spots: 2, ofBox: 0.02, ofPlate: 0.01, ofSpot: 0.005 }, normal(4));
    const values = spots.map(({ value }) => value);
    const factor = values.map((_, i) => i >> 1);
    const one = found(values, [factor]);
    const percent = found(
      values.map((value) => 100 * value + 7),
      [factor],
    );
    expect(percent.rest.sd.high / one.rest.sd.high).toBeCloseTo(100, 3);
    expect(percent.factors[0]?.share.value).toBeCloseTo(one.factors[0]?.share.value ?? NaN, 5);
    expect(percent.factors[0]?.share.low).toBeCloseTo(one.factors[0]?.share.low ?? NaN, 4);
  });

  it('hold the truth in about nine of ten intervals', () => {
    const draw = normal(9);
    const runs = amount(16, 600);
    const size = { boxes: 6, plates: 3, spots: 2, ofBox: 0.02, ofPlate: 0.02, ofSpot: 0.01 };
    const held = [0, 0, 0, 0];
    for (let run = 0; run < runs; run++) {
      const values = shelf(size, draw).map(({ value }) => value);
      const { factors, rest } = found(values, [values.map((_, i) => Math.floor(i / 6)), values.map((_, i) => i >> 1)]);
      const [box, plate] = factors;
      const told = [
        [box?.sd, 0.02],
        [plate?.sd, 0.02],
        [rest.sd, 0.01],
        [box?.share, 4 / 9],
      ] as const;
      for (const [i, [estimate, truth]] of told.entries()) {
        if (estimate && estimate.low <= truth && truth <= estimate.high) held[i] = (held[i] ?? 0) + 1;
      }
    }
    const allowed = 0.05 + 4 * Math.sqrt(0.09 / runs);
    for (const count of held) expect(Math.abs(count / runs - 0.9)).toBeLessThan(allowed);
  });
});

describe('the spread of a retention', () => {
  const factors = ['user', 'lot', 'box', 'plate'];
  const told = (spots: readonly Spot[]) =>
    Object.fromEntries((spreadOf(spots, factors)?.sources ?? []).map((source) => [source.factor, source]));

  it('says what lies in the plates, relative to the mean, and what it cannot tell of two users', () => {
    const sources = told(shelf({ boxes: 4, plates: 6, spots: 2, ofBox: 0, ofPlate: 0.02, ofSpot: 0.004 }, normal(12)));
    expect(sources['plate']).toMatchObject({ told: 'seen' });
    expect(sources['plate']?.share?.value).toBeGreaterThan(0.8);
    expect(sources['plate']?.relative?.value).toBeCloseTo((sources['plate']?.sd?.value ?? NaN) / 0.4, 2);
    expect(sources['user']?.told).toBe('cannot tell');
    expect(sources['lot']).toMatchObject({ told: 'one level', sd: null });
  });

  it('shows no shares below twenty plates', () => {
    const sources = told(shelf({ boxes: 3, plates: 6, spots: 2, ofBox: 0, ofPlate: 0.02, ofSpot: 0.004 }, normal(12)));
    expect(3 * 6).toBeLessThan(fewestForShares);
    expect(sources['plate']).toMatchObject({ told: 'too few', share: null });
    expect(sources['plate']?.sd?.value).toBeGreaterThan(0);
  });

  it('does not part what the plates never parted', () => {
    const single = shelf({ boxes: 4, plates: 6, spots: 1, ofBox: 0.01, ofPlate: 0.02, ofSpot: 0.004 }, normal(12));
    expect(told(single)['plate']).toMatchObject({ told: 'same as another', sameAs: 'within plate' });
    const ownBox = single.map(({ value, of }) => ({ value, of: { ...of, user: of['box'] ?? '' } }));
    expect(told(ownBox)['box']).toMatchObject({ told: 'same as another', sameAs: 'user' });
  });

  it('is not told of plates that all ran the same, or of two spots', () => {
    const same = shelf({ boxes: 4, plates: 6, spots: 2, ofBox: 0, ofPlate: 0, ofSpot: 0 }, normal(12));
    expect(spreadOf(same, factors)).toBeNull();
    expect(spreadOf(same.slice(0, 2), factors)).toBeNull();
  });
});
