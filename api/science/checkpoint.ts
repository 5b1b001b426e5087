// A condition as bytes and back, to the last bit: a line of JSON, then 64-bit floats (water, activity, each response).
import type { Condition } from './condition.ts';
import { bareBed } from './condition.ts';
import { bedCells } from './grid.ts';
import type { BedSpec, Checkpoint, Factors, Habit, Lid, Scooping } from './history.ts';

interface Head {
  readonly v: 1;
  readonly room: string;
  readonly lid: Lid;
  readonly shutsAtS: number | null;
  readonly openedAtS: number | null;
  readonly habit: Habit | null;
  readonly scooping: Scooping;
  /** wetted, startKnown, airKnown, condensing as bits 1, 2, 4, 8. */
  readonly flags: number;
  /** Missing in those of before weighings were learned from. */
  readonly fillS?: number | null;
  readonly driedAtC?: number | null;
  readonly rows: readonly string[];
}

const words = new TextEncoder();
const read = new TextDecoder();
const scalars = 9;

export function encode(condition: Condition): Checkpoint {
  const { bed } = condition;
  const head: Head = {
    v: 1,
    room: condition.room,
    lid: condition.lid,
    shutsAtS: condition.shutsAtS > -Infinity ? condition.shutsAtS : null,
    openedAtS: condition.openedAtS,
    habit: condition.habit,
    scooping: condition.scooping,
    flags:
      (condition.wetted ? 1 : 0) +
      (condition.startKnown ? 2 : 0) +
      (condition.airKnown ? 4 : 0) +
      (condition.condensing ? 8 : 0),
    rows: bed.rows,
    fillS: condition.fillS,
    driedAtC: condition.driedAtC,
  };
  const text = words.encode(JSON.stringify(head));
  const padded = (4 + text.length + 7) & ~7;
  const { cells } = bed.grid;
  const bytes = new Uint8Array(padded + 8 * (scalars + cells * (2 + bed.rows.length)));
  new DataView(bytes.buffer).setUint32(0, text.length, true);
  bytes.set(text, 4);
  const floats = new Float64Array(bytes.buffer, padded);
  floats.set([
    condition.atS,
    condition.dryKg,
    condition.plates,
    condition.startSdLn,
    condition.peak,
    condition.gainedKg,
    bed.stepS,
    bed.memoryS,
    bed.steps,
  ]);
  floats.set(bed.water.subarray(0, cells), scalars);
  floats.set(bed.activity.subarray(0, cells), scalars + cells);
  for (let row = 0; row < bed.rows.length; row++) {
    floats.set(bed.responses.subarray(row * bedCells, row * bedCells + cells), scalars + cells * (2 + row));
  }
  return { atS: condition.atS, bytes };
}

export function decode(checkpoint: Checkpoint, spec: BedSpec, factors: Factors): Condition {
  // A copy: the bytes may lie anywhere in a larger buffer, and floats want to stand at multiples of eight.
  const bytes = new Uint8Array(checkpoint.bytes);
  const length = new DataView(bytes.buffer).getUint32(0, true);
  const head = JSON.parse(read.decode(bytes.subarray(4, 4 + length))) as Head;
  const floats = new Float64Array(bytes.buffer, (4 + length + 7) & ~7);
  const [atS = 0, dryKg = 0, plates = 0, startSdLn = 0, peak = 0, gainedKg = 0, stepS = 0, memoryS = 0, steps = 0] =
    floats;
  const bed = bareBed(spec, dryKg, factors);
  const { cells } = bed.grid;
  bed.water.set(floats.subarray(scalars, scalars + cells));
  bed.activity.set(floats.subarray(scalars + cells, scalars + 2 * cells));
  bed.rows = [...head.rows];
  bed.responses = new Float64Array(bedCells * bed.rows.length);
  for (let row = 0; row < bed.rows.length; row++) {
    bed.responses.set(floats.subarray(scalars + cells * (2 + row), scalars + cells * (3 + row)), row * bedCells);
  }
  Object.assign(bed, { stepS, memoryS, steps });
  return {
    bed,
    atS,
    room: head.room,
    lid: head.lid,
    shutsAtS: head.shutsAtS ?? -Infinity,
    openedAtS: head.openedAtS,
    habit: head.habit,
    scooping: head.scooping,
    dryKg,
    plates,
    startSdLn,
    fillS: head.fillS ?? null,
    driedAtC: head.driedAtC ?? null,
    peak,
    gainedKg,
    wetted: (head.flags & 1) > 0,
    startKnown: (head.flags & 2) > 0,
    airKnown: (head.flags & 4) > 0,
    condensing: (head.flags & 8) > 0,
  };
}

function headOf(bytes: Uint8Array): Head {
  const length = new DataView(bytes.buffer, bytes.byteOffset).getUint32(0, true);
  return JSON.parse(read.decode(bytes.subarray(4, 4 + length))) as Head;
}

/** The room that a container stood in at its checkpoint. */
export const roomAt = ({ bytes }: Checkpoint): string => headOf(bytes).room;

/** How hot it was last dried before its checkpoint, °C; null where nobody said. */
export const driedAtOf = ({ bytes }: Pick<Checkpoint, 'bytes'>): number | null => headOf(bytes).driedAtC ?? null;

/** Days after which a midnight's checkpoint is kept only if its day number divides by 2, 4, 8, … */
const dailyFor = 8;

/** Is a checkpoint of this instant worth keeping at another? Daily for 8 days, then in doubling distances; events for 8 days. */
export function worthKeeping(atS: number, asOfS: number): boolean {
  const day = atS / 86_400;
  const age = asOfS / 86_400 - day;
  if (age <= dailyFor) return true;
  if (!Number.isInteger(day)) return false;
  return day % 2 ** Math.floor(Math.log2(age / dailyFor) + 1) === 0;
}
