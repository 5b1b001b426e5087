// The ledger in hand-written statements: lines added up by lot and week when they change, so that a page over years reads
// hundreds of sums and not tens of thousands of lines.
import type { Engine, Transaction } from './client.ts';
import { idsIn, type Reader } from './reader.ts';

/** Adds up anew what these lots' lines come to. */
export async function lotsAddedUp(tx: Transaction, engine: Engine, lotIds: readonly string[]): Promise<void> {
  const ids = JSON.stringify(lotIds);
  // Prisma’s statements on SQLite take their values in order.
  const which = `"lotId" in (select "id" from ${idsIn(engine, engine === 'sqlite' ? '?' : '$1')} ids)`;
  await tx.$executeRawUnsafe(`delete from "LedgerWeek" where ${which}`, ids);
  await tx.$executeRawUnsafe(
    `insert into "LedgerWeek" ("lotId", "isPlates", "week", "isStock", "account", "why", "labId", "dryGrams", "plates",
       "asReceivedGrams", "lines")
     select "lotId", "isPlates", "week", "isStock", "account", coalesce("why", ''), "labId", sum("dryGrams"),
       coalesce(sum("plates"), 0), coalesce(sum("asReceivedGrams"), 0), count(*)
     from "LedgerLine" where ${which}
     group by "lotId", "isPlates", "week", "isStock", "account", coalesce("why", ''), "labId"`,
    ids,
  );
}

/** Whose figures: lots of a lab, from one Monday until before another (both may be open). */
export interface LedgerSpan {
  readonly labId: string;
  readonly lotIds: readonly string[];
  readonly from: string | null;
  readonly until: string | null;
}

/** Lines added up. */
export interface LedgerSum {
  readonly lotId: string;
  readonly isPlates: boolean;
  readonly isStock: boolean;
  readonly account: string;
  /** Empty where weeks are not told apart. */
  readonly week: string;
  readonly why: string;
  /** Within the span, or before it. */
  readonly isBefore: boolean;
  readonly dryGrams: number;
  readonly plates: number;
  readonly asReceivedGrams: number;
  readonly lines: number;
}

/** What is told apart besides lot, kind, place and account; the rest is added up. */
export type Apart = 'week' | 'why' | null;

/** The sums of some lots. Told apart by weeks or reasons, only what lies within the span; else what lies before it too. */
export async function ledgerSums(
  reader: Reader,
  { labId, lotIds, from, until }: LedgerSpan,
  apart: Apart,
): Promise<LedgerSum[]> {
  const values = [labId, JSON.stringify(lotIds)];
  const given = (value: string): string => `$${values.push(value)}`;
  const before = from === null ? 'false' : `w."week" < ${given(from)}`;
  const rows = await reader.select<Record<string, unknown>>(
    `select w."lotId", w."isPlates", w."isStock", w."account", ${apart === null ? before : 'false'} as "isBefore",
       ${apart === null ? `''` : `w."${apart}"`} as "told", sum(w."dryGrams") as "dryGrams", sum(w."plates") as "plates",
       sum(w."asReceivedGrams") as "asReceivedGrams", sum(w."lines") as "lines"
     from ${idsIn(reader.engine, '$2')} ids join "LedgerWeek" w on w."lotId" = ids."id"
     where w."labId" = $1 ${apart === null || from === null ? '' : `and not (${before})`}
       ${until === null ? '' : `and w."week" < ${given(until)}`}
     group by 1, 2, 3, 4, 5, 6 order by 1, 2, 6`,
    values,
  );
  return rows.map((row) => ({
    lotId: String(row['lotId']),
    isPlates: Boolean(row['isPlates']),
    isStock: Boolean(row['isStock']),
    account: String(row['account']),
    week: apart === 'week' ? String(row['told']) : '',
    why: apart === 'why' ? String(row['told']) : '',
    isBefore: Boolean(row['isBefore']),
    dryGrams: Number(row['dryGrams']),
    plates: Number(row['plates']),
    asReceivedGrams: Number(row['asReceivedGrams']),
    lines: Number(row['lines']),
  }));
}

/** A lot with lines, of one kind. */
export interface LedgerStock {
  readonly lotId: string;
  readonly sorbentId: string;
  readonly sorbent: string;
  readonly lotNumber: string;
  readonly isPlates: boolean;
}

/** The lots of the ledger by sorbent, last received first; `sorbentId` and `lotNumber` narrow. */
export async function ledgerStocks(
  reader: Reader,
  { labId, sorbentId, lotNumber }: { labId: string; sorbentId: string | null; lotNumber: string | null },
): Promise<LedgerStock[]> {
  const values = [labId];
  const given = (value: string): string => `$${values.push(value)}`;
  const rows = await reader.select<LedgerStock>(
    `select l."id" as "lotId", s."id" as "sorbentId", s."name" as "sorbent", l."lotNumber", w."isPlates"
     from (select distinct "lotId", "isPlates" from "LedgerWeek" where "labId" = $1) w
     join "Lot" l on l."id" = w."lotId" join "Sorbent" s on s."id" = l."sorbentId"
     where true ${sorbentId === null ? '' : `and s."id" = ${given(sorbentId)}`}
       ${lotNumber === null ? '' : `and lower(l."lotNumber") = lower(${given(lotNumber)})`}
     order by lower(s."name"), s."id", l."receivedAt" desc, l."id", w."isPlates"`,
    values,
  );
  return rows.map((row) => ({ ...row, isPlates: Boolean(row.isPlates) }));
}

/** Net use of one item in one week, as the shelf saw it, and the first week in which there was any of it. */
export interface LedgerUse {
  readonly sorbentId: string;
  readonly isPlates: boolean;
  readonly week: string;
  readonly dryGrams: number;
  readonly plates: number;
}

/** What left drums and boxes by these accounts, by item and week, less what came back; a week of arrival counts with nothing. */
export async function ledgerUse(reader: Reader, labId: string, accounts: readonly string[]): Promise<LedgerUse[]> {
  const isUse = `w."account" in (select "id" from ${idsIn(reader.engine, '$2')} ids)`;
  const rows = await reader.select<LedgerUse>(
    `select l."sorbentId", w."isPlates", w."week",
       sum(case when ${isUse} then -w."dryGrams" else 0 end) as "dryGrams",
       sum(case when ${isUse} then -w."plates" else 0 end) as "plates"
     from "LedgerWeek" w join "Lot" l on l."id" = w."lotId"
     where w."labId" = $1 and w."isStock" = true group by 1, 2, 3 order by 1, 2, 3`,
    [labId, JSON.stringify(accounts)],
  );
  return rows.map((row) => ({
    ...row,
    isPlates: Boolean(row.isPlates),
    dryGrams: Number(row.dryGrams),
    plates: Number(row.plates),
  }));
}
