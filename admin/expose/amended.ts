// What of an event was put right, and what the timeline says beside it.
import type { Event } from './questions.ts';

type Replaced = Pick<Event, 'at' | 'note'>;

/** Only what differs from the event; null when nothing does. Minutes are as fine as one says it. */
export function replacementOf(event: Replaced, at: Date, note: string): { at?: string; note?: string } | null {
  const sameMinute = Math.floor(Date.parse(event.at) / 60_000) === Math.floor(at.getTime() / 60_000);
  const sameNote = note.trim() === (event.note ?? '');
  if (sameMinute && sameNote) return null;
  return { ...(sameMinute ? {} : { at: at.toISOString() }), ...(sameNote ? {} : { note: note.trim() }) };
}

/** Who said it, and whether something else counts instead. */
export function worded({ by, counts, correctedBy }: Pick<Event, 'by' | 'counts' | 'correctedBy'>): string {
  const parts = [by?.role ?? ''];
  if (!counts) parts.push(correctedBy ? 'corrected' : 'does not count');
  return parts.filter(Boolean).join(', ');
}
