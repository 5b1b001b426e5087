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

/** What every row needs: its key and its type. */
const always: readonly (keyof Container)[] = ['id', 'kind'];

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
  oldCode: ['oldCode'],
  touchedSolventAt: ['touchedSolventAt'],
  solventWetAt: ['wettedAt'],
  finishedAt: ['finishedAt'],
  dryGrams: ['dryGrams'],
  dryGramsAssumed: ['dryGramsAssumed'],
  freeDryGrams: ['dryGrams', 'heldDryGrams'],
  asReceivedGrams: ['dryGrams', 'lotId'],
  plates: ['plates'],
  freePlates: ['plates', 'heldPlates'],
  keptForCampaigns: ['lotId'],
  keptWords: ['lotId', 'finishedAt'],
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
  // A table of the lab's own tells the grade from the water and the class, and by when it was last dried.
  grade: ['grade', 'scoopWaterFraction', 'asOf', 'containerId'],
  minutesToRoomEquilibrium: ['minutesToRoomEquilibrium'],
};

const lotFields: Readonly<Record<string, readonly (keyof Lot)[]>> = {
  __typename: [],
  id: ['id'],
  lotNumber: ['lotNumber'],
};

const sorbentFields: Readonly<Record<string, readonly (keyof Sorbent)[]>> = {
  __typename: [],
  id: ['id'],
  name: ['name'],
  sorbentClass: ['sorbentClass'],
};

const roomFields: Readonly<Record<string, readonly (keyof Room)[]>> = {
  __typename: [],
  id: ['id'],
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
  const below = <Column extends string>(name: string, fields: Readonly<Record<string, readonly Column[]>>) =>
    asked.has(name) ? columnsFor(both(info, name), fields, []) : [];
  const lot = below('lot', lotFields);
  const sorbent = below('sorbent', sorbentFields);
  const room = below('room', roomFields);
  // What is not read beside comes through the loaders, by these keys.
  const keys: (keyof Container)[] = [
    ...(lot && sorbent ? [] : ['lotId' as const]),
    ...(room ? [] : ['roomId' as const]),
  ];
  const columns = {
    container: columnsFor(asked, containerFields, [...always, ...keys]),
    exposure: columnsFor(both(info, 'exposure'), exposureFields, ['urgency', ...needsExposure]),
    lot,
    sorbent,
    room,
  };
  if (operation) known.set(operation, columns);
  return columns;
}
