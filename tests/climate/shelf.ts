// A container in a room, put there by hand: only what the climate room looks at.
import type { Context } from '../../api/context.ts';
import { newId } from '../../api/work.ts';
import { start } from './lab.ts';

async function lotOf({ database, lab }: Context): Promise<string> {
  const there = await database.read.lot.findFirst({ where: { labId: lab.id } });
  if (there) return there.id;
  const [sorbentId, id] = [newId(), newId()];
  const sorbent = { id: sorbentId, labId: lab.id, name: 'silica', sorbentClass: 'silica' };
  const lot = { id, labId: lab.id, sorbentId, lotNumber: '1', receivedAt: new Date(start), certificate: [] };
  await database.write(async (tx) => {
    await tx.sorbent.create({ data: sorbent });
    await tx.lot.create({ data: lot });
  });
  return id;
}

/** A container that came into a room at the start; gives its id. */
export async function container(context: Context, roomId: string): Promise<string> {
  const id = newId();
  const lotId = await lotOf(context);
  const labId = context.lab.id;
  const closures = { closure: 'OPEN', usualClosure: 'TIGHT' } as const;
  const kept = { roomId, cameInAt: new Date(start), isOpen: true, dryGrams: 500 };
  await context.database.write(async (tx) => {
    await tx.container.create({
      data: { id, labId, label: id.slice(-12), kind: 'PORTION', lotId, ...closures, ...kept },
    });
    const exposure = { asOf: new Date(start), state: 'UNKNOWN', urgency: 0, reason: 'not estimated yet' } as const;
    await tx.exposure.create({ data: { containerId: id, labId, version: 1, ...exposure } });
  });
  return id;
}

let recorded = 0;

/** It was moved into another room at an instant. */
export async function move({ database, lab }: Context, containerId: string, roomId: string, at: Date): Promise<void> {
  recorded += 1;
  const event = { id: newId(), labId: lab.id, containerId, type: 'MOVED', at, recordedAt: at } as const;
  await database.write(async (tx) => {
    await tx.event.create({ data: { ...event, recordedSeq: recorded, place: recorded, detail: { roomId } } });
    await tx.container.update({ where: { id: containerId }, data: { roomId } });
  });
}

/** From when on a container's estimate is known to be out of date. */
export async function staleFrom({ database }: Context, containerId: string): Promise<Date | null> {
  return (await database.read.exposure.findUniqueOrThrow({ where: { containerId } })).staleFrom;
}

/** As if everything had just been estimated. */
export async function settle({ database }: Context): Promise<void> {
  await database.write((tx) => tx.exposure.updateMany({ data: { staleFrom: null } }));
}
