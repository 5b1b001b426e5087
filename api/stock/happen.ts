// Something happened to a container that is there: finds it, books what was said, records it.
import type { z } from 'zod';
import type { Container } from '../database/generated/sqlite/client.ts';
import { checked } from '../errors.ts';
import type { Work } from '../work.ts';
import type { Scene } from './leaving.ts';
import { outgoing } from './outgoing.ts';
import { recorded, type Booking, type Recorded } from './record.ts';
import { standAt } from './rules.ts';
import { staying } from './staying.ts';
import { baseOf, timelineOf } from './timeline.ts';
import type { Way } from './way.ts';

/** Every way, by type. */
export const ways = { ...staying, ...outgoing };
export type Happens = keyof typeof ways;
/** What may be said, before what is left out gets its default. */
export type SaidOf<T extends Happens> = z.input<(typeof ways)[T]['said']>;

/** The container at an instant, as its timeline has it, leaving out an event that is being corrected. */
export async function sceneOf(
  work: Work,
  container: Container,
  at: Date,
  { without = null, under = 'input' }: { without?: string | null; under?: string } = {},
): Promise<Scene> {
  const entries = (await timelineOf(work.tx, container.id)).filter((entry) => entry.id !== without);
  return { work, container, at, entries, stand: standAt(baseOf(container), entries, at), under };
}

export interface What<T extends Happens> {
  type: T;
  container: Container;
  /** The container that is made or filled by it. */
  other?: Container;
  at: Date;
  note: string | null;
  said: SaidOf<T>;
}

/** What was said, booked. */
export async function booked(type: Happens, scene: Scene, said: unknown): Promise<Booking> {
  const way: Way = ways[type];
  return way.book(scene, checked(way.said, said, scene.under));
}

/** Books and records one event. */
export async function happened<T extends Happens>(work: Work, what: What<T>): Promise<Recorded> {
  const { type, container, other, at, note, said } = what;
  const booking = await booked(type, await sceneOf(work, container, at), said);
  return recorded(work, { container, other: other ?? null, at, note, booking });
}
