// What a need must say, and what goes together. Pure; tested without a database.
import type { Backing, ExposureState, NeedKind, PlateRegime } from '../database/generated/sqlite/client.ts';
import { invalid, missing } from '../errors.ts';

/** A need as it is kept, apart from whose and which. */
export interface NeedFacts {
  kind: NeedKind;
  plates: number | null;
  backing: Backing | null;
  isForExtraction: boolean;
  mobilePhase: string | null;
  isPreWashed: boolean;
  regime: PlateRegime | null;
  regimeHumidityPercent: number | null;
  dryGrams: number | null;
  limitWaterFraction: number | null;
  diameterMm: number | null;
  bedLengthMm: number | null;
  sampleMg: number | null;
  deltaRf: number | null;
  columnVolumes: number | null;
  flowMlPerMin: number | null;
}

function checkPlates(need: NeedFacts, under: string): void {
  if (need.plates === null) throw missing(`${under}.plates`, 'how many plates');
  if (need.isForExtraction && !need.mobilePhase) {
    throw missing(
      `${under}.mobilePhase`,
      'the mobile phase of the extraction: plates for extraction are pre-washed in it',
    );
  }
  if (need.dryGrams !== null) throw invalid(`${under}.dryGrams`, need.dryGrams, 'none: plates are counted');
}

function checkColumn(need: NeedFacts, under: string): void {
  const { diameterMm, bedLengthMm, sampleMg, deltaRf } = need;
  if (diameterMm === null && sampleMg === null) {
    throw missing(`${under}.diameterMm`, 'diameter and bed length, mm; or the mass of the sample, mg, and its ΔRf');
  }
  if (diameterMm !== null && bedLengthMm === null) throw missing(`${under}.bedLengthMm`, 'the length of the bed, mm');
  if (diameterMm === null && deltaRf === null)
    throw missing(`${under}.deltaRf`, 'the ΔRf of what is to be parted: 0.1 or more');
  if (!need.mobilePhase) throw missing(`${under}.mobilePhase`, 'what it is conditioned with');
}

/** Refuses what lacks something or contradicts itself. */
export function checkNeed(need: NeedFacts, under = 'input'): void {
  if (need.kind === 'PLATES') checkPlates(need, under);
  else if (need.plates !== null) throw invalid(`${under}.plates`, need.plates, 'none: this need is not for plates');
  if (need.kind === 'SORBENT' && need.dryGrams === null) throw missing(`${under}.dryGrams`, 'dry grams');
  if (need.kind === 'COLUMN') checkColumn(need, under);
  if (need.regime === 'EQUILIBRATED' && need.kind !== 'PLATES') {
    throw invalid(`${under}.regime`, need.regime, 'none: only plates are equilibrated');
  }
}

/** What of a need is planned: changes of anything else move nothing. */
export const planned = ['plates', 'dryGrams', 'diameterMm', 'bedLengthMm', 'sampleMg', 'deltaRf'] as const;

/** Refuses changing what was begun. */
export function checkUnbegun(isBegun: boolean, changed: readonly string[], under = 'input'): void {
  const [first] = changed;
  if (isBegun && first) {
    throw invalid(
      `${under}.${first}`,
      'another',
      'what it is: something was begun for it; drop this need and add another',
    );
  }
}

/** What of an estimate tells whether something will do. */
export interface Wetness {
  state: ExposureState;
  asOf: Date;
  scoopWaterFraction: number | null;
  upperWaterFraction: number | null;
  hoursToLimit: number | null;
}

/**
 * Whether it stays within its band, or a need's own limit, until a time. Between now and the band's end the water is
 * taken to rise as the root of time, as into a bed from its top: sooner than evenly.
 */
export function isGoodAt(of: Wetness | null, at: Date, limitWaterFraction: number | null): boolean {
  if (!of || of.state === 'UNKNOWN') return false;
  const { state, asOf, scoopWaterFraction: water, upperWaterFraction: upper, hoursToLimit } = of;
  const hours = Math.max(0, (at.getTime() - asOf.getTime()) / 3_600_000);
  if (limitWaterFraction === null) {
    return (state === 'GOOD' || state === 'USE_SOON') && (hoursToLimit === null || hours <= hoursToLimit);
  }
  if (water === null) return false;
  const rises = upper !== null && upper > water && hoursToLimit !== null && hoursToLimit > 0;
  const then = rises ? water + (upper - water) * Math.sqrt(hours / hoursToLimit) : water;
  return then <= limitWaterFraction;
}
