// Campaigns as they are told, set anew, dropped and brought back; and the lot that is kept for one.
import type { z } from 'zod';
import type { Context } from '../context.ts';
import type { Campaign } from '../database/generated/sqlite/client.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { campaignLetGo, localId, sorbentOf } from '../stock/service.ts';
import { told } from '../told.ts';
import { newId, write, type Work } from '../work.ts';
import { keptAnew, lotKeptFor } from './keep.ts';
import { minorSaid } from './money.ts';
import { usesInOrder } from './rules.ts';
import type { addCampaignSaid, keepLotSaid, setCampaignSaid, whichSaid } from './said.ts';
import { currencyOf } from './settings.ts';
import { usesOf } from './uses.ts';
import { daysAfter } from './weeks.ts';

export type CampaignKept = { campaignId: string; notes: string[] };

async function campaignOf(
  { tx, labId }: { tx: Pick<Work['tx'], 'campaign'>; labId: string },
  id: string,
  path = 'input.id',
): Promise<Campaign> {
  const campaign = await tx.campaign.findFirst({ where: { id: localId('Campaign', id, path), labId } });
  if (!campaign) throw unknown(path, id, 'the id of a campaign of this lab');
  return campaign;
}

async function checkName(work: Work, name: string, but: string | null): Promise<void> {
  const there = await work.tx.campaign.findMany({ where: { labId: work.labId, droppedAt: null } });
  if (there.some((one) => one.id !== but && one.name.toLowerCase() === name.toLowerCase()))
    throw invalid('input.name', name, 'a name of its own: there is a campaign of that name');
}

const costOf = (context: Context, said: string | null | undefined): number | null | undefined =>
  minorSaid(said, currencyOf(context), 'input.uncoveredCost');

export function campaignAdded(context: Context, input: z.output<typeof addCampaignSaid>): Promise<CampaignKept> {
  return write(context, 'addCampaign', input, async (work) => {
    await checkName(work, input.name, null);
    const { clientKey: _, sorbent, uncoveredCost, note, ...said } = input;
    const backing = said.backing ?? null;
    const data = {
      id: newId(),
      labId: work.labId,
      name: said.name,
      sorbentId: (await sorbentOf(work, sorbent)).id,
      backing,
      uses: usesInOrder(said.uses, backing).map((use) => ({ ...use })),
      limitWaterFraction: said.limitWaterFraction ?? null,
      uncoveredMinor: costOf(context, uncoveredCost) ?? null,
      note: note || null,
      madeAt: work.now,
      changedAt: work.now,
    };
    await work.tx.campaign.create({ data });
    work.changed('Campaign', data.id, 'MADE');
    return { campaignId: data.id, notes: [] };
  });
}

/** Changes a campaign; what is kept for it follows its uses. */
export function campaignSet(context: Context, input: z.output<typeof setCampaignSaid>): Promise<CampaignKept> {
  return write(context, 'setCampaign', input, async (work) => {
    const campaign = await campaignOf(work, input.id);
    if (campaign.droppedAt) throw invalid('input.id', input.id, 'one that was not dropped; bring it back first');
    if (input.name === null) throw missing('input.name', 'a name');
    if (input.uses === null) throw missing('input.uses', 'one use at least');
    if (input.name) await checkName(work, input.name, campaign.id);
    const before = input.uses ? usesInOrder(input.uses, campaign.backing) : usesOf(campaign);
    const uses = before.map(({ day, amount }) => ({ day: daysAfter(day, 7 * (input.postponeWeeks ?? 0)), amount }));
    const { limitWaterFraction, note } = input;
    const uncoveredMinor = costOf(context, input.uncoveredCost);
    const data = {
      uses,
      changedAt: work.now,
      ...(input.name ? { name: input.name } : {}),
      ...told({ limitWaterFraction, uncoveredMinor, note: note === '' ? null : note }),
    };
    const changed = await work.tx.campaign.update({ where: { id: campaign.id }, data });
    work.changed('Campaign', campaign.id, 'CHANGED');
    const isOther = input.uses || input.postponeWeeks || limitWaterFraction !== undefined;
    const notes = isOther && changed.lotId ? await keptAnew(work, context.lab, changed, 'input.uses') : [];
    return { campaignId: campaign.id, notes };
  });
}

/** Drops a campaign: what was kept for it is free again, its needs stand on their own. */
export function campaignDropped(context: Context, input: z.output<typeof whichSaid>): Promise<CampaignKept> {
  return write(context, 'dropCampaign', input, async (work) => {
    const campaign = await campaignOf(work, input.id);
    if (campaign.droppedAt) return { campaignId: campaign.id, notes: [] };
    const data = { droppedAt: work.now, changedAt: work.now };
    await work.tx.campaign.update({ where: { id: campaign.id }, data });
    await campaignLetGo(work, campaign.id);
    work.changed('Campaign', campaign.id, 'CHANGED');
    return { campaignId: campaign.id, notes: [] };
  });
}

/** Brings a campaign back, with its lot where enough of that is still free. */
export function campaignRestored(context: Context, input: z.output<typeof whichSaid>): Promise<CampaignKept> {
  return write(context, 'restoreCampaign', input, async (work) => {
    const campaign = await campaignOf(work, input.id);
    if (!campaign.droppedAt) return { campaignId: campaign.id, notes: [] };
    await checkName(work, campaign.name, campaign.id);
    const data = { droppedAt: null, changedAt: work.now };
    const back = await work.tx.campaign.update({ where: { id: campaign.id }, data });
    work.changed('Campaign', campaign.id, 'CHANGED');
    const notes = back.lotId ? await keptAnew(work, context.lab, back, null) : [];
    return { campaignId: campaign.id, notes };
  });
}

/** Keeps a lot for a campaign, the fittest one when none is named. */
export function lotKept(context: Context, input: z.output<typeof keepLotSaid>): Promise<CampaignKept> {
  return write(context, 'keepLot', input, async (work) => {
    const campaign = await campaignOf(work, input.campaign, 'input.campaign');
    if (campaign.droppedAt) throw invalid('input.campaign', campaign.name, 'one that was not dropped');
    const notes = await lotKeptFor(work, context.lab, campaign, {
      lotNumber: input.lotNumber ?? null,
      takeUnchecked: input.takeUnchecked ?? false,
    });
    return { campaignId: campaign.id, notes };
  });
}

/** Lets go of a campaign's lot: it is free for everybody. */
export function lotLetGo(context: Context, input: z.output<typeof whichSaid>): Promise<CampaignKept> {
  return write(context, 'letLotGo', input, async (work) => {
    const campaign = await campaignOf(work, input.id);
    await campaignLetGo(work, campaign.id);
    const data = { lotId: null, keptAt: null, changedAt: work.now };
    await work.tx.campaign.update({ where: { id: campaign.id }, data });
    work.changed('Campaign', campaign.id, 'CHANGED');
    return { campaignId: campaign.id, notes: [] };
  });
}
