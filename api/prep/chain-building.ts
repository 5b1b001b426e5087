// A chain while it is put together: its stages, what runs already, what was done.
import type { PrepStepKind } from '../database/generated/sqlite/client.ts';
import type { PlannedStep, PrepNeed, Stage } from '../science/prep/stages.ts';

export const five = (minutes: number): number => Math.ceil(minutes / 5) * 5;

/** Somebody's hands at a tank or an oven, and at handing over (invented; common practice at most). */
export const handsMinutes = 10;

export const running = (kind: PlannedStep['kind'], start: number, end: number): PlannedStep => ({
  kind,
  load: 1,
  loads: 1,
  start,
  end: Math.max(start, end),
  isAttended: false,
  ovenId: null,
});

export const latest = (dates: readonly (Date | null)[]): Date | null =>
  dates.reduce<Date | null>((last, date) => (date && (!last || date > last) ? date : last), null);

export interface Building {
  stages: Stage[];
  running: PlannedStep[];
  takes: PrepNeed['takes'][number][];
  done: Map<PrepStepKind, Date>;
  floor: number;
  keepsFrom: number | null;
}
