// A room's measured air of one UTC day as stored bytes.
import { blocksPerDay } from '../science/climate.ts';
import type { DayBlocks } from '../science/history.ts';

/** Three means of four bytes and one byte of doubt, for each block. */
export const roomDayBytes = blocksPerDay * 13;

/** Float32 is good to 6e-8: 2e-6 K, far below what a sensor knows. Little-endian, as everywhere here. */
export function encodeRoomDay(blocks: DayBlocks): Uint8Array {
  const bytes = new Uint8Array(roomDayBytes);
  const means = new Float32Array(bytes.buffer, 0, 3 * blocksPerDay);
  means.set(blocks.temperatureC, 0);
  means.set(blocks.vapourKgPerM3, blocksPerDay);
  means.set(blocks.saturatedKgPerM3, 2 * blocksPerDay);
  bytes.set(blocks.uncertain, 12 * blocksPerDay);
  return bytes;
}

export function decodeRoomDay(day: number, bytes: Uint8Array): DayBlocks {
  const own = new Uint8Array(bytes);
  const means = new Float32Array(own.buffer, 0, 3 * blocksPerDay);
  const part = (index: number) => Float64Array.from(means.subarray(index * blocksPerDay, (index + 1) * blocksPerDay));
  return {
    day,
    temperatureC: part(0),
    vapourKgPerM3: part(1),
    saturatedKgPerM3: part(2),
    uncertain: own.slice(12 * blocksPerDay),
  };
}
