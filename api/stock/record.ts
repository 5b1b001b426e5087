// Writes an event and folds every timeline it touches; refuses, and with it the whole transaction, what cannot be true.
import { Prisma, type Container, type Event } from '../database/generated/sqlite/client.ts';
import { invalid } from '../errors.ts';
import { newId, type Work } from '../work.ts';
import { nextNumber } from './counter.ts';
import type { Said } from './details.ts';
import { refusedByLater, refusedItself } from './refusals.ts';
import { carriedOf, sameCarried, type Carried } from './carried.ts';
import { fold } from './rules.ts';
import { isOrigin } from './stand.ts';
import { baseOf, entryOf, nowColumns, standing, voidColumns } from './timeline.ts';
import { grams, words } from './words.ts';

/** What is written: the type's words, and the amount that leaves (or, at a beginning, comes in). */
export interface Booking {
  said: Said;
  dryGrams: number | null;
  plates: number | null;
  /** What disagreed and was put right while booking. */
  notes: string[];
}

/** Answer of every event mutation: ids, and what disagrees but was kept. */
export type Recorded = { eventId: string; containerId: string; madeId: string | null; notes: string[] };

/** How far ahead of the server's clock a happening may lie: clocks differ. */
const futureMinutes = 5;

export interface Happening {
  container: Container;
  /** The container that is made or filled by it. */
  other?: Container | null;
  at: Date;
  note?: string | null | undefined;
  booking: Booking;
  /** The event it supersedes, and the place it takes over. */
  corrects?: { id: string; place: number } | null;
  /** Where the amounts stand in the input. */
  under?: string;
}

/** Told after each event, in the same transaction; gives notes on it. */
export type Listener = (work: Work, event: Event) => Promise<string[]>;
const listeners: Listener[] = [];
export const onRecorded = (listener: Listener): void => {
  listeners.push(listener);
};

/** More than five minutes from now. */
export const isAhead = (at: Date, now: Date): boolean => at.getTime() > now.getTime() + futureMinutes * 60_000;

/** Refuses an instant more than five minutes ahead. */
export function checkNotFuture(at: Date, now: Date, path: string): void {
  if (!isAhead(at, now)) return;
  throw invalid(
    path,
    at.toISOString(),
    `not later than now (${now.toISOString()}); ${futureMinutes} minutes ahead at most`,
  );
}

async function written(work: Work, happening: Happening): Promise<Event> {
  const { container, other, at, note, booking, corrects } = happening;
  const recordedSeq = await nextNumber(work, 'event');
  return work.tx.event.create({
    data: {
      id: newId(),
      labId: work.labId,
      containerId: container.id,
      otherContainerId: other?.id ?? null,
      type: booking.said.type,
      at,
      recordedAt: work.now,
      recordedSeq,
      actorId: work.actorId,
      note: note ?? null,
      detail: booking.said.detail,
      dryGrams: booking.dryGrams,
      plates: booking.plates,
      correctsId: corrects?.id ?? null,
      stands: booking.said.type !== 'CORRECTED',
      place: corrects?.place ?? recordedSeq,
    },
  });
}

/** Folds a container's timeline anew and keeps how it stands now; gives the notes on the new event. */
export async function settled(work: Work, container: Container, fresh: Event, under = 'input'): Promise<string[]> {
  const { tx } = work;
  const events = await tx.event.findMany(standing([container.id]));
  const keep = async (data: Prisma.ContainerUncheckedUpdateInput) => {
    await tx.container.update({ where: { id: container.id }, data });
    work.changed('Container', container.id, data.isVoid === true ? 'GONE' : 'CHANGED');
  };
  if (events.length === 0) {
    await tx.hold.updateMany({
      where: { containerId: container.id, releasedAt: null },
      data: { releasedAt: work.now },
    });
    await keep(voidColumns(fresh.at));
    return [];
  }
  const entries = events.map((event) => entryOf(event, container.id));
  const own = events.filter((event) => event.id !== fresh.id);
  if (!entries.some(isOrigin)) throw await refusedByLater(tx, own, 'it would never have been there', container, fresh);
  const carries = new Map<string, Carried | null>();
  const { stand, notes, impossible } = fold(baseOf(container), entries, (entry, before) => {
    if (entry.role === 'own' && before) carries.set(entry.id, carriedOf(before));
  });
  if (impossible) {
    if (impossible.entry.id === fresh.id) throw refusedItself(impossible, container, under);
    const broken = events.filter((event) => event.id === impossible.entry.id);
    throw await refusedByLater(tx, broken, impossible.why, container, fresh);
  }
  const prepared = stand.prepared ?? Prisma.DbNull;
  await keep({ ...nowColumns(stand), habit: stand.habit ?? Prisma.DbNull, prepared });
  await passedOn(work, events, carries, fresh);
  const about = notes.filter((note) => note.entryId === fresh.id).map((note) => note.text);
  return [...about, ...promised(container, stand.dryGrams, stand.plates)];
}

/** What went into other containers takes along how it stood; where that is otherwise now, they are folded anew too. */
async function passedOn(
  work: Work,
  events: readonly Event[],
  carries: ReadonlyMap<string, Carried | null>,
  fresh: Event,
): Promise<void> {
  const { tx } = work;
  for (const event of events) {
    const carried = carries.get(event.id);
    if (!event.otherContainerId || carried === undefined) continue;
    if (sameCarried(carried, event.carried)) continue;
    await tx.event.update({ where: { id: event.id }, data: { carried: carried ?? Prisma.DbNull } });
    // What a fresh event made is settled next by whoever recorded it.
    if (event.id === fresh.id) continue;
    const other = await tx.container.findUniqueOrThrow({ where: { id: event.otherContainerId } });
    await settled(work, other, fresh);
    work.stale(other.id, event.at);
  }
}

/** What is promised to somebody and no longer there. */
function promised(container: Container, dryGrams: number, plates: number | null): string[] {
  const notes: string[] = [];
  if (container.heldDryGrams > dryGrams) {
    notes.push(`${grams(container.heldDryGrams)} (dry) of it are kept for somebody, ${grams(dryGrams)} are left`);
  }
  if (plates !== null && container.heldPlates > plates) {
    notes.push(`${words.plates(container.heldPlates)} of it are kept for somebody, ${plates} are left`);
  }
  return notes;
}

/** Records an event. Everything it touches is refolded; notes say what disagrees and was kept. */
export async function recorded(work: Work, happening: Happening): Promise<Recorded> {
  const { container, other, at, booking, under } = happening;
  checkNotFuture(at, work.now, `${under ?? 'input'}.at`);
  const event = await written(work, happening);
  work.changed('Event', event.id, 'MADE');
  const notes = [...booking.notes];
  for (const touched of [container, ...(other ? [other] : [])]) {
    notes.push(...(await settled(work, touched, event, under)));
    work.stale(touched.id, at);
  }
  for (const listener of listeners) notes.push(...(await listener(work, event)));
  return { eventId: event.id, containerId: container.id, madeId: other?.id ?? null, notes };
}
