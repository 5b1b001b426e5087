// A room's measured days with everything between and after them filled in.
import { blocksPerDay } from '../science/climate.ts';
import type { DayBlocks, TypicalDay } from '../science/history.ts';
import type { FromBlock } from './room-assumed.ts';
import { typicalDayBefore } from './typical.ts';

/** After its last reading a room's air is held for this long; then its typical day stands in. */
const heldBlocks = 24;

export interface RecordedAir {
  /** Measured days in order, at least from 30 days before the last one measured before `fromDay`. */
  readonly measured: readonly DayBlocks[];
  /** The last day on which anything was measured at all; null without a record. */
  readonly lastDay: number | null;
  /** What is taken for granted before the record begins, or without one. */
  readonly assumed: TypicalDay | null;
  /** What is taken for granted from a block on, oldest first: before the record, and after it where it is newer. */
  readonly steps?: readonly FromBlock[];
}

const lastKnownBlock = (day: DayBlocks): number =>
  day.day * blocksPerDay + day.uncertain.findLastIndex((doubt) => doubt === 0);

function blankDay(day: number): DayBlocks {
  const means = () => new Float64Array(blocksPerDay);
  return {
    day,
    temperatureC: means(),
    vapourKgPerM3: means(),
    saturatedKgPerM3: means(),
    uncertain: new Uint8Array(blocksPerDay),
  };
}

function put(into: DayBlocks, block: number, from: TypicalDay | null, fromBlock: number, doubt: number): void {
  into.uncertain[block] = from ? doubt : 2;
  if (!from) return;
  into.temperatureC[block] = from.temperatureC[fromBlock] ?? 0;
  into.vapourKgPerM3[block] = from.vapourKgPerM3[fromBlock] ?? 0;
  into.saturatedKgPerM3[block] = from.saturatedKgPerM3[fromBlock] ?? 0;
}

/**
 * The room's air on [fromDay, untilDay). Gaps take the typical day of the 30 days before them, so that they depend
 * on readings alone and never on when somebody asked.
 */
export function filledDays(record: RecordedAir, fromDay: number, untilDay: number): DayBlocks[] {
  const byNumber = new Map(record.measured.map((day) => [day.day, day]));
  const before = record.measured.findLast(({ day }) => day < fromDay);
  const end = record.lastDay === null ? undefined : byNumber.get(record.lastDay);
  const recordEnd = end ? lastKnownBlock(end) : Infinity;
  let last = before ? lastKnownBlock(before) : null;
  let gap: { after: number; typical: TypicalDay | null } | undefined;
  const typicalAfter = (block: number) => {
    if (gap?.after !== block) {
      gap = { after: block, typical: typicalDayBefore((number) => byNumber.get(number), block + 1) };
    }
    return gap.typical;
  };
  const stepAt = (block: number) => record.steps?.findLast(({ fromBlock }) => fromBlock <= block);
  return Array.from({ length: Math.max(0, untilDay - fromDay) }, (_, index) => {
    const day = fromDay + index;
    const measured = byNumber.get(day);
    if (measured && !measured.uncertain.some((doubt) => doubt !== 0)) {
      last = day * blocksPerDay + blocksPerDay - 1;
      return measured;
    }
    const filled = blankDay(day);
    for (let block = 0; block < blocksPerDay; block++) {
      const at = day * blocksPerDay + block;
      if (measured && measured.uncertain[block] === 0) {
        put(filled, block, measured, block, 0);
        last = at;
      } else if (last === null) {
        put(filled, block, stepAt(at)?.typical ?? record.assumed, block, 1);
      } else if (last === recordEnd && at - last <= heldBlocks) {
        put(filled, block, byNumber.get(Math.floor(last / blocksPerDay)) ?? null, last % blocksPerDay, 0);
      } else {
        const step = stepAt(at);
        const newer = step && step.fromBlock > last ? step.typical : null;
        put(filled, block, newer ?? typicalAfter(last), block, 1);
      }
    }
    return filled;
  });
}
