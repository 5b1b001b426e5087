// The ovens' door for the other rooms.
export { ovensPlanned } from './plan.ts';
export { replannedAfter } from './replan.ts';
export { coolDownMinutes, currentPlan, endOf, nextOvenStep, runsBetween, startOf } from './run-view.ts';
import './ended.ts';
