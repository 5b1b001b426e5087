// Corrections: a later event supersedes an earlier one, with a replacement or, void, with nothing. Nothing is edited.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { Container, Event } from '../database/generated/sqlite/client.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { write, type Work } from '../work.ts';
import { habit, saidOf, type Said } from './details.ts';
import { inOvenSaid } from './in-oven.ts';
import { roomOf } from './find.ts';
import { booked, sceneOf, type Happens } from './happen.ts';
import { localId } from './ids.ts';
import { recorded, type Booking, type Recorded } from './record.ts';
import { said } from './said.ts';
import { words } from './words.ts';

const replacementSaid = z.object({
  at: said.at,
  note: z.string().max(2000, 'at most 2000 signs').nullish(),
  grams: z.number().nullish(),
  basis: z.enum(['DRY', 'AS_RECEIVED'], 'DRY or AS_RECEIVED').nullish(),
  plates: z.number().nullish(),
  grossGrams: z.number().nullish(),
  tareGrams: z.number().nullish(),
  room: said.name.nullish(),
  closure: said.closure.nullish(),
  leftOpen: z.boolean().nullish(),
  openMinutes: z.number().nullish(),
  scooping: said.scooping.nullish(),
  timesADay: z.number().nullish(),
  minutes: z.number().nullish(),
  temperatureC: z.number().nullish(),
  humidityPercent: z.number().nullish(),
  vacuum: z.boolean().nullish(),
  ...inOvenSaid,
  waterFraction: z.number().nullish(),
  startWaterFraction: z.number().nullish(),
  method: z.string().nullish(),
  of: z.string().nullish(),
  what: z.string().nullish(),
  why: z.string().nullish(),
  solvent: z.string().nullish(),
  mobilePhase: z.string().nullish(),
  columnVolumes: z.number().nullish(),
  flowMlPerMin: z.number().nullish(),
  direction: z.string().nullish(),
  fullLength: z.boolean().nullish(),
  frontEdge: z.string().nullish(),
  isMobilePhase: z.boolean().nullish(),
  tankLoads: z.number().nullish(),
  mlPerLoad: z.number().nullish(),
  tankMinutes: z.number().nullish(),
  oven: z.string().nullish(),
  over: z.string().nullish(),
  hours: z.number().nullish(),
});

export const correctSaid = z.object({
  event: z.string('the id of an event').min(1, 'the id of an event'),
  replacement: replacementSaid.nullish(),
  void: z.boolean().nullish(),
  note: said.text,
  clientKey: said.clientKey,
});

type Replacement = z.output<typeof replacementSaid>;

/** What was said when an event was recorded, as its way takes it. */
function saidAgain({ type, detail }: Said, event: Event): Record<string, unknown> {
  const flat = { ...detail, plates: event.plates };
  if ('into' in detail) return { ...flat, ...detail.into };
  if (type === 'WEIGHED') return { ...flat, ...detail.gross, waterFraction: detail.saidWaterFraction };
  if (type === 'COUNTED') {
    const grams = detail.of === 'GRAMS' ? detail.grams : null;
    return { ...flat, grams, plates: detail.plates };
  }
  if (type === 'DISCARDED' && detail.all) return { ...flat, plates: null };
  if (type === 'COMBINED' && detail.grams === null) return { ...flat, plates: null };
  return flat;
}

/** Said beside what happened, not of it. */
const beside: ReadonlySet<string> = new Set(['at', 'note']);

/** The said parts of a replacement in the words of the way; what is not given stays as it was. */
async function changed(work: Work, before: Said, replacement: Replacement): Promise<Record<string, unknown>> {
  const { room, timesADay, minutes, startWaterFraction, ...rest } = replacement;
  const given = Object.entries(rest).filter(
    ([name, value]) => !beside.has(name) && value !== null && value !== undefined,
  );
  const changes: Record<string, unknown> = Object.fromEntries(given);
  if (room) changes.roomId = (await roomOf(work, room, 'input.replacement.room')).id;
  if (typeof startWaterFraction === 'number') Object.assign(changes, { startWaterFraction, startWaterFrom: 'GIVEN' });
  if (before.type === 'HABIT_SET' && typeof timesADay === 'number') {
    changes.habit =
      timesADay === 0 ? null : habit.parse({ timesADay, minutes: minutes ?? before.detail.habit?.minutes ?? 0 });
  } else if (typeof minutes === 'number') changes.minutes = minutes;
  return changes;
}

const sameBooking = (event: Event, said: Said): Booking => ({
  said,
  dryGrams: event.dryGrams,
  plates: event.plates,
  notes: [],
});

/** What the replacement books; as it was when only the words of its note change. */
async function replaced(
  work: Work,
  container: Container,
  event: Event,
  replacement: Replacement,
  at: Date,
): Promise<Booking> {
  const before = saidOf(event.type, event.detail);
  if (before.type === 'CORRECTED') throw invalid('input.event', event.id, 'an event that says what happened');
  const changes = await changed(work, before, replacement);
  if (Object.keys(changes).length === 0 && at.getTime() === event.at.getTime()) return sameBooking(event, before);
  const scene = await sceneOf(work, container, at, { without: event.id, under: 'input.replacement' });
  return booked(before.type satisfies Happens, scene, { ...saidAgain(before, event), ...changes });
}

/** One happening with all that was said of it, first to last. Each statement or taking back is tied to the one before. */
interface Line {
  named: Event;
  all: Event[];
  last: Event;
  /** What counts of it now; null when it is void. */
  stands: Event | null;
}

async function lineOf(work: Work, id: string): Promise<Line> {
  const named = await work.tx.event.findFirst({ where: { id, labId: work.labId } });
  if (!named) throw unknown('input.event', id, 'the id of an event of this lab');
  const all = await work.tx.event.findMany({
    where: { labId: work.labId, place: named.place },
    orderBy: { recordedSeq: 'asc' },
  });
  const last = all.at(-1) ?? named;
  const stands = all.find((event) => event.stands) ?? null;
  if (named.id === last.id || named.id === stands?.id) return { named, all, last, stands };
  const now = stands
    ? `event ${stands.id} of ${words.time(stands.at)} counts instead`
    : `event ${last.id} took it back`;
  throw invalid('input.event', id, `it was corrected already: ${now}; correct that one`);
}

/** What counted after an event of the line was recorded. */
function stoodAfter(event: Event, all: Event[]): Event | null {
  const told = saidOf(event.type, event.detail);
  if (told.type !== 'CORRECTED') return event;
  return all.find(({ id }) => id === told.detail.standsId) ?? null;
}

/** What counted before an event of the line was recorded; null before the first. */
function stoodBefore(event: Event, all: Event[]): Event | null {
  const before = all[all.findIndex(({ id }) => id === event.id) - 1];
  return before ? stoodAfter(before, all) : null;
}

async function containerById(work: Work, id: string | null): Promise<Container | null> {
  return id === null ? null : work.tx.container.findUniqueOrThrow({ where: { id } });
}

async function superseded(
  work: Work,
  line: Line,
  by: { at: Date; note: string | null; booking: Booking; standsId: string | null },
) {
  const { all, last, stands, named } = line;
  const container = await work.tx.container.findUniqueOrThrow({ where: { id: named.containerId } });
  const other = await containerById(work, (stands ?? named).otherContainerId);
  await work.tx.event.updateMany({ where: { id: { in: all.map(({ id }) => id) } }, data: { stands: false } });
  if (by.standsId) await work.tx.event.update({ where: { id: by.standsId }, data: { stands: true } });
  for (const { id } of all) work.changed('Event', id, 'CHANGED');
  const back = by.standsId ? (all.find(({ id }) => id === by.standsId)?.at ?? by.at) : by.at;
  for (const touched of [container, ...(other ? [other] : [])]) {
    for (const at of [back, stands?.at ?? by.at]) work.stale(touched.id, at);
  }
  const corrects = { id: last.id, place: named.place };
  const { at, note, booking } = by;
  return recorded(work, { container, other, at, note, booking, corrects, under: 'input.replacement' });
}

/** Says an event that stands again with some of it otherwise, beside what somebody puts right elsewhere. */
export async function restated(
  work: Work,
  event: Event,
  changes: Record<string, unknown>,
  note: string,
): Promise<void> {
  const line = await lineOf(work, event.id);
  const before = saidOf(event.type, event.detail);
  if (before.type === 'CORRECTED') return;
  const container = await work.tx.container.findUniqueOrThrow({ where: { id: event.containerId } });
  const scene = await sceneOf(work, container, event.at, { without: event.id });
  const booking = await booked(before.type, scene, { ...saidAgain(before, event), ...changes });
  await superseded(work, line, { at: event.at, note, booking, standsId: null });
}

/** Takes back what is named: it was not; or, of a correction, what it corrected counts again. */
async function voided(work: Work, line: Line, note: string | null): Promise<Recorded> {
  const back = stoodBefore(line.named, line.all);
  const said: Said = { type: 'CORRECTED', detail: { standsId: back?.id ?? null, why: note } };
  const booking = { said, dryGrams: null, plates: null, notes: [] };
  const recorded = await superseded(work, line, { at: line.named.at, note, booking, standsId: back?.id ?? null });
  if (!back) await putBack(work, line.named, note);
  return recorded;
}

/** Plates that one act took into a box of their own and prepared there go back when what was done to them is taken back. */
async function putBack(work: Work, { containerId, recordedAt, recordedSeq }: Event, note: string | null) {
  const left = await work.tx.event.findMany({
    where: { stands: true, OR: [{ containerId }, { otherContainerId: containerId }] },
  });
  const [taken, ...others] = left;
  if (!taken || others.length > 0 || taken.type !== 'PLATES_TAKEN' || taken.otherContainerId !== containerId) return;
  const together = taken.recordedAt.getTime() === recordedAt.getTime() && taken.recordedSeq === recordedSeq - 1;
  if (together) await voided(work, await lineOf(work, taken.id), note);
}

/** Takes back an event within a larger act. */
export const takenBack = async (work: Work, eventId: string, why: string): Promise<Recorded> =>
  voided(work, await lineOf(work, eventId), why);

/** Corrects an event: a replacement says how it was, void says that it was not (or takes a correction back). */
export function corrected(context: Context, input: z.output<typeof correctSaid>): Promise<Recorded> {
  return write(context, 'correctEvent', input, async (work) => {
    const { replacement, note } = input;
    if (Boolean(replacement) === Boolean(input.void)) {
      throw missing('input.replacement', 'either a replacement or void: true');
    }
    const line = await lineOf(work, localId('Event', input.event, 'input.event'));
    if (!replacement) return voided(work, line, note);
    const told = line.stands ?? line.all.findLast(({ type }) => type !== 'CORRECTED') ?? line.named;
    const container = await work.tx.container.findUniqueOrThrow({ where: { id: told.containerId } });
    const at = replacement.at ?? told.at;
    const booking = await replaced(work, container, told, replacement, at);
    const text =
      replacement.note === undefined || replacement.note === null ? (note ?? told.note) : replacement.note || null;
    return superseded(work, line, { at, note: text, booking, standsId: null });
  });
}
