// Campaigns as they are read: what is kept for each, until when that lasts; brought up to this week before.
import type { Context } from '../context.ts';
import type { Campaign } from '../database/generated/sqlite/client.ts';
import { rejectedLots } from '../lots/service.ts';
import { onceARequest } from '../once.ts';
import { write } from '../work.ts';
import { sharesFitted, surplusShares } from './fit.ts';
import { coveredCount } from './rules.ts';
import { type Booking, bookingsOf, toComeOf, total, usesOf, type Wanted } from './uses.ts';
import { dayOf, daySaid, mondayOf, weekOf } from './weeks.ts';

export interface KeptFor {
  readonly campaign: Campaign;
  /** Kept for it beside what its needs keep: dry grams or plates. */
  readonly amount: number;
  /** What its uses to come want beside its needs. */
  readonly wanted: number;
  /** The day of the last use that is covered, from this week on; null when none is. */
  readonly lastsUntil: string | null;
  readonly coversAll: boolean;
  /** Its lot was rejected: what is kept covers nothing. */
  readonly isRejected: boolean;
  /** Nothing of it is to come any more, and none of its needs keeps anything. */
  readonly isOver: boolean;
}

/** The last day that is covered: every use before the first week that is not. */
function lastDay(campaign: Campaign, wanted: readonly Wanted[], covered: number, today: string): string | null {
  const monday = mondayOf(today);
  const first = wanted[covered]?.week ?? Infinity;
  const weeks = usesOf(campaign).map(({ day }) => ({ day, week: weekOf(monday, day) }));
  return weeks.filter(({ week }) => week >= 1 && week < first).at(-1)?.day ?? null;
}

/** What is kept for a campaign, and until when that lasts. */
function keptForOf(campaign: Campaign, booking: Booking, today: string, isRejected: boolean): KeptFor {
  const amount = total(booking.shares);
  const wanted = toComeOf(campaign, booking, today);
  const isBooked = booking.needs.some(({ isMet, held }) => !isMet && held.length > 0);
  const covered = isRejected ? 0 : coveredCount(wanted, amount);
  return {
    ...{ campaign, amount, wanted: total(wanted), isRejected, coversAll: covered === wanted.length },
    isOver: wanted.length === 0 && !isBooked,
    lastsUntil: isRejected ? null : lastDay(campaign, wanted, covered, today),
  };
}

/** `kept for alkaloid series, lasts until 6 January`. */
export function keptWords({ campaign, lastsUntil, coversAll, isRejected }: KeptFor, today: string): string {
  if (isRejected) return `kept for ${campaign.name}, but rejected by its check`;
  const until = lastsUntil === null ? null : daySaid(lastsUntil, today);
  if (until === null) return `kept for ${campaign.name}${coversAll ? '' : ', too little for its next use'}`;
  return `kept for ${campaign.name}, lasts ${coversAll ? '' : 'only '}until ${until}`;
}

/** All that is kept for campaigns now, worked out once a request however many lines ask. */
const allKept = onceARequest(async (context): Promise<KeptFor[]> => {
  const { database, lab } = context;
  const { read } = database;
  const where = { labId: lab.id, droppedAt: null, lotId: { not: null } };
  const some = await read.campaign.findMany({ where, orderBy: [{ keptAt: 'asc' }, { id: 'asc' }] });
  if (some.length === 0) return [];
  const today = dayOf(context.now(), lab.timeZone);
  const ids = some.map(({ id }) => id);
  const [bookingOf, rejected] = await Promise.all([bookingsOf(read, lab, ids), rejectedLots(read, lab.id)]);
  return some.map((campaign) => keptForOf(campaign, bookingOf(campaign.id), today, rejected.has(campaign.lotId ?? '')));
});

/** What a lot is kept for; campaigns that are over are left out. */
export const keptOfLot = async (context: Context, lotId: string): Promise<KeptFor[]> =>
  (await allKept(context)).filter(({ campaign, isOver }) => campaign.lotId === lotId && !isOver);

/** What one campaign keeps; null while it has no lot. */
export const keptBy = async (context: Context, campaignId: string): Promise<KeptFor | null> =>
  (await allKept(context)).find(({ campaign }) => campaign.id === campaignId) ?? null;

/** Lets go of what was kept for weeks that are over, where there is any. */
export async function campaignsBroughtUp(context: Context): Promise<void> {
  const { database, lab } = context;
  if ((await surplusShares(database.read, lab, context.now())).length === 0) return;
  const quiet = { ...context, actor: null, actorName: null, estimateLater: true };
  await write(quiet, 'campaignsBroughtUp', {}, async (work) => {
    await sharesFitted(work, lab);
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
