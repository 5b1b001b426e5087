// The runs of a check, read and compared; worked out once a request however many fields ask.
import { DateTime } from 'luxon';
import type { Context } from '../context.ts';
import type { Lot, LotCheck, RetentionRun } from '../database/generated/sqlite/client.ts';
import { onceARequest } from '../once.ts';
import { marginOf, type Margin } from './check-settings.ts';
import { comparisonOf, type Comparison, type RunRead } from './rules.ts';
import { spotsOf } from './spots.ts';
import type { Named } from './words.ts';

export interface CheckRead {
  readonly check: LotCheck;
  readonly rows: readonly RetentionRun[];
  readonly runs: readonly RunRead[];
  readonly named: Named & Margin;
  readonly comparison: Comparison;
}

/** A run as it is reckoned with. The box is the one named, else its container. */
export function runRead(row: RetentionRun, newLotId: string | null, timeZone: string): RunRead {
  return {
    id: row.id,
    isNew: row.lotId === newLotId,
    tank: row.tank,
    day: DateTime.fromJSDate(row.at, { zone: timeZone }).toISODate() ?? '',
    box: row.box ?? row.containerId,
    ranBy: row.ranById,
    lot: row.lotId,
    spots: spotsOf(row.spots),
  };
}

async function read(context: Context, check: LotCheck): Promise<CheckRead> {
  const { lab, load } = context;
  const [rows, oldLot, newLot] = await Promise.all([
    load.runsOfCheck.load(check.id),
    load.lot.load(check.oldLotId),
    load.lot.load(check.newLotId),
  ]);
  const number = (lot: Lot | null): string => lot?.lotNumber ?? '';
  const runs = rows.map((row) => runRead(row, check.newLotId, lab.timeZone));
  const margin = marginOf(lab.settings, check.retention, check.margin);
  const named = { oldLot: number(oldLot), newLot: number(newLot), retention: check.retention, ...margin };
  return { check, rows, runs, named, comparison: comparisonOf(runs, margin) };
}

export const checkRead = onceARequest(read, ({ id }) => id);
