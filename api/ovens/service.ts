// The ovens' door for the other rooms.
export { ovensPlanned } from './plan.ts';
export { replannedAfter } from './replan.ts';
export { coolMinutes } from './cooling.ts';
export { currentPlan, endOf, nextOvenStep, runsBetween, startOf } from './run-view.ts';
import './ended.ts';
