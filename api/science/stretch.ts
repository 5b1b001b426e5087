// A container carried from one fixed instant to the next within a UTC day: through its room's air, or held where that is unknown.
import { bedMean } from './bed.ts';
import { blockSeconds, blocksPerDay, daySeconds, type RoomAir } from './climate.ts';
import { areaOf, inflowOf, isEmpty, standsOpen, type Condition } from './condition.ts';
import { dutyAt } from './habit.ts';
import type { BedSpec, Factors } from './history.ts';
import { carry, type Pace } from './stepper.ts';

/** Carries to `toS`, at most the end of the day that `condition.atS` lies in. */
export function carryTo(
  condition: Condition,
  spec: BedSpec,
  air: RoomAir | undefined,
  toS: number,
  factors: Factors,
  pace: Pace,
): void {
  const { bed } = condition;
  const day = Math.floor(condition.atS / daySeconds);
  const midnight = day * daySeconds;
  const fromS = condition.atS - midnight;
  const lid = standsOpen(condition) ? 'open' : condition.lid;
  const still = isEmpty(condition) || condition.wetted || (lid === 'sealed' && isLevel(condition));
  if (!still) {
    const through = air?.day(day);
    if (!through || anyUnknown(through.unknownBlocks, fromS, toS - midnight)) {
      if (lid !== 'sealed') condition.airKnown = false;
    } else {
      const inflow = inflowOf(spec, condition, lid, dutyAt(condition.habit, fromS), factors);
      bed.inflowKgPerM2 = 0;
      carry(bed, through.integrals, fromS, toS - midnight, inflow, pace, true, null);
      condition.gainedKg += bed.capacity * bed.inflowKgPerM2 * areaOf(spec, condition.plates);
      condition.peak = Math.max(condition.peak, bedMean(bed, bed.water));
    }
  }
  condition.atS = toS;
}

const isLevel = ({ bed }: Condition): boolean => {
  for (let i = 1; i < bed.grid.cells; i++) if (bed.water[i] !== bed.water[0]) return false;
  return true;
};

function anyUnknown(unknownBlocks: Uint16Array, fromS: number, toS: number): boolean {
  const first = Math.floor(fromS / blockSeconds);
  const last = Math.min(blocksPerDay, Math.ceil(toS / blockSeconds));
  return unknownBlocks[last]! > unknownBlocks[first]!;
}
