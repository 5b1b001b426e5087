// A container in a room, in a line: what the tests of the estimator are told in.
import { heldBlocks, evenDay, type Reading } from '../../../api/science/blocks.ts';
import { roomAir, daySeconds, type RoomAir } from '../../../api/science/climate.ts';
import type { FoldInput, Geometry, Lid, Scooping, SorbentNumbers } from '../../../api/science/history.ts';
import { usualThresholds } from '../../../api/science/judge.ts';
import { sorbentClass, sorbentNumbers } from '../../../api/science/properties.ts';

/** Midnight UTC of some day. */
export const dayZero = 20_500 * daySeconds;
export const hour = 3600;

export function numbersOf(name: string, layer = false): SorbentNumbers {
  const one = sorbentClass(name);
  const numbers = one && sorbentNumbers(one, layer);
  if (!numbers) throw new Error(`unknown sorbent: ${name}`);
  return numbers;
}

export function evenAir(temperatureC: number, humidity: number, days: number): RoomAir {
  const readings = [{ atS: dayZero, temperatureC, humidity }];
  return roomAir(heldBlocks(readings, dayZero, dayZero + days * daySeconds), evenDay(temperatureC, humidity));
}

/** Numbers in [0, 1) from a seed: the mulberry generator, so that a run can be told again. */
export function dice(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A standard normal draw. */
export const normalDraw = (roll: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - roll())) * Math.cos(2 * Math.PI * roll());

/** Five-minute readings of a room with a day, weather and noise. */
export function noisyReadings(seed: number, days: number, temperatureC = 22, humidity = 0.48): Reading[] {
  const roll = dice(seed);
  let weather = 0;
  return Array.from({ length: days * 288 }, (_, i) => {
    weather = 0.995 * weather + 0.004 * normalDraw(roll);
    const phase = (2 * Math.PI * i) / 288;
    return {
      atS: dayZero + 300 * i,
      temperatureC: temperatureC + 1.5 * Math.sin(phase - 2) + 0.1 * normalDraw(roll),
      humidity: Math.min(
        0.9,
        Math.max(0.05, humidity + 0.04 * Math.sin(phase + 1) + weather + 0.005 * normalDraw(roll)),
      ),
    };
  });
}

export function noisyAir(seed: number, days: number, temperatureC = 22, humidity = 0.48): RoomAir {
  const readings = noisyReadings(seed, days, temperatureC, humidity);
  return roomAir(heldBlocks(readings, dayZero, dayZero + days * daySeconds), evenDay(temperatureC, humidity));
}

export interface Jar {
  readonly sorbent?: string | SorbentNumbers;
  readonly depthMm?: number;
  readonly headspaceMm?: number;
  readonly diameterMm?: number;
  readonly start?: number;
  readonly lid?: Lid;
  readonly air: RoomAir;
  readonly filmMPerS?: number;
  readonly scooping?: Scooping;
  readonly upper?: number | null;
  readonly lower?: number | null;
  readonly key?: string;
  readonly startSdLn?: number;
  readonly volumeL?: number;
}

/** A jar, from midnight of day zero, with nothing happening to it. */
export function jar({
  sorbent = 'silica',
  depthMm = 120,
  headspaceMm = 30,
  diameterMm = 90,
  start = 0.01,
  lid = 'open',
  air,
  filmMPerS = 0.003,
  scooping = 'top',
  upper = 0.05,
  lower = null,
  key = 'jar',
  startSdLn = 0.3,
  volumeL = 1,
}: Jar): FoldInput {
  const numbers = typeof sorbent === 'string' ? numbersOf(sorbent) : sorbent;
  const areaM2 = Math.PI * (diameterMm / 2000) ** 2;
  const geometry: Geometry = {
    kind: 'bed',
    areaM2,
    mouthAreaM2: areaM2,
    heightM: (depthMm + headspaceMm) / 1000,
    volumeM3: volumeL / 1000,
  };
  return {
    spec: {
      key,
      sorbent: numbers,
      geometry,
      scoopKg: 0.05,
      topM: 0.01,
      usualClosure: 'tight',
      filmMPerS,
      pressurePa: 101_325,
    },
    start: {
      atS: dayZero,
      room: 'room',
      lid,
      habit: null,
      scooping,
      dryKg: (areaM2 * depthMm * numbers.bulkDensityKgPerM3) / 1000,
      plates: 1,
      water: { kind: 'known', waterFraction: start, sdLn: startSdLn },
    },
    actions: [],
    airs: new Map([['room', air]]),
    checkpoint: null,
    asOfS: dayZero,
    target: { upper, lower, policy: 'dry' },
    thresholds: usualThresholds,
    factors: [],
  };
}

interface PlateBox {
  readonly sorbent?: string;
  readonly start?: number;
  readonly plates?: number;
  readonly lid?: Lid;
}

/** A box of plates of 200 by 200 mm with a 0.25 mm layer. */
export function plateBox(
  air: RoomAir,
  { sorbent = 'silica', start = 0.001, plates = 25, lid = 'open' }: PlateBox = {},
): FoldInput {
  const numbers = numbersOf(sorbent, true);
  const geometry: Geometry = { kind: 'plate', layerM: 0.25e-3, plateAreaM2: 0.04, volumeM3: 0.004 };
  const bare = jar({ air, start, lid, sorbent: numbers });
  return {
    ...bare,
    spec: { ...bare.spec, geometry },
    start: { ...bare.start, plates, dryKg: plates * 0.04 * 0.25e-3 * numbers.bulkDensityKgPerM3 },
  };
}

export const after = (input: FoldInput, hours: number): FoldInput => ({
  ...input,
  asOfS: input.start.atS + hours * hour,
});
