// What an oven stands at now, and when its fixed runs take it. Pure.
import type { Facts, OvenWithCare, RunRow } from './facts.ts';
import { whenSomebody } from './hours.ts';
import { openingsOf } from './oven-hours.ts';
import { minuteMs } from './minute.ts';

/** What an oven falls to when nobody heats it, °C. */
const roomC = 22;

/** What an oven stands at now, and when it is free. */
export function nowIn(
  oven: OvenWithCare,
  facts: Facts,
  originMs: number,
): { freeAt: number; startTemperatureC: number } {
  const running = facts.runs.find(({ ovenId, state }) => ovenId === oven.id && state === 'IN_OVEN');
  if (running) {
    const out = Math.max(running.dueOutAt?.getTime() ?? originMs, originMs);
    return {
      freeAt: Math.ceil((out - originMs) / minuteMs) + oven.doorMinutes,
      startTemperatureC: running.temperatureC,
    };
  }
  const last = facts.lastOut.filter(({ ovenId }) => ovenId === oven.id).at(-1);
  if (!last?.outAt || oven.coolMinutesPerC <= 0) return { freeAt: 0, startTemperatureC: roomC };
  const fallen = (facts.now.getTime() - last.outAt.getTime()) / minuteMs / oven.coolMinutesPerC;
  return { freeAt: 0, startTemperatureC: Math.max(roomC, Math.round(last.temperatureC - fallen)) };
}

/** Runs fixed by hand, in the order of time; one that cannot be where it was put comes as soon after as it can. */
export function fixedIn(
  oven: OvenWithCare,
  free: { freeAt: number; startTemperatureC: number },
  facts: Facts,
  originMs: number,
  untilMs: number,
): { run: RunRow; start: number; end: number }[] {
  const open = openingsOf(oven, facts, originMs, untilMs);
  let { freeAt } = free;
  return facts.runs
    .filter(({ ovenId, state, isPinned }) => ovenId === oven.id && state === 'PLANNED' && isPinned)
    .sort((a, b) => a.plannedStart.getTime() - b.plannedStart.getTime())
    .map((run) => {
      const wanted = Math.round((run.plannedStart.getTime() - originMs) / minuteMs);
      const stays = Math.round((run.plannedEnd.getTime() - run.plannedStart.getTime()) / minuteMs);
      const later = Math.max(0, freeAt);
      const start =
        wanted >= later
          ? wanted
          : Math.ceil((whenSomebody(open, originMs + (later + run.setupMinutes) * minuteMs) - originMs) / minuteMs);
      freeAt = start + stays + oven.doorMinutes;
      return { run, start, end: start + stays };
    });
}
