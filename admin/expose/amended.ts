// What of an event was put right, which of its figures can be, and what the timeline says beside it.
import { bases, lids, open, weighedParts, weighingMethods } from '../act/choices.ts';
import type { FieldSpec } from '../act/field.ts';
import type { Names } from '../act/spec.ts';
import { scoopings } from './habits.ts';
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

const minutes: FieldSpec = { name: 'minutes', label: 'For', kind: 'number', unit: 'min', ...asItWas };
const depth: FieldSpec = { name: 'depthMm', label: 'Depth in the tray', kind: 'number', unit: 'mm', ...asItWas };
const cooledOpen: FieldSpec = {
  name: 'minutesToClosed',
  label: 'Cooled in the open for',
  kind: 'number',
  unit: 'min',
  ...asItWas,
};
const lidOff: FieldSpec = { name: 'openMinutes', label: 'Lid off for', kind: 'number', unit: 'min', ...asItWas };
const room: Omit<FieldSpec, 'choices'> = { name: 'room', label: 'To', kind: 'choice', ...asItWas };
const textOf = (name: string, label: string): FieldSpec => ({ name, label, kind: 'text', ...asItWas });
const scooped: FieldSpec = { name: 'scooping', label: 'Scooped', kind: 'choice', choices: scoopings, ...asItWas };
const basis: FieldSpec = { name: 'basis', label: 'Counted on', kind: 'choice', choices: bases, ...asItWas };
const weighedPart: FieldSpec = { name: 'of', label: 'Of', kind: 'choice', choices: weighedParts, ...asItWas };
const method: FieldSpec = { name: 'method', label: 'How', kind: 'choice', choices: weighingMethods, ...asItWas };
const humidity: FieldSpec = { name: 'humidityPercent', label: 'At', kind: 'number', unit: '% RH', ...asItWas };
const startWater: FieldSpec = {
  name: 'startWaterFraction',
  label: 'Water when it came in, dry basis',
  kind: 'number',
  unit: '%',
  scale: 0.01,
  ...asItWas,
};

/** What of an event can be said anew, by its type; each field as the correction takes it. */
export function figuresOf({ type, plates: counted }: Pick<Event, 'type' | 'plates'>, { rooms }: Names): FieldSpec[] {
  const amount = counted === null ? [grams, basis] : [plates];
  const closure: FieldSpec = { name: 'closure', label: 'How', kind: 'choice', choices: lids, ...asItWas };
  const stands: FieldSpec = { ...closure, choices: [...lids, open], label: 'The new one stands' };
  const why = textOf('why', 'Why');
  const byType: Record<string, FieldSpec[]> = {
    CAME_IN: [...amount, startWater, { ...room, choices: rooms, label: 'Room' }],
    CLOSED: [closure],
    MOVED: [{ ...room, choices: rooms }],
    PORTION_TAKEN: [grams, basis, lidOff, scooped, stands],
    PLATES_TAKEN: [plates, lidOff, stands],
    COLUMN_PACKED: [grams, basis, lidOff],
    DRIED: [temperature, minutes, ...(counted === null ? [depth] : []), cooledOpen, water],
    EQUILIBRATED: [humidity, temperature],
    WEIGHED: [water, basis, weighedPart, method, temperature],
    COUNTED: [
      ...amount,
      ...(counted === null
        ? [{ name: 'grossGrams', label: 'With its vessel', kind: 'number', unit: 'g', ...asItWas } as const]
        : []),
    ],
    COMBINED: [grams, basis],
    HABIT_SET: [
      { name: 'timesADay', label: 'Times a working day', kind: 'number', ...asItWas },
      { ...minutes, label: 'Each for' },
      scooped,
    ],
    TOUCHED_SOLVENT: [textOf('what', 'Which solvent or sample')],
    PRE_WASHED: [textOf('solvent', 'Which solvent')],
    CONDITIONED: [
      textOf('mobilePhase', 'Mobile phase'),
      { name: 'columnVolumes', label: 'Column volumes', kind: 'number', ...asItWas },
    ],
    INTERRUPTED: [why],
    NOT_FOUND: [why],
    LOST: [...amount, why],
    DISCARDED: [...amount, why],
    SPENT_ON_CHECK: [...amount, textOf('what', 'Which check')],
  };
  return byType[type] ?? [];
}

/** Who said it, and whether something else counts instead. */
export function worded({ by, counts, correctedBy }: Pick<Event, 'by' | 'counts' | 'correctedBy'>): string {
  const parts = [by?.role ?? ''];
  if (!counts) parts.push(correctedBy ? 'corrected' : 'does not count');
  return parts.filter(Boolean).join(', ');
}
