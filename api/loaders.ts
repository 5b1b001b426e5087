// Batched reading of rows by id, one set a request, so that a list costs a constant number of statements.
import DataLoader from 'dataloader';
import type { Database } from './database/database.ts';

type Reader = Database['read'];

function byId<Row>(
  rows: (ids: string[]) => Promise<Row[]>,
  idOf: (row: Row) => string,
): DataLoader<string, Row | null> {
  return new DataLoader(async (ids) => {
    const found = new Map((await rows([...ids])).map((row) => [idOf(row), row]));
    return ids.map((id) => found.get(id) ?? null);
  });
}

/** The rows that belong to each of some others: in the order they were read, none for those without. */
function byOwner<Row>(
  rows: (ownerIds: string[]) => Promise<Row[]>,
  ownerOf: (row: Row) => string | null,
): DataLoader<string, Row[]> {
  return new DataLoader(async (ids) => {
    const owned = new Map<string, Row[]>(ids.map((id) => [id, []]));
    for (const row of await rows([...ids])) owned.get(ownerOf(row) ?? '')?.push(row);
    return ids.map((id) => owned.get(id) ?? []);
  });
}

/** The loaders of one request. */
export function loadersOf(read: Reader) {
  const among = (ids: string[]) => ({ where: { id: { in: ids } } });
  const idOf = (row: { id: string }) => row.id;
  return {
    container: byId((ids) => read.container.findMany(among(ids)), idOf),
    sorbent: byId((ids) => read.sorbent.findMany(among(ids)), idOf),
    lot: byId((ids) => read.lot.findMany(among(ids)), idOf),
    supplier: byId((ids) => read.supplier.findMany(among(ids)), idOf),
    room: byId((ids) => read.room.findMany(among(ids)), idOf),
    sensor: byId((ids) => read.sensor.findMany(among(ids)), idOf),
    vessel: byId((ids) => read.vessel.findMany(among(ids)), idOf),
    person: byId((ids) => read.person.findMany(among(ids)), idOf),
    event: byId((ids) => read.event.findMany(among(ids)), idOf),
    dryingRequest: byId((ids) => read.dryingRequest.findMany(among(ids)), idOf),
    need: byId((ids) => read.need.findMany(among(ids)), idOf),
    prepStep: byId((ids) => read.prepStep.findMany(among(ids)), idOf),
    holdsOfNeed: byOwner(
      (ids) => read.hold.findMany({ where: { needId: { in: ids }, releasedAt: null }, orderBy: { id: 'asc' } }),
      (row) => row.needId,
    ),
    stepsOfNeed: byOwner(
      (ids) =>
        read.prepStep.findMany({
          where: { needId: { in: ids }, goneAt: null },
          orderBy: [{ startAt: 'asc' }, { endAt: 'asc' }],
        }),
      (row) => row.needId,
    ),
    campaign: byId((ids) => read.campaign.findMany(among(ids)), idOf),
    storageGroup: byId((ids) => read.storageGroup.findMany(among(ids)), idOf),
    offer: byId((ids) => read.offer.findMany(among(ids)), idOf),
    order: byId((ids) => read.order.findMany(among(ids)), idOf),
    delivery: byId((ids) => read.delivery.findMany(among(ids)), idOf),
    purchasePlan: byId((ids) => read.purchasePlan.findMany(among(ids)), idOf),
    deliveriesOfOrder: byOwner(
      (ids) =>
        read.delivery.findMany({
          where: { orderId: { in: ids }, takenBackAt: null },
          orderBy: [{ recordedAt: 'asc' }, { id: 'asc' }],
        }),
      (row) => row.orderId,
    ),
    hold: byId((ids) => read.hold.findMany(among(ids)), idOf),
    oven: byId((ids) => read.oven.findMany(among(ids)), idOf),
    ovenCare: byId((ids) => read.ovenCare.findMany(among(ids)), idOf),
    ovenPlan: byId((ids) => read.ovenPlan.findMany(among(ids)), idOf),
    dryingRun: byId((ids) => read.dryingRun.findMany(among(ids)), idOf),
    dryingLoad: byId((ids) => read.dryingLoad.findMany(among(ids)), idOf),
    lotCheck: byId((ids) => read.lotCheck.findMany(among(ids)), idOf),
    runsOfCheck: byOwner(
      (ids) =>
        read.retentionRun.findMany({
          where: { checkId: { in: ids }, takenBackAt: null },
          orderBy: [{ at: 'asc' }, { id: 'asc' }],
        }),
      (row) => row.checkId,
    ),
    properties: byOwner(
      (ids) => read.sorbentProperty.findMany({ where: { sorbentId: { in: ids } }, orderBy: { name: 'asc' } }),
      (row) => row.sorbentId,
    ),
    lotsOfSorbent: byOwner(
      (ids) => read.lot.findMany({ where: { sorbentId: { in: ids } }, orderBy: { receivedAt: 'asc' } }),
      (row) => row.sorbentId,
    ),
    containersOfLot: byOwner(
      (ids) => read.container.findMany({ where: { lotId: { in: ids }, isVoid: false }, orderBy: { id: 'asc' } }),
      (row) => row.lotId,
    ),
    portions: byOwner(
      (ids) => read.container.findMany({ where: { takenFromId: { in: ids }, isVoid: false }, orderBy: { id: 'asc' } }),
      (row) => row.takenFromId,
    ),
    holds: byOwner(
      (ids) => read.hold.findMany({ where: { containerId: { in: ids }, releasedAt: null }, orderBy: { id: 'asc' } }),
      (row) => row.containerId,
    ),
    habitsSaid: byOwner(
      (ids) => read.event.findMany({ where: { containerId: { in: ids }, type: 'HABIT_SET', stands: true } }),
      (row) => row.containerId,
    ),
    dryingRequests: byOwner(
      (ids) => read.dryingRequest.findMany({ where: { containerId: { in: ids } }, orderBy: { id: 'asc' } }),
      (row) => row.containerId,
    ),
    recipes: byOwner(
      (labIds) => read.recipe.findMany({ where: { labId: { in: labIds } } }),
      (row) => row.labId,
    ),
    careOfOven: byOwner(
      (ids) => read.ovenCare.findMany({ where: { ovenId: { in: ids }, takenBackAt: null }, orderBy: { at: 'desc' } }),
      (row) => row.ovenId,
    ),
    careOfSensor: byOwner(
      (ids) => read.ovenCare.findMany({ where: { sensorId: { in: ids }, takenBackAt: null }, orderBy: { at: 'desc' } }),
      (row) => row.sensorId,
    ),
    loadsOfRun: byOwner(
      (ids) => read.dryingLoad.findMany({ where: { runId: { in: ids } }, orderBy: { id: 'asc' } }),
      (row) => row.runId,
    ),
    loadsOfRequest: byOwner(
      (ids) => read.dryingLoad.findMany({ where: { requestId: { in: ids } }, orderBy: { id: 'asc' } }),
      (row) => row.requestId,
    ),
    correctionOf: byId(
      (ids) => read.event.findMany({ where: { correctsId: { in: ids } } }),
      (row) => row.correctsId ?? '',
    ),
    exposure: byId(
      (ids) => read.exposure.findMany({ where: { containerId: { in: ids } } }),
      (row) => row.containerId,
    ),
  };
}

export type Loaders = ReturnType<typeof loadersOf>;
