// The order of the ledger's lots: by sorbent, last received first.
import type { LedgerStock } from '../database/ledger.ts';
import { pageAmong, type Column } from '../page.ts';
import { keyOf } from './ledger.ts';

export const inOrder: Column<LedgerStock>[] = [
  { path: ['sorbent'], direction: 'asc', value: ({ sorbent }) => sorbent.toLowerCase() },
  { path: ['sorbentId'], direction: 'asc', value: ({ sorbentId }) => sorbentId },
  { path: ['receivedAt'], direction: 'desc', value: ({ receivedAt }) => receivedAt },
  { path: ['key'], direction: 'asc', value: keyOf },
];

const whole = { take: Infinity, backwards: false, after: null, before: null };

/** All of them in order. */
export const ordered = (stocks: readonly LedgerStock[]): LedgerStock[] => pageAmong(inOrder, whole, stocks);
