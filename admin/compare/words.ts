// What pages of lot checks say. Pure.
import { percent } from '../say/water.ts';
import type { Check, CheckRun, Head, SpreadOf, Verdict } from './questions.ts';

export const verdictWord: Record<Verdict, string> = {
  ACCEPTED: 'behaves like the last',
  REJECTED: 'does not behave like the last',
  TOO_FEW: 'too few to tell',
};

/** What is to be done with a check: decide, run more, or nothing. */
export function stateWords({ decision, verdict, newLot }: Head): string {
  if (decision?.outcome === 'ACCEPTED') return `${newLot.lotNumber} accepted`;
  if (decision?.outcome === 'REJECTED') return `${newLot.lotNumber} rejected`;
  return verdict.outcome === 'TOO_FEW' ? 'more plates to run' : 'waits for your decision';
}

/** What the verdict suggests as a reason, which the person may change. */
export function whySuggested({ verdict, oldLot }: Pick<Check, 'verdict' | 'oldLot'>): string {
  const off = verdict.quantities.filter(({ outcome }) => outcome === 'REJECTED').map(({ name }) => name);
  if (verdict.outcome === 'ACCEPTED') return `within ±${verdict.margin} of ${oldLot.lotNumber}`;
  return off.length > 0 ? `${off.join(' and ')} more than ${verdict.margin} from ${oldLot.lotNumber}` : '';
}

const chamberWord = {
  TWIN_TROUGH: 'twin trough',
  FLAT_BOTTOM: 'flat-bottomed chamber',
  SANDWICH: 'sandwich chamber',
  AUTOMATIC: 'automatic chamber',
  JAR: 'jar',
} as const;

/** How plates were run, in one line; nothing where nobody said. */
export function conditionsWords(run: CheckRun | undefined): string {
  if (!run) return '';
  const { chamber, isLined, saturationMinutes, eluent, eluentBatch, stabiliser, distanceMm } = run;
  return [
    chamber ? `${chamberWord[chamber]}${isLined ? ', lined' : ''}` : isLined ? 'lined chamber' : '',
    saturationMinutes === null ? '' : `saturated ${saturationMinutes} min`,
    eluent ? `${eluent}${eluentBatch ? ` (batch ${eluentBatch})` : ''}` : '',
    stabiliser ? `stabilised with ${stabiliser}` : '',
    distanceMm === null ? '' : `run ${distanceMm} mm`,
  ]
    .filter(Boolean)
    .join(', ');
}

/** Air and water at use, as far as they are known. */
export function aroundWords({ temperatureC, humidityPercent, waterFraction, isWaterFilled }: CheckRun): string {
  return [
    temperatureC === null ? '' : `${temperatureC.toFixed(0)} °C`,
    humidityPercent === null ? '' : `${humidityPercent.toFixed(0)} % RH`,
    waterFraction === null ? '' : `${percent(waterFraction)} water${isWaterFilled ? ' (estimated)' : ''}`,
  ]
    .filter(Boolean)
    .join(', ');
}

type Source = SpreadOf['sources'][number];
/** One source of spread: its relative standard deviation, or why there is none. */
export function sourceWords({ told, sameAs, relative, share }: Source): string {
  if (told === 'ONE_LEVEL') return 'the same on all plates';
  if (told === 'SAME_AS_ANOTHER') return sameAs ? `cannot be told from ${sameAs}` : 'cannot be told apart';
  const sd = relative
    ? `${percent(relative.value)} (${percent(relative.low)} to ${relative.high === null ? 'any' : percent(relative.high)})`
    : 'unknown';
  const of = share ? `, ${Math.round(100 * share.value)} % of the whole` : '';
  return `${sd}${of}${told === 'CANNOT_TELL' ? '; the data cannot tell' : ''}`;
}
