// The API's names of ovens, runs and care in plain English, and runs in sentences.
import type { Clock } from '../say/state.ts';
import { labClock, spokenTime } from '../say/time.ts';
import { grams, percent, plates } from '../say/water.ts';
import { count } from '../say/words.ts';
import type { Load, Run } from './questions.ts';

export type OvenKind = 'AIR' | 'VACUUM';
export type RunState = 'PLANNED' | 'IN_OVEN' | 'COOLING' | 'COOLED' | 'FINISHED' | 'INTERRUPTED';
export type Family = 'BULK' | 'BONDED' | 'PLATES';
export type CareKind =
  'TRUE_TEMPERATURE' | 'VACUUM_GAUGE' | 'PUMP_OIL' | 'COLD_TRAP' | 'BAKE_OUT' | 'OUT_OF_ORDER' | 'HYGROMETER';

export const ovenKindWord: Record<OvenKind, string> = { AIR: 'full of air', VACUUM: 'vacuum' };

export const stateWord: Record<RunState, string> = {
  PLANNED: 'planned',
  IN_OVEN: 'in the oven',
  COOLING: 'cooling',
  COOLED: 'cooled',
  FINISHED: 'dried',
  INTERRUPTED: 'interrupted',
};

export const familyWord: Record<Family, string> = { BULK: 'bulk sorbents', BONDED: 'bonded phases', PLATES: 'plates' };

/** The clock alone: "07:10". */
export const clockTime = (at: string, zone: string): string => labClock(new Date(at), zone).slice(11);

/** "120 g", "8 plates"; of a request in parts, which. */
export function loadAmount({ dryGrams, plates: number, part, parts }: Load): string {
  const amount = number === null ? grams(dryGrams ?? 0) : plates(number);
  return parts > 1 ? `${amount}, part ${part} of ${parts}` : amount;
}

/** "2 trays 10 mm deep", "1 rack". */
export function trayWords({ trays, depthMm, plates: number }: Pick<Load, 'trays' | 'depthMm' | 'plates'>): string {
  if (number !== null) return count(trays, 'rack');
  return `${count(trays, 'tray')}${depthMm === null ? '' : ` ${Number(depthMm.toPrecision(3))}\u00a0mm deep`}`;
}

const few = 3;

/** Labels of what is in it: all of a few, else the first two and how many more. */
export function labelsWords({ loads }: Pick<Run, 'loads'>): string {
  const labels = [...new Set(loads.map(({ container }) => container.label))];
  if (labels.length <= few) return labels.join(', ');
  return `${labels.slice(0, few - 1).join(', ')} and ${labels.length - few + 1} more`;
}

/** "07:10 to 08:40", with the day where it is another one. */
export function spanWords({ start, end }: Pick<Run, 'start' | 'end'>, { now, zone }: Clock): string {
  const [from, to] = [new Date(start), new Date(end)];
  const sameDay = labClock(from, zone).slice(0, 10) === labClock(to, zone).slice(0, 10);
  return `${spokenTime(from, now, zone)} to ${sameDay ? clockTime(end, zone) : spokenTime(to, now, zone)}`;
}

/** The whole of a run for who cannot see the picture. */
export function runSentence(run: Run, clock: Clock): string {
  const { oven, temperatureC, setupMinutes, state, isPinned, coolMinutes } = run;
  const set = state === 'PLANNED' && setupMinutes > 0 ? `, set ${setupMinutes} min before` : '';
  const cool = state === 'PLANNED' || state === 'IN_OVEN' ? `, then ${coolMinutes} min to cool` : '';
  const fixed = isPinned ? ', fixed by hand' : '';
  return `${oven.name}, ${spanWords(run, clock)}, ${temperatureC} °C: ${labelsWords(run)}; ${stateWord[state]}${fixed}${set}${cool}`;
}

interface Reached {
  waterFraction: number | null;
  container: { label: string };
}

/** What the loads came to: "Interrupted: 58F-J5H reached 2.4 % water". */
export function reachedWords(loads: readonly Reached[], done: 'Interrupted' | 'Dried' = 'Interrupted'): string {
  const said = loads.slice(0, few).map(({ waterFraction, container: { label } }) => {
    if (waterFraction === null) return `${label}, water not known`;
    return `${label} ${done === 'Dried' ? 'to' : 'reached'} ${percent(waterFraction, 2)} water`;
  });
  const more = loads.length > few ? `, and ${loads.length - few} more` : '';
  return `${done}: ${said.join(', ')}${more}`;
}
