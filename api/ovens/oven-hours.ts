// When someone can load an oven: its own hours, else the lab's working hours; and when it is out of order.
import { z } from 'zod';
import type { Oven } from '../database/generated/sqlite/client.ts';
import { workingHoursOf } from '../exposure/service.ts';
import { openings, type Opening } from './hours.ts';
import type { OvenWithCare } from './facts.ts';
import type { OpenHours } from './rules.ts';

const stored = z.array(z.object({ days: z.array(z.int()).min(1), from: z.string(), to: z.string() })).min(1);

interface Lab {
  timeZone: string;
  settings: unknown;
}

const everyDay = [1, 2, 3, 4, 5, 6, 7];
const two = (value: number): string => String(value).padStart(2, '0');
const clockOf = (seconds: number): string => `${two(Math.floor(seconds / 3600))}:${two(Math.floor(seconds / 60) % 60)}`;

/** Null where the oven follows the lab's working hours. */
export function ownHours({ hours }: Pick<Oven, 'hours'>): OpenHours[] | null {
  const read = stored.safeParse(hours);
  return read.success ? read.data : null;
}

export function hoursOf(oven: Pick<Oven, 'hours'>, lab: Lab): OpenHours[] {
  const own = ownHours(oven);
  if (own) return own;
  const { fromS, toS, days } = workingHoursOf(lab.settings, lab.timeZone);
  return [{ days: [...(days ?? everyDay)], from: clockOf(fromS), to: clockOf(toS) }];
}

export const openingsOf = (oven: Pick<Oven, 'hours'>, lab: Lab, fromMs: number, untilMs: number): Opening[] =>
  openings(hoursOf(oven, lab), lab.timeZone, fromMs, untilMs);

/** Stretches in which nothing may be in it: out of order, or baked out. Without an end they last as long as one looks. */
export function outages(oven: Pick<OvenWithCare, 'care'>, untilMs: number): Opening[] {
  return oven.care
    .filter(({ kind, until }) => kind === 'OUT_OF_ORDER' || (kind === 'BAKE_OUT' && until !== null))
    .map(({ at, until }) => ({ fromMs: at.getTime(), toMs: Math.max(at.getTime(), until?.getTime() ?? untilMs) }));
}
