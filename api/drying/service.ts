// The list of what to dry: asked for, put in order, withdrawn, and answered when a drying is recorded.
import './answered.ts';

/** The recipe of a container and what its oven may not be set above: for every room that heats something. */
export { howClassIsDried, howDried, ownRecipes, type HowDried } from './how-dried.ts';
export { usualTargetOf } from './forecast-start.ts';
export { planApart, usualSeconds } from './planning/plan-apart.ts';
export { onRequestEnded } from './ended.ts';
export { requestMade, requestsMade } from './request-made.ts';
export { requestWithdrawn, requestWaits, requestAnswered } from './request-ends.ts';
