// What the water strip says to somebody who does not see it.
import { aboutPercent, percent } from '../say/water.ts';
import type { StripInput } from './strip.ts';

export function stripWords(input: StripInput, guess: boolean, judged = 'next scoop'): string {
  const { mean, scoop, scoopLow, scoopHigh, upper, lower } = input;
  if (scoop === null || scoopLow === null || scoopHigh === null) return 'Water unknown: weigh a scoop.';
  const parts = [`${judged} ${aboutPercent({ value: scoop, low: scoopLow, high: scoopHigh })}`];
  if (mean !== null && judged === 'next scoop') parts.push(`mean ${percent(mean)}`);
  if (upper !== null) parts.push(`upper end ${percent(upper)}`);
  if (lower !== null && lower > 0) parts.push(`lower end ${percent(lower)}`);
  return `Water: ${parts.join(', ')}${guess ? '; a guess, since nobody weighed it' : ''}.`;
}
