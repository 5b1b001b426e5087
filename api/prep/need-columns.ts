// What is said of a need, as it is kept; what does not go together is refused.
import type { Prisma } from '../database/generated/sqlite/client.ts';
import { invalid, unknown } from '../errors.ts';
import { roomNamed } from '../climate/service.ts';
import { localId, sorbentOf, lotNamed } from '../stock/service.ts';
import type { Work } from '../work.ts';
import { checkSample } from './column.ts';
import { dayOf } from './hours.ts';
import { checkNeed } from './rules.ts';
import type { NeedSaid } from './said.ts';

export type Columns = Omit<Prisma.NeedUncheckedCreateInput, 'id' | 'labId' | 'madeAt' | 'changedAt'>;

/** What is said of a need, as it is kept; refuses what does not go together. */
export async function columnsOf(
  work: Pick<Work, 'tx' | 'labId'>,
  said: Omit<NeedSaid, 'weekdays' | 'untilDay' | 'clientKey'>,
  timeZone: string,
  under = 'input',
): Promise<Columns> {
  const { tx, labId } = work;
  const sorbent = await sorbentOf({ tx, labId }, said.sorbent, `${under}.sorbent`);
  const lot = said.lotNumber ? await lotNamed({ tx, labId }, sorbent.id, said.lotNumber, `${under}.lotNumber`) : null;
  const campaign = said.campaign ? await campaignFor({ tx, labId }, said, sorbent.id, `${under}.campaign`) : null;
  const room = said.room ? await roomNamed(tx, labId, said.room, `${under}.room`) : null;
  const isPlates = said.kind === 'PLATES';
  const facts = {
    kind: said.kind,
    plates: said.plates ?? null,
    backing: said.backing ?? null,
    isForExtraction: said.isForExtraction ?? false,
    mobilePhase: said.mobilePhase ?? null,
    isPreWashed: isPlates ? (said.isPreWashed ?? true) : false,
    regime: isPlates ? (said.regime ?? ('DRY_UNTIL_SPOTTED' as const)) : (said.regime ?? null),
    regimeHumidityPercent: said.regimeHumidityPercent ?? null,
    dryGrams: said.dryGrams ?? null,
    limitWaterFraction: said.limitWaterFraction ?? null,
    diameterMm: said.diameterMm ?? null,
    bedLengthMm: said.bedLengthMm ?? null,
    sampleMg: said.sampleMg ?? null,
    deltaRf: said.deltaRf ?? null,
    columnVolumes: said.columnVolumes ?? null,
    flowMlPerMin: said.flowMlPerMin ?? null,
  };
  checkNeed(facts, under);
  checkSample(facts, under);
  return {
    ...facts,
    sorbentId: sorbent.id,
    lotId: campaign?.lotId ?? lot?.id ?? null,
    isLotWished: campaign !== null || lot !== null,
    campaignId: campaign?.id ?? null,
    at: said.at,
    day: dayOf(said.at, timeZone),
    roomId: room?.id ?? null,
    forWhom: said.forWhom,
    note: said.note || null,
    weight: said.priority ?? 1,
  };
}

/** The campaign a need belongs to: of the same sorbent, with a lot that is kept for it. */
async function campaignFor(
  { tx, labId }: Pick<Work, 'tx' | 'labId'>,
  said: Pick<NeedSaid, 'campaign' | 'lotNumber' | 'kind'>,
  sorbentId: string,
  path: string,
) {
  const id = localId('Campaign', said.campaign ?? '', path);
  const campaign = await tx.campaign.findFirst({ where: { id, labId, droppedAt: null } });
  if (!campaign) throw unknown(path, said.campaign, 'the id of a campaign of this lab');
  const isPlates = campaign.backing !== null;
  if (campaign.sorbentId !== sorbentId || isPlates !== (said.kind === 'PLATES'))
    throw invalid(path, campaign.name, `a campaign of what is needed here`);
  if (!campaign.lotId) throw invalid(path, campaign.name, 'one that a lot is kept for: keep a lot for it first');
  const lot = await tx.lot.findUniqueOrThrow({ where: { id: campaign.lotId } });
  if (said.lotNumber && said.lotNumber !== lot.lotNumber)
    throw invalid(path, campaign.name, `lot ${lot.lotNumber}: all of a campaign is of one lot`);
  return campaign;
}

/** Refuses a time that is over, or further than plans reach. */
export function checkTime(at: Date, now: Date, path = 'input.at'): void {
  if (at <= now) throw invalid(path, at.toISOString(), `later than now (${now.toISOString()})`);
  if (at.getTime() > now.getTime() + 370 * 86_400_000) throw invalid(path, at.toISOString(), 'within a year');
}
