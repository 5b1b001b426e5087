// A shelf count: what was found in a room and what was not, put on the book in one act, all of it or nothing.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { Container, Event, Room } from '../database/generated/sqlite/client.ts';
import { invalid, missing } from '../errors.ts';
import { write, type Work } from '../work.ts';
import { takenBack } from './correct.ts';
import { countSaid } from './count.ts';
import { containerOf, roomOf } from './find.ts';
import { booked, sceneOf, type Happens, type SaidOf } from './happen.ts';
import { recorded, type Recorded } from './record.ts';
import { said } from './said.ts';

const foundSaid = countSaid.extend({ label: said.label });

const missedSaid = z.object({
  label: said.label,
  as: z.enum(['NOT_FOUND', 'USED_UP', 'MOVED'], 'NOT_FOUND, USED_UP or MOVED'),
  room: said.name.nullish(),
  note: said.text,
});

export const shelfCountSaid = z
  .object({
    room: said.name,
    at: said.at,
    found: z.array(foundSaid).max(500, 'at most 500 in one count').nullish(),
    missed: z.array(missedSaid).max(500, 'at most 500 in one count').nullish(),
    clientKey: said.clientKey,
  })
  .refine(({ found, missed }) => (found?.length ?? 0) + (missed?.length ?? 0) > 0, {
    path: ['found'],
    message: 'at least one container that was found, or missed',
  });

type Found = z.output<typeof foundSaid>;
type Missed = z.output<typeof missedSaid>;

export type ShelfCounted = { roomId: string; eventIds: string[]; asBookedIds: string[]; notes: string[] };

/** One count being written: where, when, and what came of it so far. */
interface Counting {
  work: Work;
  room: Room;
  at: Date;
  eventIds: string[];
  asBookedIds: string[];
  notes: string[];
  /** Containers named so far, so that none is told twice. */
  named: Set<string>;
}

function kept(counting: Counting, container: Container, { eventId, notes }: Recorded): void {
  counting.eventIds.push(eventId);
  for (const note of notes) counting.notes.push(`${container.label}: ${note}`);
}

async function happensTo<T extends Happens>(
  counting: Counting,
  container: Container,
  under: string,
  type: T,
  what: SaidOf<T>,
  note: string | null = null,
): Promise<void> {
  const { work, at } = counting;
  const booking = await booked(type, await sceneOf(work, container, at, { under }), what);
  kept(counting, container, await recorded(work, { container, at, note, booking, under }));
}

async function containerAt(counting: Counting, label: string, path: string): Promise<Container> {
  const container = await containerOf(counting.work, label, path);
  if (counting.named.has(container.id)) throw invalid(path, container.label, 'each container once');
  counting.named.add(container.id);
  return container;
}

/** What ended a container that stands on the shelf all the same: it was said to be used up or discarded. */
function endingOf({ work }: Counting, container: Container): Promise<Event | null> {
  const where = { containerId: container.id, stands: true, type: { in: ['USED_UP' as const, 'DISCARDED' as const] } };
  return work.tx.event.findFirst({ where, orderBy: [{ at: 'desc' }, { place: 'desc' }] });
}

const again = (work: Work, { id }: Container): Promise<Container> =>
  work.tx.container.findUniqueOrThrow({ where: { id } });

async function foundHere(counting: Counting, { label, ...amount }: Found, under: string): Promise<void> {
  const { work, room } = counting;
  const before = counting.eventIds.length;
  let container = await containerAt(counting, label, `${under}.label`);
  if (container.finishedAt) {
    const ending = await endingOf(counting, container);
    if (ending) {
      const why = `found at a shelf count of ${room.name}`;
      kept(counting, container, await takenBack(work, ending.id, why));
      container = await again(work, container);
    }
  }
  const counted = [amount.grams, amount.plates, amount.grossGrams].some((each) => each !== null);
  if (container.finishedAt && !counted) {
    const what = container.kind === 'PLATE_BOX' ? 'plates' : 'grams';
    throw missing(`${under}.${what}`, `how much is in ${container.label}: by the book nothing is left in it`);
  }
  if (counted) await happensTo(counting, container, under, 'COUNTED', amount);
  if (container.roomId !== room.id) await happensTo(counting, container, under, 'MOVED', { roomId: room.id });
  if (counting.eventIds.length === before) counting.asBookedIds.push(container.id);
}

async function missedHere(counting: Counting, { label, as, room, note }: Missed, under: string): Promise<void> {
  const container = await containerAt(counting, label, `${under}.label`);
  if (as === 'USED_UP') return happensTo(counting, container, under, 'USED_UP', {}, note);
  if (as === 'NOT_FOUND') return happensTo(counting, container, under, 'NOT_FOUND', { why: note });
  if (!room) throw missing(`${under}.room`, 'the room it was moved to');
  const to = await roomOf(counting.work, room, `${under}.room`);
  return happensTo(counting, container, under, 'MOVED', { roomId: to.id }, note);
}

/** Puts the book right by a shelf count. */
export function shelfCounted(context: Context, input: z.output<typeof shelfCountSaid>): Promise<ShelfCounted> {
  return write(context, 'recordShelfCount', input, async (work) => {
    const room = await roomOf(work, input.room);
    const begun = { eventIds: [], asBookedIds: [], notes: [], named: new Set<string>() };
    const counting: Counting = { work, room, at: input.at ?? work.now, ...begun };
    for (const [i, found] of (input.found ?? []).entries()) await foundHere(counting, found, `input.found.${i}`);
    for (const [i, missed] of (input.missed ?? []).entries()) await missedHere(counting, missed, `input.missed.${i}`);
    const { eventIds, asBookedIds, notes } = counting;
    return { roomId: room.id, eventIds, asBookedIds, notes };
  });
}
