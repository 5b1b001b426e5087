// Campaigns as they are read: what is kept for each, until when that lasts; brought up to this week before.
import type { Context } from '../context.ts';
import type { Campaign } from '../database/generated/sqlite/client.ts';
import { write } from '../work.ts';
import { keptAnew } from './keep.ts';
import { coveredUntil } from './rules.ts';
import { toComeOf, total, usesOf } from './uses.ts';
import { dayOf, daySaid, mondayOf, weekOf } from './weeks.ts';

export interface KeptFor {
  readonly campaign: Campaign;
  /** Kept for it beside what its needs keep: dry grams or plates. */
  readonly amount: number;
  /** What its uses to come want beside its needs. */
  readonly wanted: number;
  /** The day of the last use that is covered; null when none is. */
  readonly lastsUntil: string | null;
  readonly coversAll: boolean;
}

/** What is kept for a campaign, and until when that lasts. */
async function keptForOf({ database, lab, now }: Context, campaign: Campaign): Promise<KeptFor> {
  const { read } = database;
  const today = dayOf(now(), lab.timeZone);
  const monday = mondayOf(today);
  const shares = await read.hold.findMany({ where: { campaignId: campaign.id, needId: null, releasedAt: null } });
  const amount = shares.reduce((sum, { dryGrams, plates }) => sum + (plates ?? dryGrams ?? 0), 0);
  const wanted = await toComeOf(read, campaign, today);
  const weekDay = (week: number) => String(week);
  const covered = coveredUntil(
    wanted.map(({ week, amount }) => ({ day: weekDay(week), amount })),
    amount,
  );
  const first = wanted.find(({ week }) => covered === null || week > Number(covered))?.week ?? null;
  const days = usesOf(campaign).map(({ day }) => day);
  const lastsUntil = days.filter((day) => first === null || weekOf(monday, day) < first).at(-1) ?? null;
  return { campaign, amount, wanted: total(wanted), lastsUntil, coversAll: first === null };
}

/** `kept for alkaloid series, lasts until 6 January`. */
export function keptWords({ campaign, lastsUntil, coversAll }: KeptFor, today: string): string {
  const until = lastsUntil === null ? null : daySaid(lastsUntil, today);
  if (until === null) return `kept for ${campaign.name}${coversAll ? '' : ', too little for its next use'}`;
  return `kept for ${campaign.name}, lasts ${coversAll ? '' : 'only '}until ${until}`;
}

const requests = new WeakMap<Context['load'], Promise<KeptFor[]>>();

/** All that is kept for campaigns now, worked out once a request however many lines ask. */
export function allKept(context: Context): Promise<KeptFor[]> {
  const before = requests.get(context.load);
  if (before) return before;
  const { database, lab } = context;
  const where = { labId: lab.id, droppedAt: null, lotId: { not: null } };
  const all = database.read.campaign
    .findMany({ where, orderBy: [{ keptAt: 'asc' }, { id: 'asc' }] })
    .then((some) => Promise.all(some.map((campaign) => keptForOf(context, campaign))));
  requests.set(context.load, all);
  return all;
}

/** What one campaign keeps; null while it has no lot. */
export const keptBy = async (context: Context, campaignId: string): Promise<KeptFor | null> =>
  (await allKept(context)).find(({ campaign }) => campaign.id === campaignId) ?? null;

/** Lets go of what was kept for weeks that are over, where there is any. */
export async function campaignsBroughtUp(context: Context): Promise<void> {
  const { database, lab } = context;
  const monday = mondayOf(dayOf(context.now(), lab.timeZone));
  const where = { labId: lab.id, droppedAt: null, lotId: { not: null } };
  const moved = (await database.read.campaign.findMany({ where })).filter((campaign) => {
    const keptIn = campaign.keptAt ? mondayOf(dayOf(campaign.keptAt, lab.timeZone)) : monday;
    return keptIn < monday && usesOf(campaign).some(({ day }) => day >= keptIn && day < monday);
  });
  if (moved.length === 0) return;
  const quiet = { ...context, actor: null, actorName: null, estimateLater: true };
  await write(quiet, 'campaignsBroughtUp', {}, async (work) => {
    for (const campaign of moved) {
      await keptAnew(work, lab, campaign, null);
      await work.tx.campaign.update({ where: { id: campaign.id }, data: { keptAt: work.now } });
    }
    return {};
  });
}

export async function campaignsOf(context: Context, isDropped: boolean): Promise<Campaign[]> {
  await campaignsBroughtUp(context);
  const { database, lab } = context;
  return database.read.campaign.findMany({
    where: { labId: lab.id, ...(isDropped ? {} : { droppedAt: null }) },
    orderBy: [{ madeAt: 'asc' }, { id: 'asc' }],
  });
}
