// What the purchase programme is given and what it answers, by the names of the command's JSON.
// Quantities are whole base units of an item (dry g, plates); money is whole minor units of one currency; rates end in
// Micro: millionths of a minor unit, for one base unit (and week). Weeks count from 1.
import type { Sentence } from './words.ts';

/** What a new lot costs before it may be used. */
export interface LotCheck {
  /** Money for one check. */
  readonly cost: number;
  /** Whole weeks from arrival to release; 0: no old lot is needed for it. */
  readonly weeks: number;
  /** Base units of the new lot that the check uses up. */
  readonly sample: number;
  /** Base units of older lots that should still be there in the week before release. */
  readonly keep: number;
  /** Money that a check without them costs more. */
  readonly withoutOld: number;
}

export interface PurchaseItem {
  readonly id: string;
  /** What one base unit is called: 'g', 'plates'. */
  readonly unit: string;
  /** Unbooked use expected in each of the weeks. */
  readonly demand: readonly number[];
  /** Released stock that should be there at the end of every week. */
  readonly safety: number;
  readonly check: LotCheck;
  /** For a base unit in the house at the end of a week. */
  readonly holdingMicro: number;
  /** For a base unit that is written off. */
  readonly wasteMicro: number;
  /** For a base unit of unbooked use that is not met. */
  readonly shortMicro: number;
  /** For a base unit below safety and week. */
  readonly belowSafetyMicro: number;
  /** What a base unit left after the last week is worth; below every unit price. */
  readonly endValueMicro: number;
}

/** A lot that is in the house, or on its way. */
export interface PurchaseLot {
  readonly id: string;
  readonly item: string;
  readonly quantity: number;
  /** The first week in which it may be used. */
  readonly from: number;
  /** The last week in which it may be used, then it is written off; null: it does not expire. */
  readonly lastWeek: number | null;
  readonly status: 'accepted' | 'in-check' | 'rejected';
}

/** Uses that must all come from one lot. */
export interface PurchaseCampaign {
  readonly id: string;
  readonly item: string;
  readonly uses: readonly { readonly week: number; readonly quantity: number }[];
  /** Money lost when no lot covers it. */
  readonly uncovered: number;
}

export interface PurchaseSupplier {
  readonly id: string;
  /** Money for each week in which something is ordered; a list has a figure for each order week. */
  readonly deliveryFee: number | readonly number[];
  /** Money that the goods of an order week must come to. */
  readonly minOrder: number;
}

export interface PurchaseOffer {
  readonly id: string;
  readonly item: string;
  readonly supplier: string;
  /** Base units in a pack. */
  readonly pack: number;
  /** The price of each pack from so many packs on, for all of them; the first is from 1. */
  readonly prices: readonly { readonly from: number; readonly price: number }[];
  /** Whole weeks from order to arrival. */
  readonly leadWeeks: number;
  /** Weeks of use from the week of arrival on; null: it does not expire. */
  readonly shelfWeeks: number | null;
  /** The most packs of one order. */
  readonly maxPacks: number;
}

export interface StorageGroup {
  readonly id: string;
  /** Whole volume units that fit, after the week's arrivals and before its use. */
  readonly capacity: number;
  /** For a volume unit above it and week. */
  readonly overMicro: number;
  /** Whole volume units of a base unit, by item. */
  readonly volume: Readonly<Record<string, number>>;
}

export interface PurchaseLimits {
  readonly seconds: number;
  /** Stop when the cost is proven to be within this share of the least. */
  readonly gap: number;
}

export interface PurchaseProblem {
  /** ISO 4217. */
  readonly currency: string;
  readonly minorDigits: number;
  readonly weeks: number;
  readonly items: readonly PurchaseItem[];
  readonly lots: readonly PurchaseLot[];
  readonly campaigns: readonly PurchaseCampaign[];
  readonly suppliers: readonly PurchaseSupplier[];
  readonly offers: readonly PurchaseOffer[];
  readonly storage: readonly StorageGroup[];
  readonly limits: PurchaseLimits;
}

/** Whole minor units, each rounded half to even; `endValue` is taken off. */
export interface PurchaseCosts {
  readonly goods: number;
  readonly fees: number;
  readonly checks: number;
  readonly withoutOld: number;
  readonly holding: number;
  readonly waste: number;
  readonly shortage: number;
  readonly belowSafety: number;
  readonly uncovered: number;
  readonly overflow: number;
  readonly endValue: number;
}

export interface PurchaseOrder {
  readonly offer: string;
  readonly orderWeek: number;
  readonly arriveWeek: number;
  readonly releaseWeek: number;
  readonly packs: number;
  /** Minor units for one pack. */
  readonly price: number;
  /** One sentence. */
  readonly reason: string;
  /** The same by its parts. */
  readonly reasonParts: Sentence;
}

export interface PurchaseAnswer {
  /** `optimal`: proven; `gap`: as near to it as was asked, or as this method comes; else what ended it. */
  readonly status: 'optimal' | 'gap' | 'time' | 'cancelled';
  /** Minor units, computed exactly and rounded once, half to even. */
  readonly cost: number;
  /** No plan costs less; null where that is not proven. */
  readonly bound: number | null;
  /** (cost − bound) / cost. */
  readonly gap: number | null;
  /** The same without the goods that no plan can do without, at their lowest price. */
  readonly gapControllable: number | null;
  readonly costs: PurchaseCosts;
  readonly orders: readonly PurchaseOrder[];
  readonly campaigns: readonly { readonly id: string; readonly lot: string | null }[];
  /** Every lot, a new one as `offer@orderWeek`; the last week in which it is used, null: never; base units written off. */
  readonly lots: readonly { readonly id: string; readonly lastUse: number | null; readonly waste: number }[];
  /** By when the next lot of an item must be in the house, and released; items that need none are left out. */
  readonly nextLotBy: readonly { readonly item: string; readonly arriveBy: number; readonly releasedBy: number }[];
  /** One sentence each. */
  readonly warnings: readonly string[];
  /** The same by their parts. */
  readonly warningParts: readonly Sentence[];
}

/** Who waits for the plan: asked now and then, and told. The programme itself knows no clock. */
export interface PurchaseWatch {
  /** Seconds since it began. */
  readonly seconds: () => number;
  readonly cancelled: () => boolean;
  /** The share that is done, 0 to 1. */
  readonly progress: (share: number) => void;
}
