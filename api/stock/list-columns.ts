// Which columns of a container and of its exposure a list must read for the fields that are asked. A row of sixty columns
// costs the open list four times what it shows.
import type { GraphQLResolveInfo } from 'graphql';
import { fieldsAsked } from '../asked.ts';
import type { Container, Exposure, Lot, Room, Sorbent } from '../database/generated/sqlite/client.ts';

export interface ListColumns {
  /** Null: all of them. */
  readonly container: readonly (keyof Container)[] | null;
  readonly exposure: readonly (keyof Exposure)[] | null;
  /** Read beside, in the same statement; null: more is asked than is worth it, and the loaders read it whole. */
  readonly lot: readonly (keyof Lot)[] | null;
  readonly sorbent: readonly (keyof Sorbent)[] | null;
  readonly room: readonly (keyof Room)[] | null;
}

/** What every row needs: its key, its type, and what the loaders are filled by. */
const always = ['id', 'kind', 'lotId', 'roomId'] as const satisfies (keyof Container)[];

const containerFields: Readonly<Record<string, readonly (keyof Container)[]>> = {
  __typename: [],
  id: [],
  kind: [],
  label: ['label'],
  lot: [],
  sorbent: [],
  room: [],
  exposure: [],
  vessel: ['vesselId'],
  takenFrom: ['takenFromId'],
  holds: [],
  isOpen: ['isOpen'],
  openedAt: ['openedAt'],
  closure: ['closure'],
  usualClosure: ['usualClosure'],
  cameInAt: ['cameInAt'],
  finishedAt: ['finishedAt'],
  dryGrams: ['dryGrams'],
  dryGramsAssumed: ['dryGramsAssumed'],
  freeDryGrams: ['dryGrams', 'heldDryGrams'],
  asReceivedGrams: ['dryGrams'],
  plates: ['plates'],
  freePlates: ['plates', 'heldPlates'],
};

const exposureFields: Readonly<Record<string, readonly (keyof Exposure)[]>> = {
  __typename: [],
  asOf: ['asOf'],
  state: ['state'],
  reason: ['reason'],
  meanWaterFraction: ['meanWaterFraction'],
  low: ['low'],
  high: ['high'],
  scoopWaterFraction: ['scoopWaterFraction'],
  scoopLow: ['scoopLow'],
  scoopHigh: ['scoopHigh'],
  topWaterFraction: ['topWaterFraction'],
  meanAsReceivedFraction: ['meanWaterFraction'],
  scoopAsReceivedFraction: ['scoopWaterFraction'],
  chancePastLimit: ['chancePastLimit'],
  hoursToLimit: ['hoursToLimit'],
  hoursToLimitOpen: ['hoursToLimitOpen'],
  hoursToLimitClosed: ['hoursToLimitClosed'],
  upperWaterFraction: ['upperWaterFraction'],
  lowerWaterFraction: ['lowerWaterFraction'],
  grade: ['grade'],
  minutesToRoomEquilibrium: ['minutesToRoomEquilibrium'],
};

const lotFields: Readonly<Record<string, readonly (keyof Lot)[]>> = {
  __typename: [],
  id: [],
  lotNumber: ['lotNumber'],
};

const sorbentFields: Readonly<Record<string, readonly (keyof Sorbent)[]>> = {
  __typename: [],
  id: [],
  name: ['name'],
  sorbentClass: ['sorbentClass'],
};

const roomFields: Readonly<Record<string, readonly (keyof Room)[]>> = {
  __typename: [],
  id: [],
  name: ['name'],
  kind: ['kind'],
};

function columnsFor<Column extends string>(
  asked: ReadonlySet<string>,
  fields: Readonly<Record<string, readonly Column[]>>,
  first: readonly Column[],
): Column[] | null {
  const columns = new Set(first);
  for (const name of asked) {
    const needed = fields[name];
    if (!needed) return null;
    for (const column of needed) columns.add(column);
  }
  return [...columns];
}

type Asked = Pick<GraphQLResolveInfo, 'fieldNodes' | 'fragments'>;
const known = new WeakMap<object, ListColumns>();

const both = (info: Asked, ...path: string[]): Set<string> =>
  new Set([...fieldsAsked(info, ['nodes', ...path]), ...fieldsAsked(info, ['edges', 'node', ...path])]);

/** The columns that a list of containers must read; the same operation is looked through once. */
export function listColumns(info: Asked): ListColumns {
  const [operation] = info.fieldNodes;
  const before = operation && known.get(operation);
  if (before) return before;
  const asked = both(info);
  const needsExposure: (keyof Exposure)[] = asked.has('asReceivedGrams') ? ['meanWaterFraction'] : [];
  const columns = {
    container: columnsFor(asked, containerFields, always),
    lot: asked.has('lot') ? columnsFor<keyof Lot>(both(info, 'lot'), lotFields, ['id']) : [],
    sorbent: asked.has('sorbent') ? columnsFor<keyof Sorbent>(both(info, 'sorbent'), sorbentFields, ['id']) : [],
    room: asked.has('room') ? columnsFor<keyof Room>(both(info, 'room'), roomFields, ['id']) : [],
    exposure: columnsFor<keyof Exposure>(both(info, 'exposure'), exposureFields, [
      'containerId',
      'urgency',
      ...needsExposure,
    ]),
  };
  if (operation) known.set(operation, columns);
  return columns;
}
