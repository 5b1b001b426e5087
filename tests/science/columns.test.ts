// Columns: the rows of the flash table, and the physics of a bed.
import { describe, expect, it } from 'vitest';
import { planOf, sizingOf, type PlanAsked } from '../../api/columns/rules.ts';
import { columnVolumesOf, oddColumnVolumes, restMinutes } from '../../api/science/columns/conditioning.ts';
import { bedMl, columnVolumeMl, flashFlowMlPerMin, totalPorosityOf } from '../../api/science/columns/volumes.ts';

// Still, Kahn & Mitra, J. Org. Chem. 1978, 43, 2923, Table I: bore mm, eluent mL, sample mg at ΔRf 0.2 and 0.1, fraction mL.
const table = [
  [10, 100, 100, 40, 5],
  [20, 200, 400, 160, 10],
  [30, 400, 900, 360, 20],
  [40, 600, 1600, 600, 30],
  [50, 1000, 2500, 1000, 50],
] as const;

describe('a flash column', () => {
  it.each(table)('of %s mm takes %s mL of eluent and parts %s mg, or %s mg where spots lie closer', (...row) => {
    const [diameterMm, eluentMl, wide, close, fractionMl] = row;
    const figures = { diameterMm, eluentMl, fractionMl, bedLengthMm: 150 };
    expect(sizingOf(wide, 0.2)).toMatchObject({ ...figures, readAtDeltaRf: 0.2, mostMg: wide });
    expect(sizingOf(close, 0.1)).toMatchObject({ ...figures, readAtDeltaRf: 0.1, mostMg: close });
  });

  it('is the next size up: nothing is read between the rows, nor between the two ΔRf', () => {
    expect(sizingOf(101, 0.2).diameterMm).toBe(20);
    expect(sizingOf(1, 0.5).diameterMm).toBe(10);
    expect(sizingOf(100, 0.199)).toMatchObject({ diameterMm: 20, readAtDeltaRf: 0.1 });
  });

  it('is refused beyond the table, with what would be right', () => {
    expect(() => sizingOf(2501, 0.2)).toThrow(/invalid sampleMg: 2501.*2 runs of 1251 mg/);
    expect(() => sizingOf(50, 0.09)).toThrow(/invalid deltaRf: 0.09.*another mobile phase/);
  });
});

const of = (more: Partial<PlanAsked> = {}): PlanAsked => ({
  ...{ sorbentClass: 'silica', bulkDensityKgPerM3: 500, innerDiameterMm: 20, bedLengthMm: 150 },
  ...{ eluentMl: null, fractionMl: null, columnVolumes: null, flowMlPerMin: null },
  ...more,
});

describe('a packed bed', () => {
  it('is a cylinder, filled at its bulk density', () => {
    // π · 1² · 15 cm³, times 0.5 g/cm³.
    expect(bedMl(20, 150)).toBeCloseTo(Math.PI * 15, 9);
    expect(planOf(of()).sorbentDryGrams).toBeCloseTo(Math.PI * 7.5, 9);
  });

  it('holds less liquid than it is large: about what bulk and skeleton leave free', () => {
    // 1 − ρ_bulk / ρ_skeleton: amorphous silica 2.2 g/cm³, transition alumina about 3.45 g/cm³.
    expect(totalPorosityOf('silica')).toBeCloseTo(1 - 0.5 / 2.2, 1);
    expect(totalPorosityOf('alumina')).toBeCloseTo(1 - 0.95 / 3.45, 1);
    for (const name of ['silica', 'alumina', 'c18']) expect(columnVolumeMl(20, 150, name)).toBeLessThan(bedMl(20, 150));
  });

  it('flows so that the surface falls two inches a minute', () => {
    expect(flashFlowMlPerMin(20)).toBeCloseTo(Math.PI * 5.08, 6);
  });

  it('is conditioned with three column volumes unless said, and other amounts are kept and marked', () => {
    const plan = planOf(of());
    expect(plan.conditioningMl).toBeCloseTo(3 * plan.columnVolumeMl, 9);
    expect(plan.conditioningMinutes * plan.flow).toBeCloseTo(plan.conditioningMl, 9);
    expect(plan.notes).toEqual([]);
    for (const within of [2, 2.5, 3]) expect(oddColumnVolumes(within)).toBeNull();
    expect(planOf(of({ columnVolumes: 1 })).notes.join()).toMatch(/fewer than the usual 2 to 3/);
    expect(planOf(of({ columnVolumes: 9 })).notes.join()).toMatch(/more than the usual 2 to 3/);
    expect(columnVolumesOf(10, 6, 30)).toBe(2);
    expect(planOf(of({ eluentMl: 200 })).solventInAllMl).toBeCloseTo(plan.conditioningMl + 200, 9);
  });
});

describe('the rest after alumina is wetted', () => {
  it('grows with the square of the bore, and never is shorter than gas needs to rise', () => {
    expect(restMinutes(100) / restMinutes(50)).toBeCloseTo(4, 9);
    expect(restMinutes(5)).toBe(restMinutes(1));
    expect(planOf(of()).restMinutes).toBeNull();
    expect(planOf(of({ sorbentClass: 'alumina' })).restMinutes).toBe(restMinutes(20));
  });

  it('leaves a twentieth of the heat in the middle, by the series of a round bar', () => {
    // Carslaw & Jaeger: Θ(0) = Σ 2 e^(−β² Fo) / (β J₁(β)), zeros of J₀ and J₁ there (Abramowitz & Stegun, Table 9.5).
    const zeros = [
      [2.4048255577, 0.5191474973],
      [5.5200781103, -0.3402648065],
      [8.6537279129, 0.2714522999],
    ] as const;
    const fourier = (1.25e-7 * 60 * restMinutes(50)) / 0.025 ** 2;
    const left = zeros.reduce((sum, [beta, j1]) => sum + (2 * Math.exp(-(beta ** 2) * fourier)) / (beta * j1), 0);
    expect(left).toBeCloseTo(0.05, 3);
  });
});
