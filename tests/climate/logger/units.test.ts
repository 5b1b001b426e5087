// Units and numbers as written: conversions against their definitions, and every way to write a number.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Unit } from '../../../api/climate/logger/file.ts';
import { measuredOf, numberOf } from '../../../api/climate/logger/number.ts';
import { converted, inUnit, unitOf } from '../../../api/climate/logger/unit.ts';

const unit = fc.constantFrom<Unit>('C', 'F', 'K', 'percent', 'fraction');
const value = fc.double({ min: -500, max: 500, noNaN: true });

describe('units', () => {
  test('agree with the fixed points of the scales (BIPM SI Brochure 2.3.1, NIST SP 811 B.8)', () => {
    expect(converted(32, 'F')).toBe(0);
    expect(converted(212, 'F')).toBe(100);
    expect(converted(-40, 'F')).toBeCloseTo(-40, 12);
    expect(converted(273.15, 'K')).toBe(0);
    expect(converted(0.45, 'fraction')).toBe(45);
  });

  test('come back from their conversion unchanged', () => {
    fc.assert(fc.property(unit, value, (one, x) => Math.abs(inUnit(converted(x, one), one) - x) < 1e-10));
  });

  test('keep the order of warm and cold, damp and dry', () => {
    fc.assert(
      fc.property(
        unit,
        value,
        value,
        (one, a, b) => Math.sign(converted(a, one) - converted(b, one)) * Math.sign(a - b) >= 0,
      ),
    );
  });

  test('keep a difference in proportion: nine °F are five °C', () => {
    fc.assert(fc.property(value, (x) => Math.abs(converted(x + 9, 'F') - converted(x, 'F') - 5) < 1e-10));
  });

  test.each<[string, Unit]>([
    ['°C', 'C'],
    ['degC', 'C'],
    ['deg C', 'C'],
    ['℃', 'C'],
    ['ºC', 'C'],
    ['Â°C', 'C'],
    ['Celsius', 'C'],
    ['C', 'C'],
    ['\ufffdC', 'C'],
    ['°F', 'F'],
    ['deg. F', 'F'],
    ['Fahrenheit', 'F'],
    ['K', 'K'],
    ['Kelvin', 'K'],
    ['%', 'percent'],
    ['%RH', 'percent'],
    ['% rF', 'percent'],
    ['% r.H.', 'percent'],
    ['%HR', 'percent'],
    ['pct', 'percent'],
    ['fraction', 'fraction'],
    ['0-1', 'fraction'],
  ])('%s is read as %s', (written, meant) => {
    expect(unitOf(written)).toBe(meant);
  });

  test.each(['', 'hPa', 'V', 'ppm', 'g/m³', 'A12', '1'])('%s is neither of temperature nor of humidity', (written) => {
    expect(unitOf(written)).toBeNull();
  });
});

describe('a number', () => {
  test.each<[string, number]>([
    ['21.5', 21.5],
    ['21,5', 21.5],
    ['+3', 3],
    ['-3.25', -3.25],
    ['\u22123,25', -3.25],
    ['.5', 0.5],
    [',5', 0.5],
    ['2.15E+01', 21.5],
    ['1,013.25', 1013.25],
    ['1.013,25', 1013.25],
    ["1'013.25", 1013.25],
    ['1 013,25', 1013.25],
    ['1\u202f013,25', 1013.25],
    ['1,234,567', 1234567],
  ])('%s is %d', (written, meant) => {
    expect(numberOf(written)).toBe(meant);
  });

  test.each([
    '',
    '-',
    '2,1.5',
    '1.2.3',
    '21.5.',
    '0x1F',
    '1e999999',
    'Infinity',
    '12:30',
    '2026-03-14',
    '1 2',
    '--5',
    '1,01,3',
  ])('%j is none', (written) => {
    expect(numberOf(written)).toBeNaN();
  });

  test('is the same with a point or a comma', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1_000_000, max: 1_000_000 }), fc.integer({ min: 0, max: 4 }), (whole, places) => {
        const written = (whole / 10 ** places).toFixed(places);
        return numberOf(written) === Number(written) && numberOf(written.replace('.', ',')) === Number(written);
      }),
    );
  });

  test('may carry its unit', () => {
    expect(measuredOf('21.5 °C')).toEqual({ value: 21.5, unit: 'C' });
    expect(measuredOf('70,7°F')).toEqual({ value: 70.7, unit: 'F' });
    expect(measuredOf('45%')).toEqual({ value: 45, unit: 'percent' });
    expect(measuredOf('45 rabbits')).toBeNull();
  });
});
