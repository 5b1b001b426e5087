// Will a lot last? The chance that it does, from what is kept of it and from how lumpy the rest of the use is; what is opened
// already counts as what will be left of it.
import type { z } from 'zod';
import type { Context } from '../context.ts';
import type { Backing, Lot } from '../database/generated/sqlite/client.ts';
import { unknown } from '../errors.ts';
import { sorbentOf } from '../stock/service.ts';
import { campaignsBroughtUp } from './campaigns.ts';
import { chanceOfLasting, lastDay } from './cover.ts';
import { type ItemFacts, itemsOf } from './items.ts';
import { freeForUse, freeUsable } from './keep.ts';
import { type Remedy, remediesOf } from './remedies.ts';
import type { coverageSaid } from './said.ts';
import { type LotStock, shelfOf } from './shelf.ts';
import { type Booking, bookingsOf } from './uses.ts';
import { dayOf, daySaid, daysBetween } from './weeks.ts';

export interface Coverage {
  readonly lot: Lot;
  readonly backing: Backing | null;
  readonly until: string;
  readonly chance: number;
  readonly standing: LotStock['standing'];
  readonly amount: number;
  readonly opened: number;
  readonly mustRedry: number;
  readonly lostToRedrying: number;
  readonly unusable: number;
  readonly usable: number;
  /** Kept for campaigns, and for needs and people. */
  readonly keptForCampaigns: number;
  readonly keptForOthers: number;
  readonly free: number;
  /** Free of older lots, which are used first. */
  readonly older: number;
  readonly weekly: number;
  /** The day it lasts until with an even chance, and with the lab's service level; null: beyond two years. */
  readonly likelyUntil: string | null;
  readonly surelyUntil: string | null;
  readonly remedies: readonly Remedy[];
  readonly sentence: string;
  readonly asksForWeekly: boolean;
}

const sum = (of: Iterable<number>): number => [...of].reduce((total, one) => total + one, 0);

/** What decides whether a lot lasts. */
export interface Asked {
  readonly facts: ItemFacts;
  readonly stock: LotStock;
  readonly others: readonly LotStock[];
  readonly free: number;
  readonly older: number;
  readonly weeks: number;
  readonly until: string;
  readonly today: string;
  /** What the needs of its campaigns have. */
  readonly bookingOf: (campaignId: string) => Booking;
}

const isUsed = ({ standing }: LotStock): boolean => standing !== 'REJECTED';

function sentenceOf({ facts, stock, until, today, weeks }: Asked, chance: number, likely: string | null): string {
  const { lot } = stock;
  const day = daySaid(until, today);
  if (stock.standing === 'REJECTED') return `lot ${lot.lotNumber} was rejected by its check: nothing of it is used`;
  if (weeks <= 0) return `lot ${lot.lotNumber} is there`;
  if (facts.asksForWeekly)
    return `whether lot ${lot.lotNumber} lasts until ${day} is not known: too little history; say what a week uses`;
  const head =
    chance > 0.995
      ? `lot ${lot.lotNumber} lasts until ${day} almost surely`
      : chance < 0.005
        ? `lot ${lot.lotNumber} almost surely does not last until ${day}`
        : `lot ${lot.lotNumber} lasts until ${day} with a chance of ${Math.round(100 * chance)} %`;
  return likely !== null && likely < until ? `${head}; it ends about ${daySaid(likely, today)}` : head;
}

/** The answer for one lot, and for a limit of one's own instead of the bands. */
export async function coverageOf(context: Context, asked: z.output<typeof coverageSaid>): Promise<Coverage> {
  await campaignsBroughtUp(context);
  const { database, lab } = context;
  const { read } = database;
  const today = dayOf(context.now(), lab.timeZone);
  const sorbent = await sorbentOf({ tx: read, labId: lab.id }, asked.sorbent, 'coverage.sorbent');
  const items = await itemsOf(context);
  const ofSorbent = items.filter(
    ({ item }) => item.sorbentId === sorbent.id && (!asked.backing || item.backing === asked.backing),
  );
  const isNamed = ({ lot }: LotStock) => lot.lotNumber.toLowerCase() === asked.lotNumber.trim().toLowerCase();
  const facts = ofSorbent.find(({ stock }) => stock?.lots.some(isNamed));
  const stock = facts?.stock?.lots.find(isNamed);
  if (!facts || !stock) {
    const names = ofSorbent.flatMap(({ stock }) => stock?.lots.map(({ lot }) => lot.lotNumber) ?? []).join(', ');
    throw unknown('coverage.lot', asked.lotNumber, names ? `one of: ${names}` : 'nothing of it is on the shelf');
  }
  const others = (facts.stock?.lots ?? []).filter((one) => one !== stock && isUsed(one));
  const free = freeForUse(stock);
  const older = sum(others.filter(({ lot }) => lot.receivedAt < stock.lot.receivedAt).map(freeUsable));
  const weeks = daysBetween(today, asked.until) / 7;
  const of: Asked = {
    ...{ facts, stock, others, free, older, weeks, until: asked.until, today },
    bookingOf: await bookingsOf(
      read,
      lab,
      facts.campaigns.map(({ id }) => id),
    ),
  };
  const { weekly, rule } = facts;
  const chance = stock.standing === 'REJECTED' ? 0 : chanceOfLasting(free + older, weekly, weeks);
  const dayWith = (least: number) => lastDay(free + older, weekly, least, today);
  const likelyUntil = dayWith(0.5);
  const loose = async () => {
    const wettest = Math.max(...wet.map(({ container }) => waters.get(container.id) ?? 0), 0);
    const relaxed = await shelfOf(read, lab, { sorbentId: sorbent.id, limitWaterFraction: wettest + 1e-9 });
    return {
      limit: wettest,
      stock:
        relaxed
          .flatMap(({ lots }) => lots)
          .find((one) => one.lot.id === stock.lot.id && one.item.backing === stock.item.backing) ?? null,
    };
  };
  // What touched solvent stays unusable however wide the limit is.
  const wet = stock.containers.filter(
    ({ container, usable, lost }) => (lost > 0 || usable === 0) && container.touchedSolventAt === null,
  );
  const ids = wet.map(({ container }) => container.id);
  const exposures = wet.length > 0 ? await read.exposure.findMany({ where: { containerId: { in: ids } } }) : [];
  const waters = new Map(exposures.map(({ containerId, scoopWaterFraction }) => [containerId, scoopWaterFraction]));
  return {
    ...{ lot: stock.lot, backing: stock.item.backing, until: asked.until, chance, standing: stock.standing },
    ...{ amount: stock.amount, opened: stock.opened, mustRedry: stock.mustRedry, lostToRedrying: stock.lost },
    ...{ unusable: stock.unusable, usable: stock.usable, free, older, weekly: weekly.mean, likelyUntil },
    keptForCampaigns: sum(stock.keptForCampaigns.values()),
    keptForOthers: stock.kept,
    surelyUntil: dayWith(rule.serviceLevel),
    remedies: chance >= rule.serviceLevel ? [] : remediesOf(of, chance, wet.length > 0 ? await loose() : null),
    sentence: sentenceOf(of, chance, likelyUntil),
    asksForWeekly: facts.asksForWeekly,
  };
}
