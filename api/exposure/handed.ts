// What one container hands to another: who waits for it, and what changed in it.
import type { ParcelRow } from '../database/exposures.ts';
import type { FleetContainer, FleetEvent } from '../database/fleet.ts';
import type { FoldOutput } from '../science/history.ts';
import { parcelBytes, sameBytes } from './parcels.ts';
import type { Reading } from './reading.ts';
import { isHandedOver } from './start.ts';

/** A container waits for what another one hands over by this event. */
export interface Wait {
  readonly id: string;
  readonly event: FleetEvent;
  /** The source handed over nothing that is kept: it must be brought there again. */
  readonly asks: boolean;
}

/**
 * The first thing that a container waits for: its source is stale, or has to be asked. Each event is asked for once, lest a
 * source that hands over nothing is asked for ever.
 */
export function waitOf(container: FleetContainer, reading: Reading, asked: Set<string>): Wait | null {
  for (const event of reading.events.get(container.id) ?? []) {
    if (!isHandedOver(event) || reading.arrived.has(event.eventId)) continue;
    const staleFrom = reading.sources.get(event.containerId) ?? null;
    if (staleFrom !== null && staleFrom <= event.at) return { id: container.id, event, asks: false };
    if (asked.has(event.eventId)) continue;
    asked.add(event.eventId);
    return { id: container.id, event, asks: true };
  }
  return null;
}

export interface Handed {
  readonly parcels: readonly ParcelRow[];
  readonly goneParcels: readonly string[];
  /** Containers whose parcels changed, and since when, ms. */
  readonly receivers: readonly (readonly [id: string, ms: number])[];
}

/** What a fold handed over until `asOfS`, against what is stored of it. */
export function handedBy(
  containerId: string,
  labId: string,
  handovers: FoldOutput['handovers'],
  asOfS: number,
  reading: Reading,
): Handed {
  const stored = new Map((reading.left.get(containerId) ?? []).map((parcel) => [parcel.eventId, parcel]));
  const events = new Map((reading.events.get(containerId) ?? []).map((event) => [event.eventId, event]));
  const parcels: ParcelRow[] = [];
  const receivers: [string, number][] = [];
  for (const { id: eventId, dryKg, handover } of handovers) {
    const event = events.get(eventId);
    const toContainerId = event?.otherContainerId;
    if (!event || !toContainerId) continue;
    const data = parcelBytes({ dryKg, handover });
    const before = stored.get(eventId);
    stored.delete(eventId);
    if (before && before.toContainerId === toContainerId && sameBytes(before.data, data)) continue;
    parcels.push({ eventId, labId, fromContainerId: containerId, toContainerId, at: event.at, data });
    receivers.push([toContainerId, event.at]);
  }
  const gone = [...stored.values()].filter(({ at }) => at / 1000 <= asOfS);
  receivers.push(...gone.map(({ toContainerId, at }) => [toContainerId, at] as [string, number]));
  return { parcels, receivers, goneParcels: gone.map(({ eventId }) => eventId) };
}
