// Bands, numbers and lots as the page of sorbents says and reads them.
import { describe, expect, it } from 'vitest';
import { emptyOf, readFields } from '../../admin/act/field.ts';
import { bandBefore, bandFields, bandInput, bandTyped, bandWords, changeWords } from '../../admin/describe/band.ts';
import { curveWords, drawn } from '../../admin/describe/curve.ts';
import { lotInput, lotTyped } from '../../admin/describe/lots.ts';
import { numberWords } from '../../admin/describe/numbers.ts';
import { placeOf, pointFields, readRows } from '../../admin/describe/weighed.ts';

const none = {
  targetPolicy: 'DRY' as const,
  targetUpperWaterFraction: null,
  targetLowerWaterFraction: null,
  targetBandWaterFraction: null,
};
const plain = (words: string): string => words.replaceAll('\u00a0', ' ');

describe('a target band in words', () => {
  it('is said as received first; the basis always stands beside it', () => {
    // 5 % of the dry sorbent is 5 in 105 of the whole: 4.8 %.
    const of = { ...none, targetUpperWaterFraction: 0.05 };
    expect(plain(bandWords(of, null, 'AS_RECEIVED'))).toBe('kept dry: at most 4.8 % water, as received');
    expect(plain(bandWords(of, null, 'DRY'))).toBe('kept dry: at most 5.0 % water, dry basis');
  });
  it('says when an invented default decides', () => {
    expect(bandWords(none, 0.05, 'DRY')).toMatch(/the default of its class$/);
    expect(bandWords({ ...none, targetPolicy: 'AS_RECEIVED' }, 0.05, 'DRY')).toMatch(/an invented default$/);
  });
  it('what is typed for a band that is there gives the same band back', () => {
    const dry = (of: Parameters<typeof bandTyped>[0]) => {
      const fields = bandFields([{ grade: 'II', waterAsReceivedFraction: 0.03 }], 0.03);
      const read = readFields(fields, { ...emptyOf(fields), ...bandTyped(of) }, () => null);
      expect(read.wrong).toEqual({});
      return bandInput(read.values);
    };
    const kept = dry({ ...none, targetUpperWaterFraction: 1 / 19 });
    expect(kept).toMatchObject({ policy: 'DRY', basis: 'AS_RECEIVED', grade: null });
    expect(kept.upperWaterFraction).toBeCloseTo(0.05, 5);
    expect(dry({ ...none, targetPolicy: 'AS_RECEIVED', targetBandWaterFraction: 0.004 })).toEqual({
      policy: 'AS_RECEIVED',
      bandWaterFraction: 0.004,
    });
    const set = dry({
      ...none,
      targetPolicy: 'SET',
      targetUpperWaterFraction: 0.07 / 0.93,
      targetLowerWaterFraction: 0.05 / 0.95,
    });
    expect(set.valueWaterFraction).toBeCloseTo(0.06, 5);
    expect(set.bandWaterFraction).toBeCloseTo(0.01, 5);
  });
  it('undo tells the ends as they were stored, to the last digit', () => {
    expect(bandBefore({ ...none, targetUpperWaterFraction: 0.0123456789 })).toEqual({
      policy: 'DRY',
      upperWaterFraction: 0.0123456789,
      basis: 'DRY',
    });
    expect(bandBefore({ ...none, targetPolicy: null })).toEqual({ policy: null });
  });
  it('what would follow is counted by what one then has to do', () => {
    expect(changeWords(12, [{ after: 'REDRY' }, { after: 'REDRY' }, { after: 'GOOD' }])).toBe(
      'With this, 3 of 12 in use change their answer: 2 to “redry first”, 1 to “good to use”.',
    );
    expect(changeWords(1, [{ after: 'REDRY' }])).toBe(
      'With this, 1 of 1 in use changes its answer: 1 to “redry first”.',
    );
    expect(changeWords(4, [])).toBe('With this, none of 4 containers in use changes its answer.');
    expect(changeWords(0, [])).toBe('Nothing in use goes by it now.');
  });
});

describe('a number of a sorbent', () => {
  it('a doubt is said as a share or a factor', () => {
    const doubt = (value: number) =>
      plain(
        numberWords({ name: 'capacityDoubt', value, unit: '1', origin: 'TABLE', confidence: 'DERIVED', source: '' }),
      );
    expect(doubt(Math.log(1.3))).toBe('give or take 30 %');
    expect(doubt(Math.LN2)).toBe('within a factor of 2.0');
  });
});

describe('a lot put right', () => {
  const lot = {
    id: '1',
    lotNumber: 'F-1',
    standingWords: '',
    receivedAt: '2026-03-02T10:00:00Z',
    retestOn: null,
    supplier: { name: 'Marlpit Chemicals' },
    certificateWaterFraction: 0.0333333333,
    certificateMaxWaterFraction: null,
    note: null,
    dryGrams: 10,
    ...none,
    targetPolicy: null,
  };
  it('tells only what was changed: water that nobody touched keeps all its digits', () => {
    const typed = lotTyped(lot, (at) => at);
    expect(typed['certificateWaterPercent']).toBe('3.226');
    const values = {
      newLotNumber: 'F-1',
      supplier: 'Marlpit Chemicals',
      certificateWaterPercent: 3.226,
      certificateMaxWaterPercent: null,
      retestOn: null,
      note: 'x',
    };
    expect(lotInput(lot, values)).toEqual({
      lotNumber: 'F-1',
      supplier: 'Marlpit Chemicals',
      retestOn: null,
      note: 'x',
    });
    expect(lotInput(lot, { ...values, certificateWaterPercent: 3.3, newLotNumber: 'F-2' })).toMatchObject({
      newLotNumber: 'F-2',
      certificateWaterPercent: 3.3,
    });
  });
});

describe('weighed samples', () => {
  const row = { ...emptyOf(pointFields([])), salt: 'magnesium chloride', beforeGrams: '10,55', afterGrams: '10' };
  it('are read as the API takes them, decimal comma and all', () => {
    const { input } = readRows({ rows: [row, { ...row, way: 'dry', dry: '5.5' }], fromClass: '', by: 'stores' }, 'Gel');
    expect(input).toMatchObject({ sorbent: 'Gel', fromClass: null, by: 'stores' });
    expect(input?.points[0]).toMatchObject({
      salt: 'magnesium chloride',
      temperatureC: 22,
      beforeGrams: 10.55,
      afterGrams: 10,
      driedAtC: 150,
    });
    expect(input?.points[1]).toMatchObject({ waterFraction: 0.055, basis: 'DRY' });
  });
  it('what is missing is said at its row, and what is refused finds its field', () => {
    const { input, wrong } = readRows({ rows: [row, { ...row, afterGrams: '' }], fromClass: '', by: '' }, 'Gel');
    expect(input).toBeNull();
    expect(wrong).toEqual([{}, { afterGrams: 'After drying: still empty' }]);
    expect(placeOf('input.points.1.afterGrams', [row, row])).toEqual({ row: 1, field: 'afterGrams' });
    expect(placeOf('input.points.0.waterFraction', [{ ...row, way: 'received' }])).toEqual({
      row: 0,
      field: 'received',
    });
    expect(placeOf('input.fromClass', [row])).toBeNull();
  });
});

describe('a fitted curve', () => {
  const curve = Array.from({ length: 46 }, (_, i) => {
    const waterFraction = 0.001 * i;
    return {
      relativeHumidityPercent: 2 * i,
      classWaterFraction: 0.8 * waterFraction,
      waterFraction,
      low: 0.9 * waterFraction,
      high: 1.1 * waterFraction,
    };
  });
  const points = [
    {
      over: 'magnesium chloride',
      relativeHumidityPercent: 33,
      humiditySource: '',
      waterFraction: 0.0165,
      addedFraction: 0,
    },
  ];
  const fit = { fromClass: 'silica', misfitPercent: 0, cannotTell: [], notes: [], source: '', curve, points };
  it('draws the sample on the curve, inside the frame', () => {
    const { points: marks, inner } = drawn(fit, 640);
    const [mark] = marks;
    expect(mark?.x).toBeCloseTo(inner.left + ((inner.right - inner.left) * 33) / 90, 6);
    expect(mark?.y).toBeGreaterThan(inner.top);
    expect(mark?.y).toBeLessThan(inner.bottom);
    expect(inner.right).toBeLessThanOrEqual(640);
  });
  it('is told in a sentence to who does not see it', () => {
    expect(plain(curveWords(fit))).toBe(
      'Water over relative humidity at 25 °C, dry basis. Weighed: 1.7 % at 33 % RH. At 50 % RH the curve as weighed holds 2.5 % (2.3 % to 2.8 %), silica 2.0 %.',
    );
  });
});
