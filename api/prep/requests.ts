// The drying that needs ask for: one request for each container that goes to the oven, wanted by when its step ends,
// closed while solvent is on the plates, withdrawn with the need.
import type { DryingRequest } from '../database/generated/sqlite/client.ts';
import { requestsMade, requestWithdrawn } from '../drying/service.ts';
import type { Work } from '../work.ts';
import type { Kept } from './facts.ts';
import { instantOf } from './hours.ts';
import type { Planned } from './plan.ts';
import { isGoodAt } from './rules.ts';

interface Wish {
  kept: Kept;
  wantedBy: Date;
  readyAt: Date | null;
}

/** What of a need goes to the oven now: nothing while it is wet with solvent, or still to be washed. */
function wishesOf({ facts, chain, steps }: Planned): Wish[] {
  const { need, kept } = facts;
  const ovens = steps.filter(({ kind }) => kind === 'OVEN');
  if (ovens.length === 0 || chain.isWet || chain.prep.stages.some(({ kind }) => kind === 'WASH')) return [];
  const wantedBy = instantOf(Math.max(...ovens.map(({ end }) => end)));
  const isPlates = need.kind === 'PLATES';
  return kept
    .filter((one) => !one.driedAt && (isPlates || !isGoodAt(one.container.exposure, need.at, need.limitWaterFraction)))
    .map((one) => ({ kept: one, wantedBy, readyAt: null }));
}

const asWished = (request: DryingRequest, { wantedBy }: Wish, weight: number): boolean =>
  request.wantedBy?.getTime() === wantedBy.getTime() && request.weight === weight;

/** Brings the list of what to dry in line with what was planned. */
export async function requestsKept(work: Work, planned: readonly Planned[]): Promise<void> {
  const { tx, labId } = work;
  const waiting = await tx.dryingRequest.findMany({ where: { labId, state: 'WAITING', needId: { not: null } } });
  const left = new Set(waiting);
  // What somebody has asked for already is dried with that.
  const wishes: Parameters<typeof requestsMade>[1][number][] = [];
  for (const one of planned) {
    const { need, how } = one.facts;
    for (const wish of wishesOf(one)) {
      const { container, amount } = wish.kept;
      const there = [...left].find(({ needId, containerId }) => needId === need.id && containerId === container.id);
      if (there) {
        left.delete(there);
        if (asWished(there, wish, need.weight)) continue;
        const data = { wantedBy: wish.wantedBy, weight: need.weight };
        await tx.dryingRequest.update({ where: { id: there.id }, data });
        work.changed('DryingRequest', there.id, 'CHANGED');
        continue;
      }
      const isPlates = need.kind === 'PLATES';
      wishes.push({
        label: container.label,
        dryGrams: isPlates ? null : amount,
        plates: isPlates ? amount : null,
        why: `for ${need.forWhom}`,
        wantedBy: wish.wantedBy,
        readyAt: wish.readyAt,
        temperatureC: how.recipe?.temperatureC[0] ?? null,
        // As long as the tray needs: the plan of the ovens says.
        minutes: null,
        priority: need.weight as 1 | 2 | 4 | 8,
        needId: need.id,
      });
    }
  }
  await requestsMade(work, wishes);
  for (const { id } of left) await requestWithdrawn(work, id);
}
