// The ovens' door for the other rooms.
export { ovensPlanned } from './plan.ts';
export { replannedAfter } from './replan.ts';
export { coolMinutes } from './cooling.ts';
export { currentPlan, endOf, nextOvenStep, runsBetween, startOf } from './run-view.ts';
export { openingsOf, outages, ownHours } from './oven-hours.ts';
export { timed } from './shares.ts';
export { familyOf, plateAreaCm2, trayAreaCm2, usualDensityKgPerM3, usualDepthMm } from './rules.ts';
export type { OvenWithCare } from './facts.ts';
import './ended.ts';
