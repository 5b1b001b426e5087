// A room's air as the estimator reads it: for each UTC day, running integrals on 300 s knots of vapour concentration,
// saturated concentration, temperature and doubt, shared by every container of the room.
import type { DayBlocks, TypicalDay } from './history.ts';

export const blockSeconds = 300;
export const blocksPerDay = 288;
export const daySeconds = 86_400;

/** Running integrals from 00:00 UTC, four interleaved per knot: c, c_s (kg s/m³), T (°C s), filled-in time (s). */
export interface AirDay {
  readonly integrals: Float64Array;
  /** How many of the blocks before each knot have nothing known about them. */
  readonly unknownBlocks: Uint16Array;
}

export interface RoomAir {
  /** Any day: recorded, filled by the typical day after the record's end, or unknown before it and without one. */
  readonly day: (day: number) => AirDay;
  /** The typical day, for looking ahead; null when there is none. */
  readonly typical: AirDay | null;
}

function integrated(
  blocks: TypicalDay,
  uncertain: Uint8Array | null,
  filling: TypicalDay | null,
  fillFrom: number,
): AirDay {
  const integrals = new Float64Array(4 * (blocksPerDay + 1));
  const unknownBlocks = new Uint16Array(blocksPerDay + 1);
  for (let k = 0; k < blocksPerDay; k++) {
    let source: TypicalDay | null = blocks;
    let doubt = uncertain?.[k] ?? 1;
    if (doubt === 2) {
      source = filling && k >= fillFrom ? filling : null;
      doubt = source ? 1 : 0;
    }
    const at = 4 * k;
    integrals[at + 4] = integrals[at]! + blockSeconds * (source ? source.vapourKgPerM3[k]! : 0);
    integrals[at + 5] = integrals[at + 1]! + blockSeconds * (source ? source.saturatedKgPerM3[k]! : 0);
    integrals[at + 6] = integrals[at + 2]! + blockSeconds * (source ? source.temperatureC[k]! : 0);
    integrals[at + 7] = integrals[at + 3]! + blockSeconds * doubt;
    unknownBlocks[k + 1] = unknownBlocks[k]! + (source ? 0 : 1);
  }
  return { integrals, unknownBlocks };
}

const nothing: AirDay = {
  integrals: new Float64Array(4 * (blocksPerDay + 1)),
  unknownBlocks: Uint16Array.from({ length: blocksPerDay + 1 }, (_, k) => k),
};

/**
 * Air of one room from its recorded days and its typical day. After the last known block the typical day stands in,
 * marked uncertain; before the first, within a gap that nobody filled, and without a typical day, nothing is known.
 */
export function roomAir(days: readonly DayBlocks[], typicalDay: TypicalDay | null): RoomAir {
  const recorded = new Map(days.map((blocks) => [blocks.day, blocks]));
  const prepared = new Map<number, AirDay>();
  const lastDay = days.reduce(
    (last, { day, uncertain }) => (uncertain.some((u) => u < 2) ? Math.max(last, day) : last),
    -Infinity,
  );
  const lastBlock = recorded.get(lastDay)?.uncertain.findLastIndex((u) => u < 2) ?? -1;
  const typical = typicalDay && integrated(typicalDay, null, null, 0);
  const day = (number: number): AirDay => {
    const known = prepared.get(number);
    if (known) return known;
    const blocks = recorded.get(number);
    const beyond = number > lastDay;
    const made = beyond
      ? (typical ?? nothing)
      : blocks
        ? integrated(blocks, blocks.uncertain, typicalDay, number === lastDay ? lastBlock + 1 : blocksPerDay)
        : nothing;
    prepared.set(number, made);
    return made;
  };
  return { day, typical };
}

/** Mean of φ and T over what is known of a stretch, and the share of that which was filled in; NaN where nothing is known. */
export function meanAir(
  air: RoomAir,
  fromS: number,
  toS: number,
): { humidity: number; temperatureC: number; filled: number } {
  const sums = [0, 0, 0, 0];
  let unknownS = 0;
  for (let s = fromS; s < toS;) {
    const day = Math.floor(s / daySeconds);
    const end = Math.min(toS, (day + 1) * daySeconds);
    const { integrals, unknownBlocks } = air.day(day);
    unknownS +=
      blockSeconds *
      (unknownBlocks[Math.ceil((end - day * daySeconds) / blockSeconds)]! -
        unknownBlocks[Math.floor((s - day * daySeconds) / blockSeconds)]!);
    for (let q = 0; q < 4; q++) {
      sums[q] =
        sums[q]! + integralAt(integrals, q, end - day * daySeconds) - integralAt(integrals, q, s - day * daySeconds);
    }
    s = end;
  }
  const [vapour = 0, saturated = 0, temperature = 0, filled = 0] = sums;
  const knownS = toS - fromS - unknownS;
  return { humidity: vapour / saturated, temperatureC: temperature / knownS, filled: filled / knownS };
}

/** One of the four integrals at a second of the day, blocks being constant. */
export function integralAt(integrals: Float64Array, quantity: number, second: number): number {
  const knot = Math.min(blocksPerDay - 1, Math.floor(second / blockSeconds));
  const at = 4 * knot + quantity;
  const start = integrals[at]!;
  return start + (integrals[at + 4]! - start) * ((second - knot * blockSeconds) / blockSeconds);
}
