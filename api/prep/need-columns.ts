// What is said of a need, as it is kept; what does not go together is refused.
import type { Prisma } from '../database/generated/sqlite/client.ts';
import { invalid } from '../errors.ts';
import { roomNamed } from '../climate/service.ts';
import { sorbentOf, lotNamed } from '../stock/service.ts';
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
    lotId: lot?.id ?? null,
    isLotWished: lot !== null,
    at: said.at,
    day: dayOf(said.at, timeZone),
    roomId: room?.id ?? null,
    forWhom: said.forWhom,
    note: said.note || null,
    weight: said.priority ?? 1,
  };
}

/** Refuses a time that is over, or further than plans reach. */
export function checkTime(at: Date, now: Date, path = 'input.at'): void {
  if (at <= now) throw invalid(path, at.toISOString(), `later than now (${now.toISOString()})`);
  if (at.getTime() > now.getTime() + 370 * 86_400_000) throw invalid(path, at.toISOString(), 'within a year');
}
