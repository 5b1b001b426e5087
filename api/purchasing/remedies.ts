// What would make a lot last: another lot for the everyday use, buying now, a campaign on another lot, a wider limit.
import type { Campaign, Offer } from '../database/generated/sqlite/client.ts';
import { chanceOfLasting } from './cover.ts';
import type { Asked } from './coverage.ts';
import { quantityText } from './item.ts';
import { packsText } from './item-words.ts';
import { freeUsable } from './keep.ts';
import { plannedWeeks } from './rules.ts';
import type { LotStock } from './shelf.ts';
import { daysAfter, daySaid } from './weeks.ts';

export interface Remedy {
  readonly what: 'OTHER_LOT' | 'BUY_NOW' | 'POSTPONE' | 'RELAX_LIMIT';
  readonly sentence: string;
  /** The chance that it lasts then. */
  readonly chance: number;
  readonly offer: Offer | null;
  readonly packs: number | null;
  readonly campaign: Campaign | null;
  readonly limitWaterFraction: number | null;
}

const nothing = { offer: null, packs: null, campaign: null, limitWaterFraction: null };

/** Everyday use from the newer lots that are there. */
function otherLot({ facts, stock, others, free, older, weeks }: Asked): Remedy[] {
  const newer = others
    .filter(({ lot }) => lot.receivedAt >= stock.lot.receivedAt)
    .sort((a, b) => freeUsable(b) - freeUsable(a));
  const [most] = newer;
  if (!most || freeUsable(most) <= 0) return [];
  const chance = chanceOfLasting(free + older + freeUsable(most), facts.weekly, weeks);
  const unchecked = most.standing === 'UNCHECKED' || most.standing === 'IN_CHECK' ? ', which is not checked yet' : '';
  const amount = quantityText(Math.floor(freeUsable(most)), stock.item.backing);
  const sentence = `take everyday use from lot ${most.lot.lotNumber}${unchecked}: ${amount} of it are free`;
  return [{ ...nothing, what: 'OTHER_LOT', sentence, chance }];
}

/** The offer that is on the shelf and checked first, and enough of it. */
function soonest({ facts }: Asked): { offer: Offer; weeks: number } | null {
  const [first] = facts.offers
    .map((offer) => ({ offer, weeks: plannedWeeks(offer) + facts.rule.checkWeeks }))
    .sort((a, b) => a.weeks - b.weeks);
  return first ?? null;
}

/** A lot bought now serves everyday use from its release on. */
function buyNow(asked: Asked): Remedy[] {
  const { facts, stock, free, older, weeks, today } = asked;
  const first = soonest(asked);
  if (!first || first.weeks >= weeks) return [];
  const { offer } = first;
  const pack = offer.packPlates ?? offer.packGrams ?? 1;
  const wanted = Math.max(0, facts.weekly.mean * (weeks - first.weeks) - Math.max(0, free + older));
  const packs = Math.max(1, Math.min(offer.mostPacks ?? Infinity, Math.ceil(wanted / pack)));
  const chance = chanceOfLasting(free + older, facts.weekly, first.weeks);
  const released = daySaid(daysAfter(today, 7 * first.weeks), today);
  const sentence = `buy ${packsText(packs, offer)} now: checked by ${released}, it serves everyday use from then on and lot ${stock.lot.lotNumber} the rest`;
  return [{ ...nothing, what: 'BUY_NOW', sentence, chance, offer, packs }];
}

/** A campaign that has not begun could run on another lot, or later on one that is bought now. */
function postpone(asked: Asked): Remedy[] {
  const { facts, stock, others, free, older, weeks, today } = asked;
  return facts.campaigns
    .filter(({ id }) => (stock.keptForCampaigns.get(id) ?? 0) > 0)
    .map((campaign): Remedy => {
      const kept = stock.keptForCampaigns.get(campaign.id) ?? 0;
      const chance = chanceOfLasting(free + kept + older, facts.weekly, weeks);
      const other = others.find((one) => one.standing !== 'UNCHECKED' && freeUsable(one) >= kept);
      const first = soonest(asked);
      const sentence = other
        ? `keep lot ${other.lot.lotNumber} for ${campaign.name} instead, if it has not begun`
        : first
          ? `postpone ${campaign.name} until ${daySaid(daysAfter(today, 7 * first.weeks), today)}, when a lot bought now is checked`
          : `postpone ${campaign.name} until there is another lot`;
      return { ...nothing, what: 'POSTPONE', sentence, chance, campaign };
    });
}

interface Relaxed {
  readonly limit: number;
  readonly stock: LotStock | null;
}

/** With a wider limit nothing is redried, so nothing is lost to it. */
function relaxLimit({ facts, stock, free, older, weeks }: Asked, relaxed: Relaxed | null): Remedy[] {
  if (!relaxed?.stock) return [];
  const more = freeUsable(relaxed.stock) - free;
  if (more <= 0) return [];
  const chance = chanceOfLasting(free + more + older, facts.weekly, weeks);
  const percent = (100 * relaxed.limit).toFixed(1);
  const amount = quantityText(Math.ceil(more), stock.item.backing);
  const sentence = `use it as it is, up to ${percent} % water (dry basis): ${amount} more, nothing is redried`;
  return [{ ...nothing, what: 'RELAX_LIMIT', sentence, chance, limitWaterFraction: relaxed.limit }];
}

/** All that helps, the most first. */
export const remediesOf = (asked: Asked, chance: number, relaxed: Relaxed | null): Remedy[] =>
  [...otherLot(asked), ...buyNow(asked), ...postpone(asked), ...relaxLimit(asked, relaxed)]
    .filter((remedy) => remedy.chance > chance + 0.005)
    .sort((a, b) => b.chance - a.chance);
