// The door of the plates' room for other rooms.
export { batchOf, plateBatches, sentenceOf, type Batch, type BatchFilter } from './batches.ts';
export { useWithin, withinWords, type UseWithin } from './within.ts';
export { activated, equilibrated, prewashed } from './acts.ts';
export { activateSaid, equilibrateSaid, prewashSaid } from './said.ts';
