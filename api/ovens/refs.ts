// The GraphQL types of ovens, by name, so that other rooms can point at them and add fields to them.
import { builder } from '../builder.ts';
import type { DryingLoad, DryingRun, Oven, OvenCare, OvenPlan } from '../database/generated/sqlite/client.ts';

export const OvenRef = builder.objectRef<Oven>('Oven');
export const OvenCareRef = builder.objectRef<OvenCare>('OvenCare');
export const DryingRunRef = builder.objectRef<DryingRun>('DryingRun');
export const DryingLoadRef = builder.objectRef<DryingLoad>('DryingLoad');
export const OvenPlanRef = builder.objectRef<OvenPlan>('OvenPlan');
