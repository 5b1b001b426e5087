// Ovens as they are found: any of the lab's, or one that is there still.
import type { Oven } from '../database/generated/sqlite/client.ts';
import { invalid, unknown } from '../errors.ts';
import { localId } from '../stock/service.ts';
import type { Transaction, Work } from '../work.ts';

export type OvenKept = { ovenId: string };

export async function ovenOf(
  { tx, labId }: Pick<Work, 'tx' | 'labId'>,
  said: string,
  path = 'input.oven',
): Promise<Oven> {
  const found = await tx.oven.findFirst({ where: { id: localId('Oven', said, path), labId } });
  if (!found) throw unknown(path, said, 'the id of an oven of this lab');
  return found;
}

/** One that is there still. */
export async function usedOven(work: Pick<Work, 'tx' | 'labId'>, said: string, path = 'input.oven'): Promise<Oven> {
  const oven = await ovenOf(work, said, path);
  if (oven.removedAt) throw invalid(path, said, 'it was removed; an oven that is there');
  return oven;
}

export const used = (tx: Pick<Transaction, 'oven'>, labId: string) =>
  tx.oven.findMany({ where: { labId, removedAt: null } });
