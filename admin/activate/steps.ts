// What was done to a batch, a phrase each.
import { spokenSpan } from '../say/time.ts';
import type { Clock } from '../say/state.ts';
import type { Prepared } from './questions.ts';
import { time } from './time.ts';

const edgeWords = { CUT: 'front edge cut off', MARKED: 'front edge marked', LEFT: 'front edge left' } as const;
const wayWords = { ALONG_HEIGHT: 'along the height', ALONG_WIDTH: 'along the width' } as const;

/** What was done to it, a phrase each, oldest first. */
export function stepsOf(batch: Prepared, clock: Clock): string[] {
  const { preWash, solventGone, activation, equilibration } = batch;
  const who = (by: string | null) => (by ? `, ${by}` : '');
  const steps: string[] = [];
  if (preWash) {
    const { solvent, direction, fullLength, frontEdge, tankLoads, mlPerLoad } = preWash;
    const loads = tankLoads ? `${tankLoads} × ${mlPerLoad ? `${mlPerLoad} mL` : 'tank'}` : '';
    const more = [
      fullLength === false ? 'not the full length' : '',
      direction ? wayWords[direction] : '',
      frontEdge ? edgeWords[frontEdge] : '',
      loads,
    ].filter(Boolean);
    const words = [`pre-washed with ${solvent ?? 'solvent'}`, ...more].join(', ');
    steps.push(`${words} (${time(preWash.at, clock)}${who(preWash.by)})`);
  }
  if (solventGone) steps.push(`solvent gone (${time(solventGone.at, clock)}${who(solventGone.by)})`);
  if (activation) {
    const { temperatureC, minutes, vacuum, oven } = activation;
    const how = [
      temperatureC === null ? '' : ` at ${temperatureC} °C`,
      vacuum ? ' under vacuum' : '',
      minutes === null ? '' : ` for ${minutes} min`,
      oven ? ` in ${oven}` : '',
    ].join('');
    steps.push(`activated${how} (${time(activation.at, clock)}${who(activation.by)})`);
  }
  if (equilibration) {
    const { humidityPercent, over, hours } = equilibration;
    const where = over ? ` (${over})` : '';
    const long = hours === null ? '' : `, ${spokenSpan(hours)}`;
    const at = `${time(equilibration.at, clock)}${who(equilibration.by)}`;
    steps.push(`equilibrated at ${Math.round(humidityPercent)} % RH${where}${long} (${at})`);
  }
  return steps;
}
