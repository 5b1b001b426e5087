// What other rooms may use of the ledger.
export { weeklyUse, type ItemUse } from './weekly-use.ts';
