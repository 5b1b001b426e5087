// What needs take: plates, or dry grams; a column's are those of its bed.
import type { Need } from '../database/generated/sqlite/client.ts';
import type { Transaction } from '../work.ts';
import { sizeOf } from './column.ts';
import { amountOf, densityName } from './facts.ts';
import { prepSettingsOf } from './settings.ts';

/** The same for many needs at once, met ones too. */
export async function needAmounts(
  reader: Pick<Transaction, 'sorbent'>,
  lab: { settings: unknown },
  needs: readonly Need[],
): Promise<(need: Need) => number> {
  const ids = new Set(needs.filter(({ kind }) => kind === 'COLUMN').map(({ sorbentId }) => sorbentId));
  const sorbents =
    ids.size === 0
      ? []
      : await reader.sorbent.findMany({
          where: { id: { in: [...ids] } },
          include: { properties: { where: { name: densityName } } },
        });
  const sorbentOf = new Map(sorbents.map((sorbent) => [sorbent.id, sorbent]));
  const { conditioningVolumes } = prepSettingsOf(lab.settings);
  return (need) => {
    if (need.kind !== 'COLUMN') return amountOf({ need, column: null });
    const sorbent = sorbentOf.get(need.sorbentId);
    const density = sorbent?.properties[0]?.value ?? null;
    return amountOf({ need, column: sizeOf(need, sorbent?.sorbentClass ?? '', density, conditioningVolumes) });
  };
}
