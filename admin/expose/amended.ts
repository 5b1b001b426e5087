// What of an event was put right, which of its figures can be, and what the timeline says beside it.
import type { FieldSpec } from '../act/field.ts';
import type { Names } from '../act/forms.ts';
import { closureWord, type Closure } from '../say/words.ts';
import type { Event } from './questions.ts';

type Replaced = Pick<Event, 'at' | 'note'>;

/** Only what differs from the event; null when nothing does. Minutes are as fine as one says it. */
export function replacementOf(
  event: Replaced,
  at: Date,
  note: string,
  figures: Record<string, string | number | boolean> = {},
): { at?: string; note?: string } | null {
  const sameMinute = Math.floor(Date.parse(event.at) / 60_000) === Math.floor(at.getTime() / 60_000);
  const sameNote = note.trim() === (event.note ?? '');
  if (sameMinute && sameNote && Object.keys(figures).length === 0) return null;
  return { ...figures, ...(sameMinute ? {} : { at: at.toISOString() }), ...(sameNote ? {} : { note: note.trim() }) };
}

const asItWas = { optional: true, hint: 'Empty: as it was.' } as const;
const grams: FieldSpec = {
  name: 'grams',
  label: 'How much, as the balance shows it',
  kind: 'number',
  unit: 'g',
  ...asItWas,
};
const plates: FieldSpec = { name: 'plates', label: 'How many plates', kind: 'number', ...asItWas };
const temperature: FieldSpec = { name: 'temperatureC', label: 'At', kind: 'number', unit: '°C', ...asItWas };
const water: FieldSpec = {
  name: 'waterFraction',
  label: 'Water found',
  kind: 'number',
  unit: '%',
  scale: 0.01,
  ...asItWas,
};

/** The figures of an event that can be said anew. */
export function figuresOf({ type, plates: counted }: Pick<Event, 'type' | 'plates'>, { rooms }: Names): FieldSpec[] {
  const amount = counted === null ? grams : plates;
  const closures = (['OPEN', 'LOOSELY_COVERED', 'WELL_CLOSED', 'TIGHT', 'SEALED'] satisfies Closure[]).map((value) => {
    return { value, words: closureWord[value] };
  });
  const byType: Record<string, FieldSpec[]> = {
    CAME_IN: [amount],
    CLOSED: [{ name: 'closure', label: 'How', kind: 'choice', choices: closures.slice(1), ...asItWas }],
    MOVED: [{ name: 'room', label: 'To', kind: 'choice', choices: rooms, ...asItWas }],
    PORTION_TAKEN: [amount],
    PLATES_TAKEN: [plates],
    COLUMN_PACKED: [amount],
    DRIED: [temperature, { name: 'minutes', label: 'For', kind: 'number', unit: 'min', ...asItWas }, water],
    EQUILIBRATED: [{ name: 'humidityPercent', label: 'At', kind: 'number', unit: '% RH', ...asItWas }, temperature],
    WEIGHED: [water, temperature],
    COUNTED: [amount],
    LOST: [amount],
    SPENT_ON_CHECK: [amount],
  };
  return byType[type] ?? [];
}

/** Who said it, and whether something else counts instead. */
export function worded({ by, counts, correctedBy }: Pick<Event, 'by' | 'counts' | 'correctedBy'>): string {
  const parts = [by?.role ?? ''];
  if (!counts) parts.push(correctedBy ? 'corrected' : 'does not count');
  return parts.filter(Boolean).join(', ');
}
