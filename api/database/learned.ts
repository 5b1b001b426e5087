// What weighings taught, as stored: one version a fit, the newest counts. Read by hand-written statements in any thread.
import { jsonOf, type Reader } from './reader.ts';

export interface LearnedRow {
  id: string;
  version: number;
  factor: string;
  lnValue: number;
  lnSd: number;
  /** As written; JSON. */
  because: unknown;
}

/** A row of the newest version, which tells one fit from another; null when nothing was learned yet. */
export async function newestLearned(reader: Reader, labId: string): Promise<{ id: string; version: number } | null> {
  const rows = await reader.select<{ id: string; version: number }>(
    `select f."id", f."version" from "LearnedFactor" f where f."labId" = $1
     order by f."version" desc, f."factor" limit 1`,
    [labId],
  );
  return rows[0] ?? null;
}

/** All factors of one version. */
export async function learnedRows(reader: Reader, labId: string, version: number): Promise<LearnedRow[]> {
  const rows = await reader.select<LearnedRow>(
    `select f."id", f."version", f."factor", f."lnValue", f."lnSd", f."because" from "LearnedFactor" f
     where f."labId" = $1 and f."version" = $2 order by f."factor"`,
    [labId, version],
  );
  for (const row of rows) row.because = jsonOf(row.because);
  return rows;
}

/** Weighings that the newest version has taken in or left out: an estimate does not begin anew at them. */
export async function weighingsTakenIn(reader: Reader, labId: string): Promise<string[]> {
  const rows = await reader.select<{ eventId: string }>(
    `select w."eventId" from "LearnedWeighing" w where w."labId" = $1 and w."counts" <> 'UNUSABLE'`,
    [labId],
  );
  return rows.map(({ eventId }) => eventId);
}

/** Containers with a weighing that stands. */
export async function weighedContainers(reader: Reader, labId: string): Promise<string[]> {
  const rows = await reader.select<{ id: string }>(
    `select distinct e."containerId" as "id" from "Event" e
     where e."labId" = $1 and e."type" = 'WEIGHED' and e."stands" order by e."containerId"`,
    [labId],
  );
  return rows.map(({ id }) => id);
}

/** What was said last of each of these weighings. */
export async function judgements(reader: Reader, labId: string): Promise<Map<string, boolean>> {
  const rows = await reader.select<{ eventId: string; isRight: boolean | number | null }>(
    `select j."eventId", j."isRight" from "WeighingJudgement" j where j."labId" = $1 and j."seq" =
       (select max(k."seq") from "WeighingJudgement" k where k."labId" = $1 and k."eventId" = j."eventId")`,
    [labId],
  );
  return new Map(rows.flatMap(({ eventId, isRight }) => (isRight === null ? [] : [[eventId, Boolean(isRight)]])));
}

/** Lots of which anything is left. */
export function lotsInUse(reader: Reader, labId: string): Promise<{ id: string }[]> {
  return reader.select(
    `select l."id" from "Lot" l where l."labId" = $1 and exists
       (select 1 from "Container" c where c."lotId" = l."id" and c."finishedAt" is null) order by l."id"`,
    [labId],
  );
}
