// What a lab's weighings taught, factor by factor with its weighings, as it is shown.
import type { Context } from '../context.ts';
import type { LearnedWeighing } from '../database/generated/sqlite/client.ts';
import { learnedRows, newestLearned } from '../database/learned.ts';
import type { Bears, Because } from '../science/calibration/taught.ts';
import { fitName } from './store.ts';
import type { Kind, Named } from './words.ts';

export interface LearnedFact extends Named {
  /** As it is stored; its name for scripts. */
  readonly name: string;
  /** Natural logarithms; for HUMIDITY fractions of relative humidity. */
  readonly ln: number;
  readonly sd: number;
  readonly priorSd: number;
  readonly weighingCount: number;
  readonly leftOut: number;
  readonly fromS: number | null;
  readonly toS: number | null;
  readonly lotId: string | null;
  readonly containerId: string | null;
  readonly says: readonly Says[];
}

/** A weighing and what it alone says of a factor, all others as they were learned. */
export interface Says {
  readonly weighing: LearnedWeighing;
  readonly ln: number;
  readonly sd: number;
}

const closures: Readonly<Record<string, string>> = {
  'closure:TIGHT': 'Tight lids',
  'closure:WELL_CLOSED': 'Well closed lids',
  'closure:LOOSELY_COVERED': 'Loosely covered mouths',
};

/** In the order of the page: what touches the most stock first. */
const kinds: readonly Kind[] = ['CLOSURE', 'OPEN_MOUTH', 'CLASS', 'LOT', 'CONTAINER', 'BED', 'HUMIDITY'];

const after = (name: string): string => name.slice(name.indexOf(':') + 1);

function kindOf(name: string): Kind | null {
  if (name in closures) return 'CLOSURE';
  if (name.startsWith('class:')) return 'CLASS';
  if (name.startsWith('capacity:')) return 'LOT';
  if (name.startsWith('container:')) return 'CONTAINER';
  return name === 'open' ? 'OPEN_MOUTH' : name === 'bed' ? 'BED' : name === 'bias' ? 'HUMIDITY' : null;
}

/** Names in words of what factors are about. */
async function namesOf({ load, database }: Context, names: readonly string[]) {
  const lots = names.filter((name) => name.startsWith('capacity:')).map(after);
  const containers = names.filter((name) => name.startsWith('container:')).map(after);
  const pools = names.filter((name) => name.startsWith('class:')).map(after);
  const own = await database.read.sorbent.findMany({ where: { id: { in: pools } }, select: { id: true, name: true } });
  const said = new Map(own.map(({ id, name }) => [`class:${id}`, name]));
  for (const id of lots) {
    const lot = await load.lot.load(id);
    const sorbent = lot && (await load.sorbent.load(lot.sorbentId));
    if (lot && sorbent) said.set(`capacity:${id}`, `Lot ${lot.lotNumber} of ${sorbent.name}`);
  }
  for (const id of containers) {
    const container = await load.container.load(id);
    if (container) said.set(`container:${id}`, container.label);
  }
  return said;
}

const classWords = (pool: string): string => `${pool[0]?.toUpperCase() ?? ''}${pool.slice(1)}`;

/** Only what weighings bear on; empty while nothing was learned. */
export async function learnedFacts(context: Context): Promise<LearnedFact[]> {
  const { database, lab } = context;
  const newest = await newestLearned(database, lab.id);
  if (!newest) return [];
  const rows = (await learnedRows(database, lab.id, newest.version)).flatMap((row) => {
    const kind = kindOf(row.factor);
    const because = row.because as Because;
    return kind && row.factor !== fitName && because.weighings + because.leftOut > 0 ? [{ ...row, kind, because }] : [];
  });
  const all = await database.read.learnedWeighing.findMany({
    where: { labId: lab.id },
    orderBy: [{ at: 'asc' }, { eventId: 'asc' }],
  });
  const said = await namesOf(
    context,
    rows.map(({ factor }) => factor),
  );
  const facts = rows.map(({ factor: name, lnValue, lnSd, kind, because }): LearnedFact => {
    const isLot = kind === 'LOT';
    const bears = isLot ? `lot:${after(name)}` : name;
    return {
      name,
      kind,
      about: closures[name] ?? said.get(name) ?? (kind === 'CLASS' ? classWords(after(name)) : ''),
      ln: lnValue,
      sd: lnSd,
      priorSd: because.priorSd,
      weighingCount: because.weighings,
      leftOut: because.leftOut,
      fromS: because.fromS,
      toS: because.toS,
      lotId: isLot ? after(name) : null,
      containerId: kind === 'CONTAINER' ? after(name) : null,
      says: all.flatMap((weighing) => {
        const one = (weighing.bearsOn as unknown as Bears[]).find(({ factor }) => factor === bears);
        return one ? [{ weighing, ln: lnValue + one.by, sd: one.sd }] : [];
      }),
    };
  });
  const order = (one: LearnedFact): number => kinds.indexOf(one.kind);
  return facts.sort(
    (one, other) =>
      order(one) - order(other) ||
      other.weighingCount - one.weighingCount ||
      (one.about < other.about ? -1 : one.about > other.about ? 1 : 0),
  );
}

/** A weighing that stands, with what learning made of it; null where the next fit has yet to see it. */
export interface WeighingSeen {
  readonly eventId: string;
  readonly containerId: string;
  readonly at: Date;
  readonly learned: LearnedWeighing | null;
  /** What somebody said last of it. */
  readonly isRight: boolean | null;
}

export interface Asked {
  readonly containerId?: string | null;
  readonly onlyLeftOut?: boolean | null;
  readonly last: number;
}

async function seen(
  context: Context,
  events: { id: string; containerId: string; at: Date }[],
): Promise<WeighingSeen[]> {
  const { database } = context;
  const ids = events.map(({ id }) => id);
  const learned = await database.read.learnedWeighing.findMany({ where: { eventId: { in: ids } } });
  const said = await database.read.weighingJudgement.findMany({
    where: { eventId: { in: ids } },
    orderBy: { seq: 'asc' },
  });
  const byEvent = new Map(learned.map((one) => [one.eventId, one]));
  const judged = new Map(said.map(({ eventId, isRight }) => [eventId, isRight]));
  return events.map(({ id, containerId, at }) => ({
    eventId: id,
    containerId,
    at,
    learned: byEvent.get(id) ?? null,
    isRight: judged.get(id) ?? null,
  }));
}

/** Weighings that stand, newest first. */
export async function weighings(context: Context, { containerId, onlyLeftOut, last }: Asked): Promise<WeighingSeen[]> {
  const { database, lab } = context;
  const left = onlyLeftOut
    ? await database.read.learnedWeighing.findMany({
        where: { labId: lab.id, counts: { in: ['LEFT_OUT', 'REFUSED', 'CONFIRMED'] } },
        select: { eventId: true },
      })
    : null;
  const events = await database.read.event.findMany({
    where: {
      labId: lab.id,
      type: 'WEIGHED',
      stands: true,
      ...(containerId && { containerId }),
      ...(left && { id: { in: left.map(({ eventId }) => eventId) } }),
    },
    orderBy: [{ at: 'desc' }, { place: 'desc' }],
    take: last,
    select: { id: true, containerId: true, at: true },
  });
  return seen(context, events);
}

/** One of them. */
export async function weighingSeen(context: Context, eventId: string): Promise<WeighingSeen | null> {
  const event = await context.database.read.event.findUnique({
    where: { id: eventId },
    select: { id: true, containerId: true, at: true },
  });
  return event ? ((await seen(context, [event]))[0] ?? null) : null;
}
