// What is said of a value on its chart. Pure.
import { valueWords } from './form.ts';
import type { Chart } from './questions.ts';

export function insideWords(
  compound: string,
  value: number,
  {
    values,
    points,
    tooFewForLimits,
    fewestForLimits,
  }: Pick<Chart, 'values' | 'points' | 'tooFewForLimits' | 'fewestForLimits'>,
): string {
  if (!values || tooFewForLimits)
    return `${compound}: ${points.length} so far; limits follow from ${fewestForLimits} on.`;
  const { low, high } = values;
  const range = `${valueWords(low)} to ${valueWords(high)}`;
  if (value < low || value > high)
    return `${compound} is ${value < low ? 'lower' : 'higher'} than usual: outside ${range}. Another plate tells whether it stays.`;
  return points.at(-1)?.isAverageOutside
    ? `${compound} lies inside ${range}, but its average drifts.`
    : `${compound} lies inside ${range}.`;
}
