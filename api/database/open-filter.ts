// Which containers a hand-written list is of, as conditions of a statement over "Exposure" e joined to "Container" c.
import type { Engine } from './client.ts';
import type { Closure, ContainerKind, ExposureState } from './generated/sqlite/client.ts';
import { idsIn } from './reader.ts';

/** What is left out or null does not narrow. */
export interface OpenFilter {
  labId: string;
  isOpen?: boolean | null | undefined;
  inUse?: boolean | null | undefined;
  states?: readonly ExposureState[] | null | undefined;
  closures?: readonly Closure[] | null | undefined;
  kinds?: readonly ContainerKind[] | null | undefined;
  labels?: readonly string[] | null | undefined;
  lotIds?: readonly string[] | null | undefined;
  sorbentIds?: readonly string[] | null | undefined;
  roomIds?: readonly string[] | null | undefined;
}

export type Given = (value: string | number) => string;

/** The values of a statement, and what names the next one. */
export function parameters(): { values: (string | number)[]; given: Given } {
  const values: (string | number)[] = [];
  return { values, given: (value) => `$${values.push(value)}` };
}

export function conditionsOf(engine: Engine, of: OpenFilter, given: Given): string[] {
  const conditions = [`e."labId" = ${given(of.labId)}`, 'c."isVoid" = false'];
  const words = (column: string, type: string, list: readonly string[] | null | undefined): void => {
    const cast = engine === 'sqlite' ? '' : `::"${type}"`;
    if (list) conditions.push(`${column} in (${list.map((word) => given(word) + cast).join(', ') || 'null'})`);
  };
  const listed = (ids: readonly string[]): string =>
    `(select w."id" from ${idsIn(engine, given(JSON.stringify(ids)))} w)`;
  const ids = (column: string, list: readonly string[] | null | undefined): void => {
    if (list) conditions.push(`${column} in ${listed(list)}`);
  };
  if (typeof of.isOpen === 'boolean') conditions.push(`c."isOpen" = ${of.isOpen}`);
  if (typeof of.inUse === 'boolean') conditions.push(`c."finishedAt" is ${of.inUse ? '' : 'not '}null`);
  words('e."state"', 'ExposureState', of.states);
  words('c."closure"', 'Closure', of.closures);
  words('c."kind"', 'ContainerKind', of.kinds);
  ids('c."label"', of.labels);
  ids('c."lotId"', of.lotIds);
  ids('c."roomId"', of.roomIds);
  if (of.sorbentIds)
    conditions.push(`c."lotId" in (select x."id" from "Lot" x where x."sorbentId" in ${listed(of.sorbentIds)})`);
  return conditions;
}
