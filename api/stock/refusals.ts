// Says what cannot be true in a person's words: the new event itself, or a later recorded one that it would break.
import type { Container, Event } from '../database/generated/sqlite/client.ts';
import { Refused } from '../errors.ts';
import type { Transaction } from '../work.ts';
import { saidOf } from './details.ts';
import { globalId } from './ids.ts';
import { roomIdIn, sentenceOf } from './sentence.ts';
import type { Impossible } from './stand.ts';
import { words } from './words.ts';

/** The sentences of some events, in their order. */
export async function sentencesOf(tx: Transaction, events: Event[]): Promise<string[]> {
  const said = events.map((event) => saidOf(event.type, event.detail));
  const others = events.flatMap((event) => event.otherContainerId ?? []);
  const rooms = said.flatMap((each) => roomIdIn(each) ?? []);
  const labels = new Map(
    (await tx.container.findMany({ where: { id: { in: others } } })).map((row) => [row.id, row.label]),
  );
  const names = new Map((await tx.room.findMany({ where: { id: { in: rooms } } })).map((row) => [row.id, row.name]));
  return events.map((event, at) => {
    const one = said[at] ?? saidOf(event.type, event.detail);
    const other = labels.get(event.otherContainerId ?? '') ?? null;
    const room = names.get(roomIdIn(one) ?? '') ?? null;
    return sentenceOf(one, { dryGrams: event.dryGrams, plates: event.plates, other, room });
  });
}

function valueOf(impossible: Impossible, container: Container): unknown {
  const { entry, about } = impossible;
  if (about === 'at') return entry.at.toISOString();
  if (about === 'label') return container.label;
  if (about === 'plates') return entry.plates;
  return 'grams' in entry.detail ? (entry.detail.grams ?? entry.dryGrams) : entry.dryGrams;
}

/** The refusal of an event that cannot be true of this container. */
export function refusedItself(impossible: Impossible, container: Container, under: string): Refused {
  const { about, why, expected } = impossible;
  const path = `${under}.${about}`;
  const value = String(valueOf(impossible, container));
  const of = about === 'label' ? '' : ` (${container.label})`;
  return new Refused(`invalid ${path}: ${value}, ${why}${of}; ${expected}`, path, expected);
}

/** The refusal of an event after which others, recorded earlier, could not be true. */
export async function refusedByLater(
  tx: Transaction,
  broken: Event[],
  why: string,
  container: Container,
  fresh: Event,
): Promise<Refused> {
  const sentences = await sentencesOf(tx, broken);
  const list = broken.map(
    (event, at) => `"${sentences[at]}" of ${words.time(event.at)} (event ${globalId('Event', event.id)})`,
  );
  const expected = `another time or amount, or first a correction of ${list.join(', ')}`;
  const value = fresh.type === 'CORRECTED' ? 'this event' : fresh.at.toISOString();
  const path = fresh.type === 'CORRECTED' ? 'input.event' : 'input.at';
  const message = `invalid ${path}: ${value}, ${list.join(', ')} of ${container.label} could not be true: ${why}; correct that first`;
  return new Refused(message, path, expected);
}
