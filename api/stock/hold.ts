// Grams and plates kept for somebody: what is promised once is not free for anybody else.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { newId, write, type Work } from '../work.ts';
import { containerOf } from './find.ts';
import { localId } from './ids.ts';
import { said } from './said.ts';
import { nothingGrams } from './stand.ts';
import { grams, words } from './words.ts';

export const holdSaid = z.object({
  label: said.label,
  dryGrams: said.grams,
  plates: said.plates,
  forWhat: said.name,
  until: z.date('an instant').nullish(),
  clientKey: said.clientKey,
});

export const releaseSaid = z.object({ hold: z.string('the id of a hold'), clientKey: said.clientKey });

/** What is there and not kept for anybody. */
export const freeDryGrams = (of: { dryGrams: number; heldDryGrams: number }): number =>
  Math.max(0, of.dryGrams - of.heldDryGrams);

export const freePlates = (of: { plates: number | null; heldPlates: number }): number =>
  Math.max(0, (of.plates ?? 0) - of.heldPlates);

/** The sums of what is kept, from the holds themselves. */
async function heldAnew(work: Work, containerId: string): Promise<void> {
  const where = { containerId, releasedAt: null };
  const { _sum } = await work.tx.hold.aggregate({ where, _sum: { dryGrams: true, plates: true } });
  const data = { heldDryGrams: _sum.dryGrams ?? 0, heldPlates: _sum.plates ?? 0 };
  await work.tx.container.update({ where: { id: containerId }, data });
  work.changed('Container', containerId, 'CHANGED');
}

export interface Keeping {
  containerId: string;
  dryGrams: number | null;
  plates: number | null;
  forWhat: string;
  until: Date | null;
  needId?: string | null;
  /** The campaign it is kept for; beside a need, the campaign of whose share the need is given. */
  campaignId?: string | null;
}

/** What is kept of a container for a campaign and not given to one of its needs. */
const shareOf = (work: Work, campaignId: string, containerId: string) =>
  work.tx.hold.findFirst({ where: { labId: work.labId, campaignId, containerId, needId: null, releasedAt: null } });

/** Takes from a campaign's share what one of its needs is given; never more than is in it. */
async function takenOfShare(work: Work, { campaignId, containerId, dryGrams, plates }: Keeping): Promise<void> {
  const share = campaignId ? await shareOf(work, campaignId, containerId) : null;
  if (!share) return;
  await shareLeft(work, share, Math.max(0, (share.plates ?? share.dryGrams ?? 0) - (plates ?? dryGrams ?? 0)));
}

/** Leaves so much of a campaign's share of a container; of nothing it is let go. */
export async function shareLeft(
  work: Work,
  share: { id: string; containerId: string; plates: number | null },
  amount: number,
): Promise<void> {
  const left = share.plates === null ? { dryGrams: amount } : { plates: amount };
  const data = amount <= nothingGrams ? { releasedAt: work.now } : left;
  await work.tx.hold.update({ where: { id: share.id }, data });
  await heldAnew(work, share.containerId);
  work.changed('Hold', share.id, 'CHANGED');
}

/** Keeps something for somebody, within a larger act that has seen to it that it is free. */
export async function holdMade(work: Work, of: Keeping): Promise<string> {
  if (of.needId) await takenOfShare(work, of);
  return heldOn(work, of);
}

/** Keeps on, perhaps in another container, what a need was given before: nothing more is taken of a campaign's share. */
export async function heldOn(work: Work, of: Keeping): Promise<string> {
  const { id } = await work.tx.hold.create({ data: { id: newId(), labId: work.labId, ...of, madeAt: work.now } });
  await heldAnew(work, of.containerId);
  work.changed('Hold', id, 'MADE');
  return id;
}

/** The same of many at once, none of which is of a campaign. */
export async function holdsMade(work: Work, all: readonly Omit<Keeping, 'campaignId'>[]): Promise<void> {
  const { labId, now } = work;
  const rows = all.map((of) => ({ id: newId(), labId, ...of, madeAt: now }));
  if (rows.length === 0) return;
  await work.tx.hold.createMany({ data: rows });
  for (const containerId of new Set(all.map((of) => of.containerId))) await heldAnew(work, containerId);
  for (const { id } of rows) work.changed('Hold', id, 'MADE');
}

/** What is free of each container for the needs of a campaign besides: its own share, by container. */
export async function campaignShares(tx: Pick<Work['tx'], 'hold'>, campaignId: string): Promise<Map<string, number>> {
  const shares = await tx.hold.findMany({ where: { campaignId, needId: null, releasedAt: null } });
  const of = new Map<string, number>();
  for (const { containerId, dryGrams, plates } of shares)
    of.set(containerId, (of.get(containerId) ?? 0) + (plates ?? dryGrams ?? 0));
  return of;
}

/** Gives back to a campaign what one of its needs no longer keeps. */
async function givenBack(work: Work, of: Keeping & { campaignId: string }): Promise<void> {
  const campaign = await work.tx.campaign.findUnique({ where: { id: of.campaignId } });
  if (!campaign || campaign.droppedAt || !campaign.lotId) return;
  const share = await shareOf(work, of.campaignId, of.containerId);
  if (!share) {
    const { containerId, dryGrams, plates, campaignId } = of;
    await holdMade(work, { containerId, dryGrams, plates, campaignId, forWhat: campaign.name, until: null });
    return;
  }
  const data = {
    dryGrams: share.dryGrams === null ? null : share.dryGrams + (of.dryGrams ?? 0),
    plates: share.plates === null ? null : share.plates + (of.plates ?? 0),
  };
  await work.tx.hold.update({ where: { id: share.id }, data });
  work.changed('Hold', share.id, 'CHANGED');
}

/**
 * Lets go of what is kept for a need, within a larger act. What it had of a campaign's share goes back into that share,
 * unless it was handed over.
 */
export async function needLetGo(work: Work, needId: string, isHandedOver = false): Promise<void> {
  const holds = await work.tx.hold.findMany({ where: { labId: work.labId, needId, releasedAt: null } });
  for (const { id, containerId, campaignId, ...hold } of holds) {
    await work.tx.hold.update({ where: { id }, data: { releasedAt: work.now } });
    const { dryGrams, plates, forWhat, until } = hold;
    if (campaignId && !isHandedOver)
      await givenBack(work, { containerId, campaignId, dryGrams, plates, forWhat, until });
    await heldAnew(work, containerId);
    work.changed('Hold', id, 'CHANGED');
  }
}

/** Lets go of what is kept for a campaign and not given to one of its needs, within a larger act. */
export async function campaignLetGo(work: Work, campaignId: string): Promise<void> {
  const where = { labId: work.labId, campaignId, needId: null, releasedAt: null };
  for (const { id, containerId } of await work.tx.hold.findMany({ where })) {
    await work.tx.hold.update({ where: { id }, data: { releasedAt: work.now } });
    await heldAnew(work, containerId);
    work.changed('Hold', id, 'CHANGED');
  }
}

/** Keeps grams or plates for somebody; refuses more than is free. */
export function heldStock(context: Context, input: z.output<typeof holdSaid>) {
  return write(context, 'holdStock', input, async (work) => {
    const container = await containerOf(work, input.label);
    const { forWhat, until = null } = input;
    const isPlates = container.kind === 'PLATE_BOX';
    const plates = isPlates ? input.plates : null;
    const dryGrams = isPlates ? null : input.dryGrams;
    if (isPlates && plates === null)
      throw missing('input.plates', `the number of plates: ${container.label} is a plate box`);
    if (!isPlates && dryGrams === null) throw missing('input.dryGrams', 'the dry grams to keep');
    const free = freeDryGrams(container);
    if (dryGrams !== null && dryGrams > free + nothingGrams) {
      throw invalid(
        'input.dryGrams',
        dryGrams,
        `at most ${grams(free)} (dry): the rest of ${container.label} is kept for somebody or gone`,
      );
    }
    if (plates !== null && plates > freePlates(container)) {
      throw invalid(
        'input.plates',
        plates,
        `at most ${words.plates(freePlates(container))}: the rest of ${container.label} is kept for somebody or gone`,
      );
    }
    const holdId = await holdMade(work, { containerId: container.id, dryGrams, plates, forWhat, until });
    return { holdId, containerId: container.id };
  });
}

/** Lets go of what was kept; letting go twice is no harm. */
export function releasedHold(context: Context, input: z.output<typeof releaseSaid>) {
  return write(context, 'releaseHold', input, async (work) => {
    const id = localId('Hold', input.hold, 'input.hold');
    const hold = await work.tx.hold.findFirst({ where: { id, labId: work.labId } });
    if (!hold) throw unknown('input.hold', input.hold, 'the id of a hold of this lab');
    if (!hold.releasedAt) await work.tx.hold.update({ where: { id }, data: { releasedAt: work.now } });
    await heldAnew(work, hold.containerId);
    work.changed('Hold', id, 'CHANGED');
    return { holdId: id, containerId: hold.containerId };
  });
}
