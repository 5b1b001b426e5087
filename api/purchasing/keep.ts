// A lot kept for a campaign: so much of its containers that the uses to come are covered, and no gram of it promised twice.
import type { Campaign } from '../database/generated/sqlite/client.ts';
import { invalid, unknown } from '../errors.ts';
import { campaignLetGo, freeDryGrams, freePlates, holdMade, needLetGo, nothingGrams } from '../stock/service.ts';
import type { Work } from '../work.ts';
import { itemKey, quantityText } from './item.ts';
import { keptOf, type LotStock, type OnShelf, shelfOf } from './shelf.ts';
import { type Booking, bookingsOf, toComeOf, total } from './uses.ts';
import { dayOf } from './weeks.ts';

export interface LabOf {
  id: string;
  timeZone: string;
  settings: unknown;
}

const freeOf = ({ container }: OnShelf, isPlates: boolean): number =>
  isPlates ? freePlates(container) : freeDryGrams(container);

/** Of a container's free amount, the part that is left after what drying loses. */
export const usableShare = ({ usable, amount }: OnShelf): number => (amount > 0 ? usable / amount : 0);

/** Good ones before such as must be dried, opened ones first, then the oldest. */
export const inOrder = (a: OnShelf, b: OnShelf): number =>
  Number(a.mustRedry) - Number(b.mustRedry) ||
  Number(b.isOpened) - Number(a.isOpened) ||
  a.container.cameInAt.getTime() - b.container.cameInAt.getTime() ||
  (a.container.id < b.container.id ? -1 : 1);

/** Of a lot, what counts for all but the campaigns that it is kept for: nothing of a rejected one. */
export const freeForUse = (stock: LotStock): number => (stock.standing === 'REJECTED' ? 0 : freeUsable(stock));

/** The same of all lots. */
export const freeOfLots = (lots: readonly LotStock[]): number => lots.reduce((sum, lot) => sum + freeForUse(lot), 0);

/** Free and usable of a lot. */
export const freeUsable = (stock: LotStock): number => {
  const isPlates = stock.item.backing !== null;
  return stock.containers.reduce((sum, one) => sum + freeOf(one, isPlates) * usableShare(one), 0);
};

/** Of a lot, what can be used of all that is kept for a campaign and for its needs. */
export const usableKeptFor = (stock: LotStock, campaignId: string): number =>
  stock.containers.reduce(
    (sum, one) =>
      sum +
      usableShare(one) *
        one.holds.reduce((kept, hold) => kept + (hold.campaignId === campaignId ? keptOf(hold) : 0), 0),
    0,
  );

/** Which containers give how much, so that so much is usable; null where there is not enough. */
export function sharesOf(stock: LotStock, wanted: number): { containerId: string; amount: number }[] | null {
  const isPlates = stock.item.backing !== null;
  const shares: { containerId: string; amount: number }[] = [];
  let left = wanted;
  for (const one of [...stock.containers].sort(inOrder)) {
    const share = usableShare(one);
    if (left <= nothingGrams || share === 0) continue;
    const free = freeOf(one, isPlates);
    const amount = isPlates ? Math.min(free, Math.ceil(left - nothingGrams)) : Math.min(free, left / share);
    if (amount <= nothingGrams) continue;
    shares.push({ containerId: one.container.id, amount });
    left -= amount * share;
  }
  return left <= nothingGrams ? shares : null;
}

/** The lots of a campaign's item, judged by its own limit. */
export async function stockOf(tx: Work['tx'], lab: LabOf, campaign: Campaign): Promise<readonly LotStock[]> {
  const { sorbentId, limitWaterFraction } = campaign;
  const items = await shelfOf(tx, lab, { sorbentId, limitWaterFraction });
  return items.find(({ key }) => key === itemKey(campaign))?.lots ?? [];
}

async function kept(work: Work, campaign: Campaign, stock: LotStock, wanted: number): Promise<boolean> {
  const shares = sharesOf(stock, wanted);
  if (!shares) return false;
  const isPlates = campaign.backing !== null;
  for (const { containerId, amount } of shares)
    await holdMade(work, {
      containerId,
      dryGrams: isPlates ? null : amount,
      plates: isPlates ? amount : null,
      forWhat: campaign.name,
      until: null,
      campaignId: campaign.id,
    });
  const data = { lotId: stock.lot.id, keptAt: work.now, changedAt: work.now };
  await work.tx.campaign.update({ where: { id: campaign.id }, data });
  work.changed('Campaign', campaign.id, 'CHANGED');
  return true;
}

const checkedFirst = { ACCEPTED: 0, FIRST: 0, IN_CHECK: 1, UNCHECKED: 1, REJECTED: 2 } as const;
const isUnchecked = ({ standing }: LotStock): boolean => checkedFirst[standing] === 1;
/** `keepLot` takes it without being told so. */
export const isChecked = ({ standing }: LotStock): boolean => checkedFirst[standing] === 0;

interface Asked {
  lotNumber: string | null;
  takeUnchecked: boolean;
}

/** The lot that is named; else the oldest checked one with enough, then the oldest unchecked one. */
function lotFor(
  lots: readonly LotStock[],
  { lotNumber, takeUnchecked }: Asked,
  wantedOf: (lotId: string) => number,
): LotStock | undefined {
  if (lotNumber) return lots.find(({ lot }) => lot.lotNumber.toLowerCase() === lotNumber.toLowerCase());
  return lots
    .filter((one) => checkedFirst[one.standing] < (takeUnchecked ? 2 : 1))
    .filter((one) => freeUsable(one) >= wantedOf(one.lot.id) - nothingGrams)
    .sort((a, b) => checkedFirst[a.standing] - checkedFirst[b.standing])[0];
}

/** The lot that a campaign began with: all of it is of one lot. */
export const begunLotOf = ({ needs }: Booking): string | null =>
  needs.find(({ isMet, lotId }) => isMet && lotId !== null)?.lotId ?? null;

/** Keeps a lot for a campaign in place of the one that was; refuses what is not free, rejected, or unchecked and not said to be. */
export async function lotKeptFor(work: Work, lab: LabOf, campaign: Campaign, asked: Asked): Promise<string[]> {
  const today = dayOf(work.now, lab.timeZone);
  const booking = (await bookingsOf(work.tx, lab, [campaign.id]))(campaign.id);
  const wantedOf = (lotId: string | null) => total(toComeOf(campaign, booking, today, lotId));
  if (wantedOf(null) <= nothingGrams)
    throw invalid('input.campaign', campaign.name, 'one with uses to come: there is nothing to keep a lot for');
  const begunLot = begunLotOf(booking);
  // What it keeps now is free for the choice.
  await campaignLetGo(work, campaign.id);
  const all = await stockOf(work.tx, lab, campaign);
  const lots = begunLot !== null && !asked.lotNumber ? all.filter(({ lot }) => lot.id === begunLot) : all;
  const stock = lotFor(lots, asked, wantedOf);
  const say = (amount: number) => quantityText(Math.floor(amount), campaign.backing);
  if (!stock) {
    const some = lots
      .filter(({ standing }) => standing !== 'REJECTED')
      .map((one) => `${one.lot.lotNumber} (${say(freeUsable(one))} free${isUnchecked(one) ? ', not checked' : ''})`)
      .join(', ');
    if (!asked.lotNumber)
      throw invalid('input.lotNumber', null, `no lot has ${say(wantedOf(null))} free; there is ${some || 'none'}`);
    throw unknown('input.lotNumber', asked.lotNumber, some ? `one of: ${some}` : 'nothing of it is on the shelf');
  }
  const { id, lotNumber } = stock.lot;
  if (begunLot !== null && begunLot !== id)
    throw invalid('input.lotNumber', lotNumber, 'the lot that it began with: all of a campaign is of one lot');
  if (stock.standing === 'REJECTED')
    throw invalid('input.lotNumber', lotNumber, 'a lot that was not rejected by its check');
  if (isUnchecked(stock) && !asked.takeUnchecked)
    throw invalid('input.takeUnchecked', false, `true, to keep ${lotNumber} before its check is done: it is marked so`);
  if (!(await kept(work, campaign, stock, wantedOf(id))))
    throw invalid(
      'input.lotNumber',
      lotNumber,
      `a lot with ${say(wantedOf(id))} free; of ${lotNumber} ${say(freeUsable(stock))} are, the rest is kept for somebody or cannot be used`,
    );
  await needsFollow(work, campaign.id, id);
  return isUnchecked(stock) ? [`lot ${lotNumber} is not checked yet`] : [];
}

/** Needs of it that are not met yet are of its lot from now on. */
async function needsFollow(work: Work, campaignId: string, lotId: string): Promise<void> {
  const others = [{ lotId: null }, { lotId: { not: lotId } }, { isLotWished: false }];
  const where = { campaignId, metAt: null, droppedAt: null, OR: others };
  const needs = await work.tx.need.findMany({ where });
  for (const { id, lotId: before } of needs) {
    // What it kept of another lot goes; planning gives it its share of this one.
    if (before !== lotId) await needLetGo(work, id, true);
    await work.tx.need.update({ where: { id }, data: { lotId, isLotWished: true, changedAt: work.now } });
    work.changed('Need', id, 'CHANGED');
  }
}

/**
 * What is kept for a campaign made to fit its uses; `path` refuses where there is not enough, without one it is only said.
 * Nothing is kept of a lot that was rejected.
 */
export async function keptAnew(work: Work, lab: LabOf, campaign: Campaign, path: string | null): Promise<string[]> {
  await campaignLetGo(work, campaign.id);
  const booking = (await bookingsOf(work.tx, lab, [campaign.id]))(campaign.id);
  const wanted = total(toComeOf(campaign, booking, dayOf(work.now, lab.timeZone)));
  if (wanted <= nothingGrams) return [];
  const stock = (await stockOf(work.tx, lab, campaign)).find(({ lot }) => lot.id === campaign.lotId);
  const name = stock?.lot.lotNumber ?? 'its lot';
  if (stock?.standing === 'REJECTED') return [`${name} was rejected by its check: nothing of it is kept`];
  if (stock && (await kept(work, campaign, stock, wanted))) return [];
  const say = (amount: number) => quantityText(Math.floor(amount), campaign.backing);
  const free = stock ? freeUsable(stock) : 0;
  if (path !== null) throw invalid(path, say(wanted), `at most ${say(free)}: no more of ${name} is free`);
  if (stock && free > nothingGrams) await kept(work, campaign, stock, free);
  return [`only ${say(free)} of ${name} are free still, of ${say(wanted)} that it needs`];
}
