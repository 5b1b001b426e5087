// What other rooms may ask of needs.
export { needAmounts } from './amounts.ts';
export { onReplan } from './before-plan.ts';
export { planBroughtUp } from './current.ts';
