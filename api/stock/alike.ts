// Codes that could have been meant by one that nobody has: a sign misread, two swapped, or a code it had before.
import { distance } from 'fastest-levenshtein';
import type { Context } from '../context.ts';
import type { Container } from '../database/generated/sqlite/client.ts';
import { signsRead } from './label.ts';

/** Signs that may differ; two that are swapped count as two. */
const mostDifferent = 2;
const most = 5;

interface Coded {
  id: string;
  label: string;
  oldCode: string | null;
}

/** Ids of those whose code is nearest to what was typed: the code it had before, then by how few signs differ. */
export function alikeIds(typed: string, coded: readonly Coded[]): string[] {
  const wanted = signsRead(typed);
  const before = typed.trim().toLowerCase();
  return coded
    .map(({ id, label, oldCode }) => ({
      id,
      off: oldCode?.toLowerCase() === before ? 0 : distance(wanted, label.replace('-', '')),
    }))
    .filter(({ off }) => off <= mostDifferent)
    .sort((one, other) => one.off - other.off)
    .slice(0, most)
    .map(({ id }) => id);
}

export async function alikeContainers({ database: { read }, lab }: Context, typed: string): Promise<Container[]> {
  const where = { labId: lab.id, isVoid: false };
  const coded = await read.container.findMany({ where, select: { id: true, label: true, oldCode: true } });
  const ids = alikeIds(typed.slice(0, 120), coded);
  const rows = await read.container.findMany({ where: { id: { in: ids } } });
  return ids.flatMap((id) => rows.find((row) => row.id === id) ?? []);
}
