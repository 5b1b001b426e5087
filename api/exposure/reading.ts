// Everything that a chunk of containers' estimates is made from, read in a constant number of statements.
import * as fleet from '../database/fleet.ts';
import type { FleetContainer, FleetEvent } from '../database/fleet.ts';
import type { Reader } from '../database/reader.ts';
import type { Checkpoint } from '../science/history.ts';
import { needsWhole } from './history.ts';
import { type Parcel, parcelOf } from './parcels.ts';
import { isHandedOver } from './start.ts';

const dayMs = 86_400_000;
/** Checkpoints younger than this are all kept. */
const keptAllMs = 8 * dayMs;
/** Before anything happened. */
const beginning = -1;

export interface StoredParcel {
  readonly eventId: string;
  readonly toContainerId: string;
  readonly at: number;
  readonly data: Uint8Array;
}

export interface Reading {
  readonly containers: readonly FleetContainer[];
  readonly checkpoints: ReadonlyMap<string, Checkpoint>;
  readonly events: ReadonlyMap<string, readonly FleetEvent[]>;
  /** What came in by events, by the events' ids. */
  readonly arrived: ReadonlyMap<string, Parcel>;
  /** What left each container after its checkpoint, as stored. */
  readonly left: ReadonlyMap<string, readonly StoredParcel[]>;
  /** When the older checkpoints of each container stand, where some may have to go. */
  readonly older: ReadonlyMap<string, readonly number[]>;
  /** From when on the sources of parcels that are missing are stale. */
  readonly sources: ReadonlyMap<string, number | null>;
}

function grouped<Row>(rows: readonly Row[], keyOf: (row: Row) => string): Map<string, Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const group = groups.get(keyOf(row));
    if (group) group.push(row);
    else groups.set(keyOf(row), [row]);
  }
  return groups;
}

async function eventsSince(
  reader: Reader,
  containers: readonly FleetContainer[],
  checkpoints: ReadonlyMap<string, Checkpoint>,
): Promise<Map<string, FleetEvent[]>> {
  const since = (id: string) => (checkpoints.get(id)?.atS ?? beginning / 1000) * 1000;
  const habits = new Set(containers.flatMap(({ id, hasHabit }) => (hasHabit ? [id] : [])));
  const instants = containers.map(({ id }) => [id, habits.has(id) ? beginning : since(id)] as const);
  const events = grouped(await fleet.eventsAfter(reader, instants), ({ id }) => id);
  const whole = containers.filter(
    ({ id }) => checkpoints.has(id) && !habits.has(id) && needsWhole(events.get(id) ?? []),
  );
  if (whole.length > 0) {
    const again = await fleet.eventsAfter(
      reader,
      whole.map(({ id }) => [id, beginning] as const),
    );
    for (const [id, rows] of grouped(again, (row) => row.id)) events.set(id, rows);
  }
  return events;
}

/** Reads what the estimates of these containers at `asOfMs` need, each from its last checkpoint before its inputs changed. */
export async function readingOf(reader: Reader, ids: readonly string[], asOfMs: number): Promise<Reading> {
  const containers = await fleet.fleetContainers(reader, ids);
  const before = containers.map(({ id, staleFrom }) => [id, Math.min(staleFrom ?? Infinity, asOfMs + 1)] as const);
  const checkpoints = new Map(
    (await fleet.checkpointsBefore(reader, before)).map(
      ({ containerId, at, data }) => [containerId, { atS: at / 1000, bytes: data }] as const,
    ),
  );
  const events = await eventsSince(reader, containers, checkpoints);
  const all = [...events.values()].flat();

  const handedOver = all.filter(isHandedOver);
  const arrivals =
    handedOver.length === 0
      ? []
      : await fleet.parcelsOf(
          reader,
          handedOver.map((event) => event.eventId),
        );
  const arrived = new Map(arrivals.map(({ eventId, data }) => [eventId, parcelOf(data)] as const));
  const lacking = handedOver.filter(({ eventId }) => !arrived.has(eventId)).map(({ containerId }) => containerId);
  const sources = lacking.length === 0 ? [] : await fleet.stalenessOf(reader, [...new Set(lacking)]);

  const givers = new Set(all.flatMap((event) => (event.role === 'own' && event.otherContainerId ? [event.id] : [])));
  const leaving = containers
    .filter(({ id, staleFrom }) => staleFrom !== null || givers.has(id))
    .map(({ id }) => [id, (checkpoints.get(id)?.atS ?? beginning / 1000) * 1000] as const);
  const left = leaving.length === 0 ? [] : await fleet.parcelsAfter(reader, leaving);

  const aged = containers.filter(({ asOf }) => asOf !== null && Math.floor(asOf / dayMs) < Math.floor(asOfMs / dayMs));
  const agedIds = aged.map(({ id }) => id);
  const older = aged.length === 0 ? [] : await fleet.checkpointInstants(reader, agedIds, asOfMs - keptAllMs);

  return {
    containers,
    checkpoints,
    events,
    arrived,
    left: grouped(left, ({ fromContainerId }) => fromContainerId),
    older: new Map(
      [...grouped(older, ({ containerId }) => containerId)].map(([id, rows]) => [id, rows.map(({ at }) => at)]),
    ),
    sources: new Map(sources.map(({ containerId, staleFrom }) => [containerId, staleFrom])),
  };
}
