// When does the next scoop leave its band: the bed carried ahead under the room's typical day.
//
// The first day follows the typical day block by block, the rest its mean, so that the steps can grow; hours, not digits,
// are wanted, so the tolerance is wider and no responses go along.
import { diffusivityM2PerS, referenceActivity } from './air.ts';
import { bedMean, topMean, type Bed } from './bed.ts';
import { blocksPerDay, blockSeconds, daySeconds, type AirDay } from './climate.ts';
import { inflowOf, isEmpty, type Condition } from './condition.ts';
import { dailyDuty } from './habit.ts';
import type { BedSpec, Factors, Lid, Target } from './history.ts';
import { resistanceSPerM } from './inflow.ts';
import { tableWater } from './isotherm.ts';
import { carry, type Pace } from './stepper.ts';

/** Beyond this nothing is said. */
export const horizonDays = 90;
const pace: Pace = { scale: 5, fading: false, fixedStepS: null };

/**
 * Hours until the median water of the top `depthM` crosses an end of the band under a lid; 0 when it is past, null when it
 * does not within 90 days or when the room has no typical day.
 */
export function hoursToLeave(
  condition: Condition,
  spec: BedSpec,
  depthM: number,
  lid: Lid,
  typical: AirDay | null,
  target: Target,
  factors: Factors,
): number | null {
  const { upper, lower } = target;
  if (upper === null && lower === null) return null;
  const original = condition.bed;
  const now = original.capacity * topMean(original, original.water, 0, depthM);
  const outside = (water: number): boolean => (upper !== null && water >= upper) || (lower !== null && water < lower);
  if (outside(now)) return 0;
  if (!typical || isEmpty(condition) || condition.wetted) return null;

  const bed: Bed = {
    ...original,
    water: original.water.slice(),
    activity: original.activity.slice(),
    stepS: Math.min(original.stepS, blockSeconds),
  };
  const inflow = inflowOf(spec, { ...condition, bed }, lid, dailyDuty(condition.habit), factors);
  if (staysInside(bed, depthM, typical, resistanceSPerM(inflow, diffusivityM2PerS(25, spec.pressurePa)), now, target))
    return null;

  let before = now;
  let beforeS = 0;
  let crossedS: number | null = null;
  let passedS = 0;
  const watch = (second: number): boolean => {
    const after = bed.capacity * topMean(bed, bed.water, 0, depthM);
    const nowS = passedS + second;
    if (!outside(after)) {
      before = after;
      beforeS = nowS;
      return false;
    }
    const edge = upper !== null && after >= upper ? upper : (lower ?? 0);
    crossedS = beforeS + ((edge - before) / (after - before)) * (nowS - beforeS);
    return true;
  };
  const second = condition.atS - Math.floor(condition.atS / daySeconds) * daySeconds;
  const stretches = [
    { air: typical.integrals, fromS: second, toS: daySeconds },
    { air: typical.integrals, fromS: 0, toS: second },
    { air: levelled(typical), fromS: 0, toS: (horizonDays - 1) * daySeconds },
  ];
  for (const { air, fromS, toS } of stretches) {
    if (!(toS > fromS)) continue;
    passedS = beforeS - fromS;
    carry(bed, air, fromS, toS, inflow, pace, false, watch);
    if (crossedS !== null) return Math.max(0, crossedS) / 3600;
  }
  return null;
}

// Bounds that spare most of the looking ahead: water cannot rise above what the wettest air of the day holds, nor faster
// than the whole inflow into the scoop; nor fall below what the driest holds.
function staysInside(
  bed: Bed,
  depthM: number,
  typical: AirDay,
  resistance: number,
  now: number,
  { upper, lower }: Target,
): boolean {
  const { wettest, driest, mostVapour } = extremesOf(typical);
  const { cells } = bed.grid;
  let wettestCell = 0;
  let driestCell = Infinity;
  for (let i = 0; i < cells; i++) {
    wettestCell = Math.max(wettestCell, bed.capacity * bed.water[i]!);
    driestCell = Math.min(driestCell, bed.capacity * bed.water[i]!);
  }
  const rise = (mostVapour * horizonDays * daySeconds) / (resistance * (bed.densityKgPerM3 / bed.capacity) * depthM);
  const ceiling = Math.max(
    wettestCell,
    Math.min(bed.capacity * tableWater(bed.isotherm, Math.min(0.99, wettest)), wettestCell + rise),
  );
  const floor = Math.min(driestCell, bed.capacity * tableWater(bed.isotherm, driest));
  return (upper === null || ceiling < upper) && (lower === null || floor >= lower);
}

const extremes = new WeakMap<AirDay, { wettest: number; driest: number; mostVapour: number }>();

// The largest and least reference activity that the day's blocks lead to, and its largest concentration.
function extremesOf(typical: AirDay): { wettest: number; driest: number; mostVapour: number } {
  const known = extremes.get(typical);
  if (known) return known;
  const { integrals } = typical;
  const found = { wettest: 0, driest: 1, mostVapour: 0 };
  for (let k = 0; k < 4 * blocksPerDay; k += 4) {
    const vapour = integrals[k + 4]! - integrals[k]!;
    const humidity = vapour / (integrals[k + 5]! - integrals[k + 1]!);
    const activity = referenceActivity(humidity, (integrals[k + 6]! - integrals[k + 2]!) / blockSeconds);
    found.wettest = Math.max(found.wettest, activity);
    found.driest = Math.min(found.driest, activity);
    found.mostVapour = Math.max(found.mostVapour, vapour / blockSeconds);
  }
  extremes.set(typical, found);
  return found;
}

const levels = new WeakMap<AirDay, Float64Array>();

// The day's means, as integrals that go on for ever.
function levelled(typical: AirDay): Float64Array {
  const known = levels.get(typical);
  if (known) return known;
  const last = 4 * blocksPerDay;
  const even = typical.integrals.map((_, i) => (typical.integrals[last + (i % 4)]! * (i >> 2)) / blocksPerDay);
  levels.set(typical, even);
  return even;
}

/** Minutes that a dry layer needs in air of this humidity until it lacks a twentieth of equilibrium. */
export function minutesToEquilibrium(
  condition: Condition,
  spec: BedSpec,
  air: AirDay,
  factors: Factors,
): number | null {
  const { bed: original } = condition;
  const even = levelled(air);
  const activity = referenceActivity(even[4]! / even[5]!, even[6]! / blockSeconds);
  const wanted = 0.95 * tableWater(original.isotherm, Math.min(0.99, activity));
  if (!(wanted > 0)) return null;
  const bed: Bed = {
    ...original,
    water: new Float64Array(original.water.length),
    activity: new Float64Array(original.activity.length).fill(1e-9),
    stepS: 5,
  };
  const inflow = inflowOf(spec, { ...condition, bed }, 'open', 1, factors);
  let before = 0;
  let beforeS = 0;
  let reachedS: number | null = null;
  carry(bed, even, 0, daySeconds, inflow, { scale: 1, fading: false, fixedStepS: null }, false, (second) => {
    const water = bedMean(bed, bed.water);
    if (water >= wanted) {
      reachedS = beforeS + ((wanted - before) / (water - before)) * (second - beforeS);
      return true;
    }
    before = water;
    beforeS = second;
    return false;
  });
  return reachedS === null ? null : reachedS / 60;
}
