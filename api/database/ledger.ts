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

/** Whose figures: some lots, from one Monday until before another (both may be open). */
export interface LedgerSpan {
  readonly lotIds: readonly string[];
  readonly from: string | null;
  readonly until: string | null;
}

interface Counted {
  readonly lotId: string;
  readonly isPlates: boolean;
  readonly isStock: boolean;
  readonly dryGrams: number;
  readonly plates: number;
}

/** Lines of a span added up. */
export interface LedgerSum extends Counted {
  readonly account: string;
  /** Empty where weeks are not told apart. */
  readonly week: string;
  readonly why: string;
  readonly asReceivedGrams: number;
  readonly lines: number;
}

/** What lies before a span. */
export interface LedgerOpening extends Counted {
  /** Of it, what came in: dry, and with the water it came in with. */
  readonly cameInDryGrams: number;
  readonly cameInAsReceivedGrams: number;
}

/** What is told apart besides lot, kind, place and account; the rest is added up. */
export type Apart = 'week' | 'why' | null;

const counted = (row: Record<string, unknown>): Counted => ({
  lotId: String(row['lotId']),
  isPlates: Boolean(row['isPlates']),
  isStock: Boolean(row['isStock']),
  dryGrams: Number(row['dryGrams']),
  plates: Number(row['plates']),
});

/** Lots first, and both kinds named, so that a span of weeks is found by the key and not by reading all years. */
const weeksOf = (reader: Reader): string =>
  `${idsIn(reader.engine, '$1')} ids join "LedgerWeek" w on w."lotId" = ids."id" and w."isPlates" in (true, false)`;

/** The sums of some lots within a span; of some accounts, or of all. */
export async function ledgerSums(
  reader: Reader,
  { lotIds, from, until }: LedgerSpan,
  apart: Apart,
  accounts: readonly string[] | null = null,
): Promise<LedgerSum[]> {
  const values = [JSON.stringify(lotIds)];
  const given = (value: string): string => `$${values.push(value)}`;
  const told = apart === null ? [] : [`w."${apart}"`];
  const rows = await reader.select<Record<string, unknown>>(
    `select w."lotId", w."isPlates", w."isStock", w."account"${told.map((column) => `, ${column} as "told"`).join('')},
       sum(w."dryGrams") as "dryGrams", sum(w."plates") as "plates", sum(w."asReceivedGrams") as "asReceivedGrams",
       sum(w."lines") as "lines"
     from ${weeksOf(reader)}
     where true ${from === null ? '' : `and w."week" >= ${given(from)}`}
       ${until === null ? '' : `and w."week" < ${given(until)}`}
       ${accounts === null ? '' : `and w."account" in (select "id" from ${idsIn(reader.engine, given(JSON.stringify(accounts)))} accounts)`}
     group by ${['w."lotId"', 'w."isPlates"', ...told, 'w."isStock"', 'w."account"'].join(', ')}
     order by ${['w."lotId"', 'w."isPlates"', ...told].join(', ')}`,
    values,
  );
  return rows.map((row) => ({
    ...counted(row),
    account: String(row['account']),
    week: apart === 'week' ? String(row['told']) : '',
    why: apart === 'why' ? String(row['told']) : '',
    asReceivedGrams: Number(row['asReceivedGrams']),
    lines: Number(row['lines']),
  }));
}

/** What some lots come to before a Monday. */
export async function ledgerOpenings(
  reader: Reader,
  lotIds: readonly string[],
  before: string,
): Promise<LedgerOpening[]> {
  const rows = await reader.select<Record<string, unknown>>(
    `select w."lotId", w."isPlates", w."isStock", sum(w."dryGrams") as "dryGrams", sum(w."plates") as "plates",
       sum(case when w."account" = 'CAME_IN' then w."dryGrams" else 0 end) as "cameInDryGrams",
       sum(case when w."account" = 'CAME_IN' then w."asReceivedGrams" else 0 end) as "cameInAsReceivedGrams"
     from ${weeksOf(reader)} where w."week" < $2 group by w."lotId", w."isPlates", w."isStock"`,
    [JSON.stringify(lotIds), before],
  );
  return rows.map((row) => ({
    ...counted(row),
    cameInDryGrams: Number(row['cameInDryGrams']),
    cameInAsReceivedGrams: Number(row['cameInAsReceivedGrams']),
  }));
}

/** A lot with lines, of one kind. */
export interface LedgerStock {
  readonly lotId: string;
  readonly sorbentId: string;
  readonly sorbent: string;
  readonly lotNumber: string;
  readonly isPlates: boolean;
  /** When the lot came, ms. */
  readonly receivedAt: number;
}

/** The lots of the ledger, in no order; `sorbentId` and `lotNumber` narrow. */
export async function ledgerStocks(
  reader: Reader,
  { labId, sorbentId, lotNumber }: { labId: string; sorbentId: string | null; lotNumber: string | null },
): Promise<LedgerStock[]> {
  const values = [labId];
  const given = (value: string): string => `$${values.push(value)}`;
  const rows = await reader.select<LedgerStock>(
    `select l."id" as "lotId", s."id" as "sorbentId", s."name" as "sorbent", l."lotNumber", w."isPlates",
       l."receivedAt"
     from (select distinct "lotId", "isPlates" from "LedgerWeek" where "labId" = $1) w
     join "Lot" l on l."id" = w."lotId" join "Sorbent" s on s."id" = l."sorbentId"
     where true ${sorbentId === null ? '' : `and s."id" = ${given(sorbentId)}`}
       ${lotNumber === null ? '' : `and lower(l."lotNumber") = lower(${given(lotNumber)})`}`,
    values,
  );
  return rows.map((row) => ({ ...row, isPlates: Boolean(row.isPlates), receivedAt: Number(row.receivedAt) }));
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
