// The way from what was said to what is booked: one for each type of event, used by the mutation that
// records it and again by the one that corrects it.
import type { z } from 'zod';
import { details, type DetailOf, type EventType, type Said } from './details.ts';
import type { Scene } from './leaving.ts';
import type { Booking } from './record.ts';

/** What a way makes of what was said: the event's detail, and what leaves (or at a beginning comes in). */
export interface Part<T extends EventType> {
  detail: DetailOf<T>;
  dryGrams?: number | null;
  plates?: number | null;
  notes?: string[];
}

export interface Way<S extends z.ZodType = z.ZodType> {
  /** What may be said. */
  said: S;
  // A method, so that a way of one type can stand where any way is wanted.
  book(scene: Scene, said: z.output<S>): Promise<Booking>;
}

export function way<T extends EventType, S extends z.ZodType>(
  type: T,
  said: S,
  part: (scene: Scene, said: z.output<S>) => Promise<Part<T>> | Part<T>,
): Way<S> {
  return {
    said,
    async book(scene, what) {
      const { detail, dryGrams = null, plates = null, notes = [] } = await part(scene, what);
      return { said: { type, detail: details[type].parse(detail) } as Said, dryGrams, plates, notes };
    },
  };
}
