// Needs whose time is over and of which nobody said that they were handed over. Until midnight their stock stays kept, for
// somebody may be late; then it is free for others. Said later, it is taken from where it was kept, if it is there still.
import type { Container, Hold, Need } from '../database/generated/sqlite/client.ts';
import { campaignShares, freeDryGrams, freePlates, needLetGo, nothingGrams } from '../stock/service.ts';
import type { Work } from '../work.ts';
import type { LabFacts } from './facts.ts';
import { dayOf } from './hours.ts';

/** Lets go of what is kept for needs of days before today. */
export async function pastLetGo(work: Work, lab: LabFacts): Promise<void> {
  const { tx, labId, now } = work;
  const held = await tx.hold.findMany({
    where: { labId, releasedAt: null, needId: { not: null } },
    select: { needId: true },
    distinct: ['needId'],
  });
  if (held.length === 0) return;
  const past = await tx.need.findMany({
    where: {
      id: { in: held.flatMap(({ needId }) => needId ?? []) },
      metAt: null,
      droppedAt: null,
      day: { lt: dayOf(now, lab.timeZone) },
    },
    select: { id: true },
  });
  for (const { id } of past) await needLetGo(work, id);
}

type Row = Hold & { container: Container };

/** It is there still: free, or back in the share of the need's campaign. */
const isThere = ({ container, dryGrams, plates }: Row, share: number): boolean =>
  container.finishedAt === null &&
  !container.isVoid &&
  (plates !== null
    ? freePlates(container) + share >= plates
    : freeDryGrams(container) + share >= (dryGrams ?? 0) - nothingGrams);

/** What was kept for a need last, as far as nobody has had it since. */
export async function keptLast(
  { tx, labId }: Work,
  { id: needId, campaignId }: Pick<Need, 'id' | 'campaignId'>,
): Promise<Row[]> {
  const rows = await tx.hold.findMany({
    where: { labId, needId, releasedAt: { not: null } },
    include: { container: true },
    orderBy: [{ releasedAt: 'desc' }, { id: 'asc' }],
  });
  const last = rows[0]?.releasedAt?.getTime();
  const shares = campaignId ? await campaignShares(tx, campaignId) : null;
  return rows.filter((row) => row.releasedAt?.getTime() === last && isThere(row, shares?.get(row.containerId) ?? 0));
}
