// What would make a lot last: another lot for the everyday use, buying now, a campaign on another lot, a wider limit.
import type { Campaign, Offer } from '../database/generated/sqlite/client.ts';
import { chanceOfLasting } from './cover.ts';
import type { Asked } from './coverage.ts';
import { quantityText } from './item.ts';
import { packsText } from './item-words.ts';
import { begunLotOf, freeUsable, isChecked } from './keep.ts';
import { dryPerPack } from './packs.ts';
import { plannedWeeks } from './rules.ts';
import type { LotStock } from './shelf.ts';
import { toComeOf, total, usesOf } from './uses.ts';
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
  const unchecked = isChecked(most) ? '' : ', which is not checked yet';
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
  const wanted = Math.max(0, facts.weekly.mean * (weeks - first.weeks) - Math.max(0, free + older));
  const packs = Math.max(
    1,
    Math.min(offer.mostPacks ?? Infinity, Math.ceil(wanted / dryPerPack(offer, facts.dryShare))),
  );
  const chance = chanceOfLasting(free + older, facts.weekly, first.weeks);
  const released = daySaid(daysAfter(today, 7 * first.weeks), today);
  const sentence = `buy ${packsText(packs, offer)} now: checked by ${released}, it serves everyday use from then on and lot ${stock.lot.lotNumber} the rest`;
  return [{ ...nothing, what: 'BUY_NOW', sentence, chance, offer, packs }];
}

/** Where a campaign that has not begun could run instead: on another lot, or later. */
function instead(asked: Asked, campaign: Campaign): string {
  const { others, bookingOf, today } = asked;
  const { name } = campaign;
  const wanted = (lotId: string | null) => toComeOf(campaign, bookingOf(campaign.id), today, lotId);
  const other = others.find((one) => isChecked(one) && freeUsable(one) >= total(wanted(one.lot.id)));
  if (other) return `keep lot ${other.lot.lotNumber} for ${name} instead`;
  const first = soonest(asked);
  if (!first) return `postpone ${name} until there is another lot`;
  const released = daysAfter(today, 7 * first.weeks);
  const begins = usesOf(campaign).find(({ day }) => day >= today)?.day ?? today;
  return begins > released
    ? `keep a lot bought now for ${name} instead: it is checked by ${daySaid(released, today)}, and ${name} begins on ${daySaid(begins, today)}`
    : `postpone ${name} until ${daySaid(released, today)}, when a lot bought now is checked`;
}

/** All of a campaign is of one lot: only one that has not begun can run on another, or later. */
function postpone(asked: Asked): Remedy[] {
  const { facts, stock, free, older, weeks, bookingOf } = asked;
  return facts.campaigns
    .map((campaign) => ({ campaign, kept: stock.keptForCampaigns.get(campaign.id) ?? 0 }))
    .filter(({ campaign, kept }) => kept > 0 && begunLotOf(bookingOf(campaign.id)) === null)
    .map(({ campaign, kept }): Remedy => {
      const chance = chanceOfLasting(free + kept + older, facts.weekly, weeks);
      return { ...nothing, what: 'POSTPONE', sentence: instead(asked, campaign), chance, campaign };
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
