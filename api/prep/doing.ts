// What a ticked step is recorded with: its need, what was said, the containers that are kept for it.
import type { Context } from '../context.ts';
import type { Container, Hold, Need, PrepStep } from '../database/generated/sqlite/client.ts';
import { heldOn, needLetGo } from '../stock/service.ts';
import type { Work } from '../work.ts';
import type { StepDetail } from './detail.ts';
import type { How } from './tick.ts';

export interface Doing {
  work: Work;
  need: Need;
  step: PrepStep;
  detail: StepDetail;
  by: How & { at: Date };
  path: string;
  context: Context;
  events: string[];
  notes: string[];
}

type KeptRow = Hold & { container: Container };

export const keptFor = ({ work, need }: Doing): Promise<KeptRow[]> =>
  work.tx.hold.findMany({
    where: { needId: need.id, releasedAt: null },
    include: { container: true },
    orderBy: { id: 'asc' },
  });

export const noted = (doing: Doing, recorded: { eventId: string; notes: string[] }): void => {
  doing.events.push(recorded.eventId);
  doing.notes.push(...recorded.notes);
};

/** From now on the need is kept in these containers, and in no others; what was of a campaign's share stays so. */
export async function keptIn(
  { work, need }: Doing,
  rows: { containerId: string; dryGrams: number | null; plates: number | null }[],
) {
  await needLetGo(work, need.id, true);
  const { id: needId, campaignId, forWhom: forWhat, at: until } = need;
  for (const row of rows) await heldOn(work, { ...row, forWhat, until, needId, campaignId });
}

/** The same on everything that is kept. */
export async function eachKept(
  doing: Doing,
  record: (container: Container) => Promise<{ eventId: string; notes: string[] }>,
) {
  for (const { container } of await keptFor(doing)) noted(doing, await record(container));
}
