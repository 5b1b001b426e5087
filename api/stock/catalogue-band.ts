// The band of water a sorbent or a lot should lie in, as somebody says it: dry, as received, or set to a value.
import { z } from 'zod';
import { invalid, missing, unknown } from '../errors.ts';
import type { Grades } from '../science/grades.ts';
import { gradeTableFor } from './grade-tables.ts';
import type { Transaction } from '../work.ts';
import { said } from './said.ts';
import { dryBasis } from './water.ts';

/** More water than this is no sorbent any more (invented bound). */
const mostUpper = 0.6;
const mostBand = 0.2;

export const bandSaid = {
  policy: z.enum(['DRY', 'AS_RECEIVED', 'SET'], 'DRY, AS_RECEIVED or SET'),
  upperWaterFraction: said.waterFraction.nullish(),
  lowerWaterFraction: said.waterFraction.nullish(),
  valueWaterFraction: said.waterFraction.nullish(),
  bandWaterFraction: said.waterFraction.nullish(),
  grade: z.string('an activity grade').trim().max(10, 'an activity grade').nullish(),
  basis: z
    .enum(['DRY', 'AS_RECEIVED'], 'DRY or AS_RECEIVED')
    .nullish()
    .transform((basis) => basis ?? 'DRY'),
};

type BandSaid = z.output<z.ZodObject<typeof bandSaid>>;

/** As stored: dry basis; what the policy does not use is empty. */
type Band = {
  targetPolicy: BandSaid['policy'];
  targetUpperWaterFraction: number | null;
  targetLowerWaterFraction: number | null;
  targetBandWaterFraction: number | null;
};

type End = 'upperWaterFraction' | 'lowerWaterFraction' | 'valueWaterFraction' | 'bandWaterFraction' | 'grade';

const names: Record<BandSaid['policy'], string> = { DRY: 'dry', AS_RECEIVED: 'as received', SET: 'set to a value' };

function refuseOthers(of: BandSaid, used: readonly End[], expected: string): void {
  const all: readonly End[] = [
    'upperWaterFraction',
    'lowerWaterFraction',
    'valueWaterFraction',
    'bandWaterFraction',
    'grade',
  ];
  for (const end of all) {
    if (!used.includes(end) && of[end] != null) throw invalid(`input.${end}`, of[end], expected);
  }
}

/** Water of an activity grade on dry basis; refuses a class without grades, or a grade without water to add. */
function gradeEnd(grade: string, className: string, grades: Grades | null): number {
  if (!grades) throw invalid('input.grade', grade, `${className} has no activity grades; give an upper end`);
  const found = grades.find((one) => one.grade.toLowerCase() === grade.toLowerCase());
  if (!found) throw unknown('input.grade', grade, `one of ${grades.map((one) => one.grade).join(', ')}`);
  if (found.waterOfTotal === 0) {
    throw invalid(
      'input.grade',
      grade,
      `grade ${found.grade} has no water at all, which nothing in a drum keeps; an upper end, say 1 %`,
    );
  }
  return dryBasis(found.waterOfTotal);
}

const ordered = (lower: number, upper: number, path: string): void => {
  if (!(lower < upper)) throw invalid(path, lower, `less than the upper end (${upper})`);
  if (upper > mostUpper) throw invalid('input.upperWaterFraction', upper, `at most ${mostUpper}`);
};

function driedBand(
  of: BandSaid,
  className: string,
  grades: Grades | null,
  dry: (fraction: number) => number,
): number | null {
  refuseOthers(of, ['upperWaterFraction', 'grade'], `nothing: ${names.DRY} has an upper end or a grade only`);
  if (of.grade) {
    if (of.upperWaterFraction != null) throw invalid('input.grade', of.grade, 'an upper end or a grade, not both');
    return gradeEnd(of.grade, className, grades);
  }
  if (of.upperWaterFraction == null) return null;
  const upper = dry(of.upperWaterFraction);
  if (!(upper > 0 && upper <= mostUpper)) {
    throw invalid('input.upperWaterFraction', of.upperWaterFraction, `more than 0, at most ${mostUpper}`);
  }
  return upper;
}

function setBand(of: BandSaid, dry: (fraction: number) => number): { upper: number; lower: number } {
  refuseOthers(
    of,
    ['upperWaterFraction', 'lowerWaterFraction', 'valueWaterFraction', 'bandWaterFraction'],
    `nothing: ${names.SET} has a value with a band, or two ends`,
  );
  const { valueWaterFraction: value, bandWaterFraction: band } = of;
  if (value != null) {
    if (band == null || !(band > 0)) throw missing('input.bandWaterFraction', 'how far either side it may lie');
    if (band > value) throw invalid('input.bandWaterFraction', band, `at most the value itself (${value})`);
    const ends = { upper: dry(value + band), lower: dry(value - band) };
    ordered(ends.lower, ends.upper, 'input.bandWaterFraction');
    return ends;
  }
  if (of.upperWaterFraction == null || of.lowerWaterFraction == null) {
    throw missing('input.valueWaterFraction', 'the water it is set to, with a band either side');
  }
  const ends = { upper: dry(of.upperWaterFraction), lower: dry(of.lowerWaterFraction) };
  ordered(ends.lower, ends.upper, 'input.lowerWaterFraction');
  return ends;
}

/** The band as it is stored; refuses what does not go together. Grades are those of the table that the lab uses. */
export async function bandOf(
  { tx, labId }: { tx: Pick<Transaction, 'gradeTable'>; labId: string },
  of: BandSaid,
  className: string,
): Promise<Band> {
  const dry = (fraction: number): number => {
    if (of.basis === 'DRY') return fraction;
    if (fraction > 0.9) throw invalid('input.upperWaterFraction', fraction, 'at most 0.9 as received');
    return dryBasis(fraction);
  };
  const none = { targetUpperWaterFraction: null, targetLowerWaterFraction: null, targetBandWaterFraction: null };
  if (of.policy === 'DRY') {
    const grades = of.grade ? ((await gradeTableFor(tx, labId, className))?.grades ?? null) : null;
    return { targetPolicy: 'DRY', ...none, targetUpperWaterFraction: driedBand(of, className, grades, dry) };
  }
  if (of.policy === 'SET') {
    const { upper, lower } = setBand(of, dry);
    return { targetPolicy: 'SET', ...none, targetUpperWaterFraction: upper, targetLowerWaterFraction: lower };
  }
  refuseOthers(
    of,
    ['bandWaterFraction'],
    `nothing: ${names.AS_RECEIVED} is each lot’s own water, with a band either side`,
  );
  const band = of.bandWaterFraction ?? null;
  if (band !== null && !(band > 0 && band <= mostBand)) {
    throw invalid('input.bandWaterFraction', band, `more than 0, at most ${mostBand}`);
  }
  return { targetPolicy: 'AS_RECEIVED', ...none, targetBandWaterFraction: band };
}
