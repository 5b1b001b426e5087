// Timelines as they lie in the database: what stands of them, in order, and how a container stands by them.
import type { Container, Event, Prisma } from '../database/generated/sqlite/client.ts';
import { layerDensityKgPerM3 } from '../science/properties.ts';
import type { Transaction } from '../work.ts';
import { storedCarried } from './carried.ts';
import { saidOf } from './details.ts';
import { regimeColumns } from './prepared.ts';
import { isOpen, type Base, type Entry, type Stand } from './stand.ts';

/** Dry sorbent on one plate, g: 0.1 kg/m² at 0.25 mm, in proportion for other layers; null for what holds no plates. */
export function dryGramsPerPlate(
  of: Pick<Container, 'layerThicknessMm' | 'plateWidthMm' | 'plateHeightMm'>,
): number | null {
  if (of.layerThicknessMm === null || of.plateWidthMm === null || of.plateHeightMm === null) return null;
  // kg/m³ are 1e-6 g/mm³.
  return (layerDensityKgPerM3 * of.layerThicknessMm * of.plateWidthMm * of.plateHeightMm) / 1e6;
}

export const baseOf = (container: Container): Base => ({
  kind: container.kind,
  usualClosure: container.usualClosure,
  dryGramsPerPlate: container.kind === 'PLATE_BOX' ? dryGramsPerPlate(container) : null,
});

/** An event as a container sees it. */
export function entryOf(event: Omit<Event, 'carried'> & { carried?: unknown }, containerId: string): Entry {
  return {
    ...saidOf(event.type, event.detail),
    id: event.id,
    at: event.at,
    place: event.place,
    role: event.containerId === containerId ? 'own' : 'filled',
    dryGrams: event.dryGrams,
    plates: event.plates,
    carried: storedCarried.parse(event.carried),
  };
}

/** What stands of the containers' timelines: neither corrected nor void, in order, the fills of others included. */
export const standing = (containerIds: string[]): Prisma.EventFindManyArgs => ({
  where: {
    stands: true,
    OR: [{ containerId: { in: containerIds } }, { otherContainerId: { in: containerIds } }],
  },
  orderBy: [{ at: 'asc' }, { place: 'asc' }],
});

/** The timeline of one container, in order. */
export async function timelineOf(tx: Pick<Transaction, 'event'>, containerId: string): Promise<Entry[]> {
  const events = await tx.event.findMany(standing([containerId]));
  return events.map((event) => entryOf(event, containerId));
}

/** The now-columns of a container that stands so. */
export const nowColumns = (stand: Stand) => ({
  cameInAt: stand.cameInAt,
  roomId: stand.roomId,
  isOpen: isOpen(stand),
  openedAt: isOpen(stand) ? stand.openedAt : null,
  closure: stand.closure,
  dryGrams: stand.dryGrams,
  dryGramsAssumed: stand.dryGramsAssumed,
  plates: stand.plates,
  scooping: stand.scooping,
  wettedAt: stand.wettedAt,
  touchedSolventAt: stand.touchedSolventAt,
  ...regimeColumns(stand),
  finishedAt: stand.finishedAt,
  isVoid: false,
});

/** The now-columns of what never was, its making having been taken back. */
export const voidColumns = (at: Date) => ({
  isOpen: false,
  openedAt: null,
  dryGrams: 0,
  heldDryGrams: 0,
  heldPlates: 0,
  finishedAt: at,
  isVoid: true,
});
