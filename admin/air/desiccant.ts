// A desiccator's desiccant in words: how long since it was renewed, when it is due, what that means.
import type { FieldSpec } from '../act/field.ts';
import type { Clock } from '../say/state.ts';
import { spokenDay } from '../say/time.ts';
import { count } from '../say/words.ts';
import type { Room } from './questions.ts';

const dayMs = 86_400_000;

interface Renewal {
  words: string;
  isDue: boolean;
}

export function renewalWords(renewedAt: string | null, everyDays: number, { now, zone }: Clock): Renewal {
  if (renewedAt === null) return { words: 'Nobody said when its desiccant was renewed.', isDue: true };
  const at = new Date(renewedAt);
  const days = Math.floor((now.getTime() - at.getTime()) / dayMs);
  const since = days < 1 ? `renewed ${spokenDay(at, now, zone)}` : `renewed ${count(days, 'day')} ago`;
  const due = new Date(at.getTime() + everyDays * dayMs);
  const isDue = due.getTime() <= now.getTime();
  const next = isDue ? `due since ${spokenDay(due, now, zone)}` : `next ${spokenDay(due, now, zone)}`;
  return { words: `Desiccant ${since}, ${next}.`, isDue };
}

const whyWord = { RENEWED: 'desiccant renewed', READ: 'read off', SAID: 'said' } as const;

/** "Monday 09:00: desiccant renewed, 1 % RH from then on". */
export const stepWords = ({ why, humidityPercent, temperatureC }: Room['assumedAir'][number]): string => {
  const air = humidityPercent === null ? '' : `, ${humidityPercent}\u00a0% RH from then on`;
  const warm = temperatureC === null ? '' : ` at ${temperatureC}\u00a0°C`;
  return `${whyWord[why]}${air}${warm}`;
};

const at: FieldSpec = {
  name: 'at',
  label: 'When',
  kind: 'time',
  optional: true,
  hint: 'Empty: now.',
};
export const renewFields: readonly FieldSpec[] = [
  {
    name: 'humidityPercent',
    label: 'Humidity from then on',
    kind: 'number',
    unit: '% RH',
    optional: true,
    hint: 'Fresh silica gel: below 1. Counts from the renewal on where nothing is read. Empty: as it was taken for granted before.',
  },
  at,
];
export const dialFields: readonly FieldSpec[] = [
  { name: 'humidityPercent', label: 'It shows', kind: 'number', unit: '% RH' },
  { name: 'temperatureC', label: 'Temperature', kind: 'number', unit: '°C', optional: true },
  at,
];
export const assumedFields: readonly FieldSpec[] = [
  {
    name: 'humidityPercent',
    label: 'Humidity where nothing is read',
    kind: 'number',
    unit: '% RH',
    optional: true,
    hint: 'For all time before the first note or reading. Empty: nothing is taken for granted.',
  },
  { name: 'temperatureC', label: 'Temperature', kind: 'number', unit: '°C', optional: true, hint: '20 °C when empty.' },
];
