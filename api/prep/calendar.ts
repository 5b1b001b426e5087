// The steps and oven runs as a calendar that any calendar program can subscribe to (iCalendar, RFC 5545).
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import ical, { ICalCalendarMethod, ICalEventStatus } from 'ical-generator';
import { z } from 'zod';
import type { Context } from '../context.ts';
import { settingsWritten } from '../lab-settings.ts';
import { planBroughtUp } from './current.ts';
import { cautionsSaid } from './cautions.ts';
import { detailOf } from './detail.ts';
import { waiting } from './waiting.ts';
import { sayStep } from './words.ts';

const dayMs = 86_400_000;
/** So far back and ahead it tells. */
const backDays = 14;
const aheadDays = 60;

const kept = z.object({ calendarToken: z.string().min(20) });

/** The secret part of the calendar's address; null until somebody asked for one. */
export function calendarTokenOf(settings: unknown): string | null {
  const read = kept.safeParse(settings);
  return read.success ? read.data.calendarToken : null;
}

/** A new address; the old one answers no longer. */
export function calendarRenewed(
  context: Context,
  input: { clientKey?: string | null | undefined },
): Promise<{ labId: string }> {
  return settingsWritten(context, 'renewCalendarAddress', input, (before) => ({
    ...before,
    calendarToken: randomBytes(24).toString('base64url'),
  }));
}

const hashOf = (text: string): Buffer => createHash('sha256').update(text, 'utf8').digest();

/** Whether a path is the calendar's secret one; compared as hashes, so that the time taken tells nothing. */
export function isCalendarPath(path: string, settings: unknown): boolean {
  const said = /^\/calendar\/([A-Za-z0-9_-]{20,64})\.ics$/.exec(path)?.[1];
  const token = calendarTokenOf(settings);
  return said !== undefined && token !== null && timingSafeEqual(hashOf(said), hashOf(token));
}

/** The calendar's text as of now. */
export async function calendarOf(context: Context): Promise<string> {
  await planBroughtUp(context);
  const { database, lab } = context;
  const now = context.now().getTime();
  const from = new Date(now - backDays * dayMs);
  const to = new Date(now + aheadDays * dayMs);
  const [steps, runs] = await Promise.all([
    database.read.prepStep.findMany({
      where: { labId: lab.id, startAt: { gte: from, lt: to }, kind: { notIn: [...waiting] } },
      include: { need: true },
      orderBy: [{ startAt: 'asc' }, { id: 'asc' }],
    }),
    database.read.dryingRun.findMany({
      where: { labId: lab.id, plannedStart: { gte: from, lt: to } },
      include: { oven: true },
      orderBy: [{ plannedStart: 'asc' }, { id: 'asc' }],
    }),
  ]);
  const calendar = ical({
    name: `${lab.name}: prep`,
    prodId: { company: 'Drumkeep', product: 'prep', language: 'EN' },
    timezone: lab.timeZone,
    method: ICalCalendarMethod.PUBLISH,
    ttl: 900,
  });
  // Times are written in UTC, so that no program needs this zone's rules.
  calendar.timezone(null);
  calendar.x('X-WR-TIMEZONE', lab.timeZone);
  for (const step of steps) {
    const detail = detailOf(step.detail);
    const isGone = step.goneAt !== null || step.need.droppedAt !== null;
    calendar.createEvent({
      id: `${step.id}@drumkeep`,
      sequence: step.version,
      start: step.startAt,
      end: step.endAt > step.startAt ? step.endAt : new Date(step.startAt.getTime() + 60_000),
      stamp: step.changedAt,
      lastModified: step.changedAt,
      summary: sayStep(step, step.need.forWhom),
      location: detail.place || null,
      description: [`For ${step.need.forWhom}`, ...cautionsSaid(detail.cautions).map(({ text }) => text)].join('\n'),
      status: isGone ? ICalEventStatus.CANCELLED : ICalEventStatus.CONFIRMED,
    });
  }
  for (const run of runs) {
    const start = run.startedAt ?? run.plannedStart;
    const end = run.outAt ?? run.dueOutAt ?? run.plannedEnd;
    const changedAt = run.endedAt ?? run.outAt ?? run.startedAt ?? run.madeAt;
    calendar.createEvent({
      id: `${run.id}@drumkeep`,
      // Runs count no changes of their own: a later plan, or a later state, is a later minute.
      sequence: Math.max(0, Math.floor((start.getTime() - run.madeAt.getTime()) / 60_000) + dayMs / 60_000),
      start,
      end: end > start ? end : new Date(start.getTime() + 60_000),
      stamp: changedAt,
      lastModified: changedAt,
      summary: `${run.oven.name}: ${run.temperatureC} °C${run.isVacuum ? ', vacuum' : ''}`,
      location: run.oven.name,
      description: run.reason,
      status: run.state === 'INTERRUPTED' ? ICalEventStatus.CANCELLED : ICalEventStatus.CONFIRMED,
    });
  }
  return calendar.toString();
}
