// Loss on drying, walked through weighing by weighing to constant mass.
//
// Constant mass: two successive weighings differ by no more than 0.5 mg per g of sample (pharmacopoeial general notices, USP and
// Ph. Eur. 2.2.32); where hours are told, at least half an hour of drying lies between them (Ph. Eur.).

/** mg per g taken. */
export const constantMgPerG = 0.5;
const leastMinutesBetween = 30;
/** Sample of USP <731>, g. */
const usualSampleG = [1, 2] as const;

/** Masses in grams as the balance shows them: bottle alone, bottle with sample before drying, bottle after each time in the oven. */
export interface Weighings {
  readonly tareG: number;
  readonly beforeG: number;
  readonly after: readonly {
    readonly grossG: number;
    /** Drying in all until this weighing, min; null when nobody wrote it down. */
    readonly minutes: number | null;
  }[];
  /** Last digit of the balance, g (0.0001 on an analytical balance). */
  readonly resolutionG: number;
  /** More water than this cannot be, kg per kg dry; 1 fits every sorbent. */
  readonly mostWaterFraction: number;
}

/** One weighing, in order. */
export interface WeighingStep {
  readonly grossG: number;
  /** Lost since the weighing before, mg per g taken; negative for a gain. */
  readonly lostMgPerG: number;
  /** Loss so far. */
  readonly waterFraction: number;
  readonly asReceivedFraction: number;
  /** Agrees with the one before. */
  readonly constant: boolean;
}

export type LossOnDrying =
  | { readonly kind: 'impossible'; readonly path: string; readonly message: string; readonly expected: string }
  | {
      readonly kind: 'walked';
      readonly steps: readonly WeighingStep[];
      /** Index of the first weighing at constant mass; null while it still dries. */
      readonly constantAt: number | null;
      /** Of the first constant mass, or of the last weighing before there is one: dry basis (m_before − m_after)/m_after and as received (m_before − m_after)/m_before. */
      readonly waterFraction: number;
      readonly asReceivedFraction: number;
      /** One sigma of the water fraction from the balance alone, dry basis. */
      readonly sd: number;
      readonly advice: string;
    };

/** kg per kg as received from kg per kg dry, and back. */
export const asReceived = (dryBasis: number): number => dryBasis / (1 + dryBasis);
export const dryBasis = (received: number): number => received / (1 - received);

/**
 * Water of a sample whose loss was measured in an oven that leaves some behind (see `residualWaterFraction`), both dry basis:
 * 1 + w = (1 + loss)(1 + left behind).
 */
export const trueWaterFraction = (lossFraction: number, leftBehind: number): number =>
  (1 + lossFraction) * (1 + leftBehind) - 1;

/** Walks through the weighings; what cannot be is named with its field. */
export function lossOnDrying(weighings: Weighings): LossOnDrying {
  const { tareG, beforeG, after, resolutionG } = weighings;
  const wrong = impossible(weighings);
  if (wrong) return wrong;
  const takenG = beforeG - tareG;
  const steps: WeighingStep[] = [];
  let constantAt: number | null = null;
  for (const [i, { grossG, minutes }] of after.entries()) {
    const previous = after[i - 1];
    const lostMgPerG = (1000 * ((previous?.grossG ?? beforeG) - grossG)) / takenG;
    const between = minutes === null || previous?.minutes == null ? Infinity : minutes - previous.minutes;
    const constant = previous !== undefined && Math.abs(lostMgPerG) <= constantMgPerG && between >= leastMinutesBetween;
    if (constant && constantAt === null) constantAt = i;
    steps.push({ grossG, lostMgPerG, constant, ...fractions(beforeG, grossG, tareG) });
  }
  const result = steps[constantAt ?? steps.length - 1];
  if (!result) return missingAfter;
  const dryG = result.grossG - tareG;
  // Two readings make the loss and one is shared with the dry mass; each is rounded within one digit.
  const rounding = resolutionG / Math.sqrt(12);
  const sd = (rounding / dryG) * Math.hypot(1, 1 + result.waterFraction, result.waterFraction);
  const { waterFraction, asReceivedFraction } = result;
  return {
    kind: 'walked',
    steps,
    constantAt,
    waterFraction,
    asReceivedFraction,
    sd,
    advice: adviceOf(steps, constantAt, takenG),
  };
}

function fractions(
  beforeG: number,
  grossG: number,
  tareG: number,
): { waterFraction: number; asReceivedFraction: number } {
  const lostG = beforeG - grossG;
  return { waterFraction: lostG / (grossG - tareG), asReceivedFraction: lostG / (beforeG - tareG) };
}

function adviceOf(steps: readonly WeighingStep[], constantAt: number | null, takenG: number): string {
  const [least, most] = usualSampleG;
  if (constantAt === null) {
    return steps.length < 2
      ? 'Dry for another hour and weigh again: constant mass takes two weighings that agree.'
      : `Not constant yet: dry for another hour and weigh again, until two differ by no more than ${constantMgPerG} mg per g.`;
  }
  if (takenG < least || takenG > most) return `Constant mass. The sample is usually ${least} to ${most} g (USP <731>).`;
  return 'Constant mass.';
}

type Impossible = Extract<LossOnDrying, { kind: 'impossible' }>;

const missingAfter: Impossible = {
  kind: 'impossible',
  path: 'after',
  message: 'missing after, expected at least one weighing after drying',
  expected: 'at least one weighing after drying',
};

const refused = (path: string, value: number, expected: string): Impossible => ({
  kind: 'impossible',
  path,
  message: `invalid ${path}: ${value}, expected ${expected}`,
  expected,
});

function impossible({ tareG, beforeG, after, resolutionG, mostWaterFraction }: Weighings): Impossible | null {
  if (!(tareG >= 0 && tareG < Infinity)) return refused('tareG', tareG, 'the mass of the empty bottle, 0 g or more');
  if (!(beforeG >= 0 && beforeG < Infinity))
    return refused('beforeG', beforeG, 'the mass of bottle and sample, above 0 g');
  if (beforeG === tareG) return refused('beforeG', beforeG, 'more than the empty bottle: there is no sample in it');
  if (beforeG < tareG) {
    return refused(
      'tareG',
      tareG,
      `less than bottle and sample (${beforeG} g): the two are swapped, or it is another bottle's`,
    );
  }
  if (!(resolutionG > 0)) return refused('resolutionG', resolutionG, 'the last digit of the balance, above 0 g');
  if (after.length === 0) return missingAfter;
  const takenG = beforeG - tareG;
  const allowedG = Math.max((constantMgPerG * takenG) / 1000, 2 * resolutionG);
  for (const [i, { grossG, minutes }] of after.entries()) {
    const path = `after.${i}.grossG`;
    const previous = after[i - 1];
    const beforeThis = previous?.grossG ?? beforeG;
    if (!(grossG >= 0 && grossG < Infinity)) return refused(path, grossG, 'the mass of bottle and sample, above 0 g');
    if (grossG <= tareG) {
      return refused(
        path,
        grossG,
        `more than the empty bottle (${tareG} g): tares are mixed up, or the sample is lost`,
      );
    }
    if (grossG - beforeThis > allowedG) {
      return refused(path, grossG, `no more than the weighing before (${beforeThis} g): nothing gains mass in an oven`);
    }
    if ((beforeG - grossG) / (grossG - tareG) > mostWaterFraction) {
      return refused(
        path,
        grossG,
        `at least ${dryest(beforeG, tareG, mostWaterFraction)} g: a sorbent does not hold that much water; is the tare another bottle's?`,
      );
    }
    if (minutes !== null && !(minutes > (previous?.minutes ?? 0))) {
      return refused(`after.${i}.minutes`, minutes, 'more drying in all than at the weighing before');
    }
  }
  return null;
}

const dryest = (beforeG: number, tareG: number, most: number): string =>
  (tareG + (beforeG - tareG) / (1 + most)).toPrecision(5);
