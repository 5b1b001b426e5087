// Lot checks, daily checks and grades on screen: what is typed, what is said, where it stands in a picture.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axisOf, platesOf } from '../../admin/compare/picture.ts';
import { checkIn, compoundsIn, emptyCheck, firstOf, nextRow, type CheckTyped } from '../../admin/compare/form.ts';
import type { OfSorbent } from '../../admin/compare/questions.ts';
import { scatterOf } from '../../admin/explain/scatter.ts';
import type { Point } from '../../admin/explain/questions.ts';
import { gradesIn, gradesText } from '../../admin/grade/form.ts';
import { readTwo, usualOf, type Two } from '../../admin/spot/form.ts';
import { pictureOf } from '../../admin/spot/picture.ts';
import type { Chart, Daily } from '../../admin/spot/questions.ts';
import { insideWords } from '../../admin/spot/words.ts';

const lot = (lotNumber: string, receivedAt: string, standing: OfSorbent['lots'][number]['standing']) => ({
  ...{ lotNumber, receivedAt, standing },
  standingWords: '',
});

describe('a new check', () => {
  const glass: OfSorbent = {
    name: 'Glass plates',
    lots: [
      lot('P-067', '2026-03-01T00:00:00Z', 'UNCHECKED'),
      lot('P-066', '2026-02-01T00:00:00Z', 'REJECTED'),
      lot('P-065', '2026-01-01T00:00:00Z', 'FIRST'),
    ],
  };
  const foil: OfSorbent = { name: 'Foil', lots: [lot('Q-1', '2026-01-01T00:00:00Z', 'FIRST')] };

  it('begins with the lot nobody has checked, against the last one that was not rejected', () => {
    expect(firstOf([foil, glass])).toEqual({ sorbent: 'Glass plates', oldLot: 'P-065', newLot: 'P-067' });
    expect(firstOf([foil])).toEqual({ sorbent: '', oldLot: '', newLot: '' });
  });

  it('goes on in pairs, old and new of one tank', () => {
    let rows = emptyCheck.rows;
    for (let i = 0; i < 2; i++) rows = [...rows, nextRow(rows)];
    expect(rows.map(({ lot: of, tank }) => `${of} ${tank}`)).toEqual([
      'old 1',
      'new 1',
      'old 2',
      'new 2',
      'old 3',
      'new 3',
      'old 4',
      'new 4',
    ]);
  });

  const typed = (more: Partial<CheckTyped>): CheckTyped => ({
    ...emptyCheck,
    ...{ sorbent: 'Glass plates', oldLot: 'P-065', newLot: 'P-067', compounds: 'Sudan red, Sudan yellow' },
    ...more,
  });
  const rows = (...values: string[][]): CheckTyped['rows'] =>
    values.map((each, i) => ({ lot: i % 2 ? 'new' : 'old', tank: '1', values: each }));

  it('takes the plates with something on them, with decimal commas too', () => {
    const read = checkIn(typed({ rows: rows(['0.42', '0,61'], ['0.43', ''], ['', '']) }), [], () => null, null);
    expect(read.wrong).toEqual({});
    expect(read.input['runs']).toEqual([
      {
        ...{ lotNumber: 'old', tank: '1' },
        spots: [
          { compound: 'Sudan red', value: 0.42 },
          { compound: 'Sudan yellow', value: 0.61 },
        ],
      },
      { lotNumber: 'new', tank: '1', spots: [{ compound: 'Sudan red', value: 0.43 }] },
    ]);
  });

  it('says beside the cell that an Rf lies from 0 to 1, and lets a column’s value exceed 1', () => {
    const wrong = (retention: string) => checkIn(typed({ retention, rows: rows(['1.4']) }), [], () => null, null).wrong;
    expect(wrong('RF')).toEqual({ '0.0': 'an Rf from 0 to 1' });
    expect(wrong('COLUMN_VOLUMES')).toEqual({});
    expect(Object.keys(checkIn(typed({ compounds: ' , ' }), [], () => null, null).wrong)).toContain('compounds');
    expect(compoundsIn('Sudan red; Sudan red, caffeine')).toEqual(['Sudan red', 'caffeine']);
  });
});

describe('the daily check', () => {
  const run: Daily['dailyChecks'][number] = {
    ...{ id: '1', at: '2026-03-01T08:00:00Z', sorbent: { name: 'Glass' }, lot: { lotNumber: 'P-066' } },
    ...{ container: { label: 'AAA' }, ranBy: null, humidityPercent: null, waterFraction: null, check: null },
    spots: [
      { compound: 'Sudan red', value: 0.4 },
      { compound: 'Sudan yellow', value: 0.6 },
    ],
  };
  const box = (label: string, name: string) => ({ label, sorbent: { name }, lot: { lotNumber: 'P' } });

  it('opens as it was run last, and when that box is gone on one of its kind', () => {
    const daily = (boxes: ReturnType<typeof box>[]): Daily => ({
      ...{ dailyChecks: [run], referenceCompounds: [], boxes: { nodes: boxes } },
    });
    expect(usualOf(daily([box('BBB', 'Foil'), box('AAA', 'Glass')]))).toMatchObject({
      ...{ label: 'AAA', first: 'Sudan red', second: 'Sudan yellow' },
    });
    expect(usualOf(daily([box('BBB', 'Foil'), box('CCC', 'Glass')])).label).toBe('CCC');
    expect(usualOf({ dailyChecks: [], referenceCompounds: [], boxes: { nodes: [] } }).label).toBe('');
  });

  it('is two numbers from 0 to 1, or one', () => {
    const two = (firstRf: string, secondRf: string): Two => ({
      ...{ label: 'AAA', first: 'Sudan red', second: 'Sudan yellow', firstRf, secondRf },
    });
    expect(readTwo(two('0.42', '0,61')).input.spots.map(({ value }) => value)).toEqual([0.42, 0.61]);
    expect(readTwo(two('0.42', '')).wrong).toEqual({});
    expect(readTwo(two('42', '0.6')).wrong).toEqual({ firstRf: 'an Rf from 0 to 1, such as 0.42' });
    expect(readTwo(two('', '')).wrong).toEqual({ firstRf: 'the Rf, 0 to 1' });
  });

  it('answers where a value lies, once there are enough to say', () => {
    const values = { low: 0.38, centre: 0.42, high: 0.46 };
    const points = Array.from({ length: 9 }, () => ({ isAverageOutside: false })) as Chart['points'];
    const chart = { values, points, tooFewForLimits: false, fewestForLimits: 9 };
    expect(insideWords('Sudan red', 0.41, chart)).toBe('Sudan red lies inside 0.38 to 0.46.');
    expect(insideWords('Sudan red', 0.5, chart)).toMatch(/higher than usual: outside 0.38 to 0.46/);
    const few = { ...chart, points: points.slice(0, 3), tooFewForLimits: true };
    expect(insideWords('Sudan red', 0.5, few)).toBe('Sudan red: 3 so far; limits follow from 9 on.');
  });
});

describe('pictures', () => {
  const limits = { low: 0.38, centre: 0.42, high: 0.46 };
  const chartOf = (values: readonly number[]): Chart => ({
    ...{ sentence: '', restsOn: values.length, values: limits, ranges: null, averages: null },
    ...{ tooFewForLimits: false, fewestForLimits: 9 },
    lots: [{ lot: { lotNumber: 'P-066' }, from: 0, to: values.length - 1 }],
    points: values.map((value) => ({
      ...{ value, range: null, average: value, isValueOutside: false, isRangeOutside: false, isAverageOutside: false },
      run: {} as Chart['points'][number]['run'],
    })),
  });

  it('of a chart keep every point inside, higher values higher, in their order', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 60 }), (values) => {
        const [panel] = pictureOf(chartOf(values), 330).panels;
        const points = panel?.points ?? [];
        for (const [i, { x, y }] of points.entries()) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(330);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y).toBeLessThanOrEqual(panel?.height ?? 0);
          const before = points[i - 1];
          if (!before) continue;
          expect(x).toBeGreaterThan(before.x);
          if ((values[i] ?? 0) > (values[i - 1] ?? 0)) expect(y).toBeLessThanOrEqual(before.y);
        }
      }),
    );
  });

  it('of a verdict put the margin even about nought and each interval about its difference', () => {
    const quantities = [
      { difference: 0.005, low: -0.01, high: 0.02 },
      { difference: 0.4, low: 0.3, high: 0.5 },
    ];
    const axis = axisOf(quantities, 0.03);
    expect(axis.margin.from + axis.margin.to).toBeCloseTo(100, 9);
    const [near, far] = quantities.map((one) => axis.place(one));
    expect(near?.from).toBeLessThan(near?.at ?? 0);
    expect(near?.to).toBeGreaterThan(near?.at ?? 100);
    expect(near?.isCut).toBe(false);
    expect(far).toMatchObject({ isCut: true, to: 100 });
    expect(axis.place({ difference: null, low: null, high: null })).toBeNull();
    const values = [0.4, 0.42].map((value) => ({ value, isNew: false }));
    expect(platesOf({ values }).map(({ at }) => at)).toEqual([8, 92]);
    const alike = [0.4, 0.4, 0.42].map((value) => ({ value, isNew: false }));
    expect(new Set(platesOf({ values: alike }).map(({ at }) => at)).size).toBe(3);
  });

  it('of values against names or figures say in words what they show', () => {
    const point = (value: number, lotNumber: string, waterFraction: number | null): Point => ({
      value,
      run: {
        ...{ id: `${value}`, at: '', lot: { lotNumber }, ranBy: null, waterFraction },
        ...{ humidityPercent: null, hoursPrepared: null, regime: null },
      },
    });
    const points = [point(0.4, 'A', 0.02), point(0.42, 'A', 0.03), point(0.5, 'B', 0.04)];
    expect(scatterOf(points, 'lot')?.words).toBe('Mean by lot: A 0.41, B 0.50.');
    expect(scatterOf(points, 'water')?.words).toBe('3 values against water at use from 2.0 % to 4.0 %.');
    expect(scatterOf(points, 'humidity')).toBeNull();
    expect(scatterOf(points, 'user')).toBeNull();
  });
});

describe('a table of grades as a line of text', () => {
  it('comes back as it was', () => {
    const grade = fc.record({
      grade: fc.constantFrom('I', 'II', 'III', 'IV', 'V'),
      waterOfTotal: fc.integer({ min: 0, max: 900 }).map((permille) => permille / 1000),
    });
    fc.assert(
      fc.property(fc.array(grade, { minLength: 2, maxLength: 6 }), (grades) => {
        expect(gradesIn(gradesText({ grades }))).toEqual(grades);
      }),
    );
    expect(gradesIn('I 0, II 3 %, III 6')).toHaveLength(3);
    expect(gradesIn('I, II 3')).toBeNull();
    expect(gradesIn('I 0')).toBeNull();
  });
});
