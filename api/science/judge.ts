// The verdict: from a container's condition to everything that its exposure says.
import { bedMean, topMean } from './bed.ts';
import { daySeconds } from './climate.ts';
import { sameLid } from './closures.ts';
import { standsOpen, type Condition } from './condition.ts';
import { scoopDepthM } from './events.ts';
import { gradeOf } from './grades.ts';
import type { Answer, FoldInput, State, Thresholds } from './history.ts';
import { condensingActivity } from './isotherm.ts';
import { chancePast, intervalOf } from './interval.ts';
import { ninety } from './normal.ts';
import { hoursToLeave, minutesToEquilibrium } from './outlook.ts';
import { reasonOf } from './reason.ts';
import { spreadAt, spreadFromAir } from './spreads.ts';

/** Invented defaults; the lab can set all four. */
export const usualThresholds: Thresholds = {
  redryChance: 0.5,
  useSoonChance: 0.2,
  useSoonHours: 48,
  tooDryChance: 0.5,
};

/**
 * Desorption lies up to twofold higher where pores fill, which the model leaves out: while stock has dried in air and some of
 * it still stands above a reference activity of 0.3, one sigma of ln 2 / 1.645 (twofold at 90 %) times the share it lost.
 */
export function hysteresisSd({ bed, peak }: Condition): number {
  const now = bedMean(bed, bed.water);
  if (!(peak > now) || !(now > 0) || bed.isotherm.numbers.poreCapacity <= 0) return 0;
  const wettest = Math.max(...bed.activity.subarray(0, bed.grid.cells));
  return wettest < 0.3 ? 0 : (Math.LN2 / ninety) * Math.min(1, (peak - now) / now);
}

export function judge(condition: Condition, input: FoldInput): Answer {
  const { spec, target, thresholds, factors, airs } = input;
  const { bed, atS } = condition;
  const { upper, lower } = target;
  const extra = hysteresisSd(condition);
  const depthM = scoopDepthM(spec, condition);
  const whole = spreadAt(input, condition, bed.grid.depthM, extra);
  const scoop = depthM < bed.grid.depthM ? spreadAt(input, condition, depthM, extra) : whole;
  const [low, high] = intervalOf(whole);
  const [scoopLow, scoopHigh] = intervalOf(scoop);
  const held = target.policy === 'equilibrated' ? spreadFromAir(input, condition, depthM, extra) : scoop;
  const chancePastLimit = upper === null ? null : chancePast(held, upper);
  const chanceTooDry = lower === null ? null : 1 - chancePast(held, lower);

  const air = airs.get(condition.room);
  const isOpen = standsOpen(condition);
  const standing = condition.lid;
  const ahead = (lid: typeof standing) =>
    hoursToLeave(condition, spec, depthM, lid, air?.typical ?? null, target, factors);
  const hoursToLimit = ahead(standing);
  const hoursToLimitOpen = standing === 'open' ? hoursToLimit : ahead('open');
  const hoursToLimitClosed = sameLid(standing, spec.usualClosure) ? hoursToLimit : ahead(spec.usualClosure);

  // A packed column that is wetted keeps the water it had; other wetted stock has to be dried before anything can be said.
  const settled = !condition.wetted || spec.geometry.kind === 'column';
  const known = condition.startKnown && condition.airKnown && settled;
  const state = stateOf(known, chancePastLimit, chanceTooDry, hoursToLimit, thresholds);
  const answer: Omit<Answer, 'reason'> = {
    asOfS: atS,
    state,
    meanWaterFraction: whole.water,
    low,
    high,
    scoopWaterFraction: scoop.water,
    scoopLow,
    scoopHigh,
    topWaterFraction: bed.capacity * topMean(bed, bed.water, 0, spec.topM),
    chancePastLimit,
    chanceTooDry,
    hoursToLimit,
    hoursToLimitOpen,
    hoursToLimitClosed,
    grade: gradeOf(spec.sorbent.grades, scoop.water, condition.driedAtC),
    pastLimitDepthM: upper === null ? null : pastDepthM(condition, upper),
    minutesToRoomEquilibrium:
      spec.geometry.kind === 'plate' && air
        ? minutesToEquilibrium(condition, spec, air.day(Math.floor(atS / daySeconds)), factors)
        : null,
    condensing: condition.condensing || bed.activity.some((activity) => activity > condensingActivity),
    isOpen,
    openedAtS: condition.openedAtS,
    dryKg: condition.dryKg,
    plates: condition.plates,
    profile: profileOf(condition),
  };
  return { ...answer, reason: reasonOf(answer, condition, input) };
}

export function stateOf(
  known: boolean,
  pastLimit: number | null,
  tooDry: number | null,
  hoursToLimit: number | null,
  thresholds: Thresholds,
): State {
  if (!known) return 'UNKNOWN';
  if (pastLimit !== null && pastLimit >= thresholds.redryChance) return 'REDRY';
  if (tooDry !== null && tooDry >= thresholds.tooDryChance) return 'TOO_DRY';
  if (pastLimit !== null && pastLimit >= thresholds.useSoonChance) return 'USE_SOON';
  if (hoursToLimit !== null && hoursToLimit < thresholds.useSoonHours) return 'USE_SOON';
  return 'GOOD';
}

// How far down the unbroken wet top reaches, cells' means joined by lines between their middles.
function pastDepthM({ bed }: Condition, limit: number): number {
  const { cells, thicknessM, depthM } = bed.grid;
  let top = 0;
  let middleBefore = 0;
  let before = 0;
  for (let i = 0; i < cells; i++) {
    const water = bed.capacity * bed.water[i]!;
    const middle = top + thicknessM[i]! / 2;
    if (water < limit)
      return i === 0 ? 0 : middleBefore + ((before - limit) / (before - water)) * (middle - middleBefore);
    top += thicknessM[i]!;
    middleBefore = middle;
    before = water;
  }
  return depthM;
}

function profileOf({ bed }: Condition): Answer['profile'] {
  let top = 0;
  return Array.from(bed.grid.thicknessM, (thickness, i) => {
    top += thickness;
    return { depthM: top - thickness / 2, waterFraction: bed.capacity * bed.water[i]! };
  });
}
