// The exposure room's small decisions on plain data.
import { describe, expect, it } from 'vitest';
import { clockChanges, habitAt, workingHoursOf } from '../../api/exposure/hours.ts';
import { numbersOf } from '../../api/exposure/numbers.ts';
import { targetOf } from '../../api/exposure/target.ts';
import { urgencyOf } from '../../api/exposure/urgency.ts';
import { geometryOf } from '../../api/exposure/geometry.ts';
import { parcelBytes, parcelOf } from '../../api/exposure/parcels.ts';
import { dryingIsotherm, fromZero, residualWater } from '../../api/science/residual.ts';
import { sorbentClass } from '../../api/science/properties.ts';

const seconds = (iso: string): number => Date.parse(iso) / 1000;

describe('working hours', () => {
  const hours = workingHoursOf({}, 'Europe/Helsinki');

  it('a habit keeps to the clock on the wall: an hour earlier in UTC once summer time begins', () => {
    // Finland: UTC+2 in winter, UTC+3 from 29 March 2026, 01:00 UTC (European Union Directive 2000/84/EC).
    const habit = { timesADay: 3, minutes: 10 };
    const winter = habitAt(habit, hours, seconds('2026-03-20T12:00:00Z'));
    const summer = habitAt(habit, hours, seconds('2026-04-02T12:00:00Z'));
    expect(winter).toEqual({ timesPerDay: 3, openSeconds: 600, fromS: 6 * 3600, toS: 16 * 3600 });
    expect(summer).toEqual({ timesPerDay: 3, openSeconds: 600, fromS: 5 * 3600, toS: 15 * 3600 });
  });

  it('finds the instants at which the clocks change, and none where they do not', () => {
    const year = [seconds('2026-01-01T00:00:00Z'), seconds('2027-01-01T00:00:00Z')] as const;
    expect(clockChanges('Europe/Helsinki', ...year)).toEqual([
      seconds('2026-03-29T01:00:00Z'),
      seconds('2026-10-25T01:00:00Z'),
    ]);
    expect(clockChanges('Africa/Nairobi', ...year)).toEqual([]);
  });

  it('no openings and no minutes are no habit', () => {
    expect(habitAt({ timesADay: 0, minutes: 10 }, hours, 0)).toBeNull();
    expect(habitAt(null, hours, 0)).toBeNull();
  });
});

describe('the band', () => {
  const lot = {
    sorbentClass: 'silica',
    targetPolicy: 'DRY',
    targetUpperWaterFraction: null,
    targetLowerWaterFraction: null,
    certificateWaterFraction: 0.02,
  } as const;

  it('dry silica ends at 5 % unless somebody sets it', () => {
    expect(targetOf(lot)).toMatchObject({ upper: 0.05, lower: null, from: 'class default' });
    expect(targetOf({ ...lot, targetUpperWaterFraction: 0.03 })).toMatchObject({
      upper: 0.03,
      lower: null,
      from: 'set',
    });
  });

  it('as received has an end either side of the water of receipt', () => {
    const { upper, lower, from } = targetOf({ ...lot, targetPolicy: 'AS_RECEIVED' });
    expect(from).toBe('certificate');
    expect(lower).toBeLessThan(0.02);
    expect(upper).toBeGreaterThan(0.02);
    expect(targetOf({ ...lot, targetPolicy: 'AS_RECEIVED', certificateWaterFraction: null })).toMatchObject({
      from: 'none',
    });
  });
});

describe('what comes first in the list', () => {
  it('redry before use soon before unknown before too dry before good, and then the fewest hours', () => {
    const order = [
      urgencyOf('REDRY', 0),
      urgencyOf('USE_SOON', 3),
      urgencyOf('USE_SOON', 47),
      urgencyOf('UNKNOWN', null),
      urgencyOf('TOO_DRY', 0),
      urgencyOf('GOOD', 50),
      urgencyOf('GOOD', 2160),
      urgencyOf('GOOD', null),
    ];
    expect(order).toEqual([...order].sort((one, other) => one - other));
    expect(new Set(order).size).toBe(order.length);
  });
});

describe('the bed of a container', () => {
  const jar = {
    kind: 'DRUM',
    innerDiameterMm: 90,
    heightMm: 150,
    mouthDiameterMm: null,
    volumeMl: null,
    bedLengthMm: null,
    layerThicknessMm: null,
    plateWidthMm: null,
    plateHeightMm: null,
  } as const;

  it('without a mouth or a volume of its own has those of its cylinder', () => {
    const geometry = geometryOf(jar);
    expect(geometry).toMatchObject({ kind: 'bed', heightM: 0.15 });
    if (typeof geometry === 'string' || geometry.kind !== 'bed') throw new Error('no bed');
    expect(geometry.mouthAreaM2).toBe(geometry.areaM2);
    expect(geometry.volumeM3).toBeCloseTo(geometry.areaM2 * 0.15, 12);
  });

  it('says what is missing', () => {
    expect(geometryOf({ ...jar, innerDiameterMm: null })).toBe('missing inner diameter');
    expect(geometryOf({ ...jar, kind: 'COLUMN' })).toBe('missing bed length');
    expect(geometryOf({ ...jar, kind: 'PLATE_BOX' })).toBe('missing layer thickness');
  });
});

describe('the numbers of a sorbent', () => {
  const silica = { sorbentClass: 'silica', sorbentName: 'silica 60' };

  it('what the lab measured replaces the table, number by number', () => {
    const own = numbersOf(silica, [
      { name: 'filmCapacity', value: 0.08 },
      { name: 'voidFraction', value: null },
    ]);
    const table = numbersOf(silica, []);
    if (typeof own === 'string' || typeof table === 'string') throw new Error('no numbers');
    expect(own.bed.isotherm).toEqual({ ...table.bed.isotherm, filmCapacity: 0.08 });
    expect(own.bed.voidFraction).toBe(table.bed.voidFraction);
  });

  it('of which nobody knows how much water they hold is said so, never guessed', () => {
    expect(numbersOf({ sorbentClass: 'amino', sorbentName: 'amino phase' }, [])).toBe(
      'how much water amino phase holds is not known: missing isotherm',
    );
    expect(numbersOf({ sorbentClass: 'our own', sorbentName: 'clay' }, [])).toMatch(
      /^how much water clay holds is not known/,
    );
  });
});

describe('what a drying leaves behind', () => {
  const silica = sorbentClass('silica')?.isotherm;
  if (!silica) throw new Error('no silica');
  const isotherm = dryingIsotherm(silica, 'silica');

  it('105 °C in room air leaves about half a percent in silica, and 150 °C is the zero', () => {
    // Product paper, "What repeatable means": 105 °C in room air leaves about half a percent in 6 nm silica.
    expect(residualWater(isotherm, 105)).toBeGreaterThan(0.004);
    expect(residualWater(isotherm, 105)).toBeLessThan(0.006);
    expect(residualWater(isotherm, 150)).toBe(0);
    expect(fromZero(0.03, 0)).toBeCloseTo(0.03, 15);
  });

  it('less stays behind the hotter it is, and the drier the air', () => {
    const left = [60, 80, 105, 130].map((temperatureC) => residualWater(isotherm, temperatureC));
    expect(left).toEqual([...left].sort((one, other) => other - one));
    expect(residualWater(isotherm, 105, 500)).toBeLessThan(residualWater(isotherm, 105, 1400));
  });
});

describe('a parcel', () => {
  it('comes back from its bytes to the last bit', () => {
    const parcel = {
      dryKg: 0.1 + 0.2,
      handover: {
        waterFraction: Math.PI / 100,
        factors: [
          { factor: 'closed:tight/a', value: -1e-300 },
          { factor: 'bias', value: 1 / 3 },
        ],
        startSdLn: Math.LN2,
        known: true,
      },
    };
    expect(parcelOf(parcelBytes(parcel))).toEqual(parcel);
  });
});
