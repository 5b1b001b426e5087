// A drying of which depth and minutes are known: the tray model says what is left, from the water it went in with.
//
// The air is that of the block of 300 s in which the drying ended, so that the digits depend on nothing later.
import { saturationPressurePa } from './air.ts';
import { bedMean, settleActivity, type Bed } from './bed.ts';
import { blocksPerDay, blockSeconds, daySeconds, meanAir, roomAir, type RoomAir } from './climate.ts';
import { begin, depthOf, fill, type Condition } from './condition.ts';
import { bedCells } from './grid.ts';
import type { BedSpec } from './history.ts';
import { residualWater, roomVapourPa, vacuumVapourPa } from './residual.ts';
import { heldBlocks } from './blocks.ts';
import { usualPace } from './stepper.ts';
import { carryTo } from './stretch.ts';
import { forecast, timeDoubt, type Place } from './tray/forecast.ts';
import type { DryingIsotherm } from './tray/isotherm.ts';
import { loadOf, wettestStart, type DryingSorbent } from './tray/load.ts';
import { usualExchange, type OvenKind } from './tray/oven.ts';
import { restingWater } from './tray/residual.ts';

export interface InOven {
  readonly temperatureC: number;
  readonly oven: OvenKind;
  readonly pressurePa: number;
  /** Vapour pressure in the chamber, Pa; null for the room's, or in a vacuum oven for the usual. */
  readonly vapourPa: number | null;
  /** The oven came to its temperature within the first so many seconds. */
  readonly warmUpS: number;
  /** In the oven, and how deep; null where nobody said: then only what the temperature leaves is known. */
  readonly seconds: number | null;
  readonly depthM: number | null;
  readonly trayHeatJPerM2K: number;
  readonly isotherm: DryingIsotherm;
  /** Null where the class's figures for drying are not known: then only what the temperature leaves. */
  readonly sorbent: DryingSorbent | null;
  /** It cooled in the open for so long before it was shut away, s. */
  readonly openS: number;
  /** Learned: the water left is so many times the model's. */
  readonly times: number;
}

/** A recipe's residue is known within a factor of two, and never better than this, kg/kg (invented default). */
const leastSd = 0.002;
/** Relative doubt of what is taken up on the way to the desiccator (invented default). */
const reuptakeDoubt = 0.3;
/** A log-normal wider than this says too much of the wet side: a factor of e either way, one sigma. */
const mostSdLn = 1;
/** Where nobody recorded the room, °C. */
const usualRoomC = 22;
/** Dried in its own vessel when tray and bed are as deep as each other within this; else it was poured back, which mixes it. */
const sameDepth = 0.25;

interface Around {
  readonly temperatureC: number;
  readonly humidity: number | null;
}

function airAt(air: RoomAir | undefined, atS: number): Around {
  const block = Math.floor(atS / blockSeconds) * blockSeconds;
  const { humidity, temperatureC } = air
    ? meanAir(air, block, block + blockSeconds)
    : { humidity: NaN, temperatureC: NaN };
  if (!(humidity >= 0)) return { temperatureC: usualRoomC, humidity: null };
  return { temperatureC, humidity: Math.min(1, humidity) };
}

function vapourIn(action: InOven, { humidity, temperatureC }: Around): number {
  if (action.vapourPa !== null) return Math.min(action.vapourPa, action.pressurePa);
  if (action.oven === 'vacuum') return Math.min(vacuumVapourPa, action.pressurePa);
  return humidity === null ? roomVapourPa : humidity * saturationPressurePa(temperatureC);
}

interface Left {
  readonly mean: number;
  readonly sd: number;
  /** Null where only the mean is known. */
  readonly profile: readonly Place[] | null;
}

/** Per unit of capacity: density and heat capacity make up for it, as in the bed. */
function ofUnit(sorbent: DryingSorbent, capacity: number): DryingSorbent {
  return {
    ...sorbent,
    bulkDensityKgPerM3: sorbent.bulkDensityKgPerM3 * capacity,
    heatCapacityJPerKgK: sorbent.heatCapacityJPerKgK / capacity,
  };
}

function leftIn(condition: Condition, action: InOven, around: Around): Left {
  const { bed, startKnown } = condition;
  const { isotherm, sorbent, temperatureC, oven, pressurePa, seconds, depthM, warmUpS, trayHeatJPerM2K } = action;
  const vapourPa = vapourIn(action, around);
  if (seconds === null || depthM === null || !sorbent) {
    const mean = residualWater(isotherm, temperatureC, vapourPa);
    return { mean, sd: Math.max(leastSd, mean / 2), profile: null };
  }
  const exchange = usualExchange(oven, temperatureC, pressurePa);
  const wettest = 0.999 * wettestStart(isotherm);
  const dried = (startWater: number) =>
    forecast(
      loadOf({
        sorbent: ofUnit(sorbent, bed.capacity),
        depthM,
        waterFraction: Math.min(startWater, wettest),
        temperatureC: Math.min(around.temperatureC, temperatureC),
        trayHeatJPerM2K,
        oven: { kind: oven, temperatureC, pressurePa, vapourPa, warmUpS, pump: null, exchange },
        conductivityWPerMK: null,
      }),
      {
        atS: [seconds / (1 + timeDoubt), seconds, seconds * (1 + timeDoubt)],
        targets: [],
        mostS: 0,
        profileAtS: seconds,
      },
    );
  const start = bedMean(bed, bed.water);
  const { moments, profile } = dried(start);
  const [sooner, now, later] = moments.map(({ mean }) => mean) as [number, number, number];
  const ofTime = Math.abs(sooner - later) / 2;
  const ofOven = Math.max(leastSd, restingWater(isotherm, temperatureC, vapourPa) / 2);
  const ofStart = startKnown ? 0 : Math.abs((dried(2 * start).moments[1]?.mean ?? now) - now);
  return { mean: now, sd: Math.hypot(ofTime, ofOven, ofStart), profile };
}

/** Water at a depth, on straight lines between the places of a profile. */
function waterAt(profile: readonly Place[], depthM: number): number {
  const after = profile.findIndex((place) => place.depthM >= depthM);
  const below = profile[after] ?? profile.at(-1)!;
  const above = profile[after - 1] ?? below;
  const apart = below.depthM - above.depthM;
  const share = apart > 0 ? (depthM - above.depthM) / apart : 1;
  return above.waterFraction + share * (below.waterFraction - above.waterFraction);
}

/** Puts a profile into a bed, kept to a mean. */
function shape(bed: Bed, mean: number, at: (share: number) => number): void {
  const { cells, thicknessM, depthM } = bed.grid;
  let top = 0;
  for (let i = 0; i < cells; i++) {
    bed.water[i] = at((top + thicknessM[i]! / 2) / depthM);
    top += thicknessM[i]!;
  }
  const found = bedMean(bed, bed.water);
  for (let i = 0; i < cells; i++) bed.water[i] = found > 0 ? bed.water[i]! * (mean / found) : mean;
  settleActivity(bed);
}

/** The tray as a bed of its own, as deep as it was in the oven, open to the room. */
function trayOf(spec: BedSpec, dryKg: number, capacity: number, depthM: number): BedSpec {
  const sorbent = { ...spec.sorbent, bulkDensityKgPerM3: spec.sorbent.bulkDensityKgPerM3 * capacity };
  if (spec.geometry.kind === 'plate') return { ...spec, sorbent };
  const areaM2 = dryKg / (sorbent.bulkDensityKgPerM3 * depthM);
  const geometry = { kind: 'bed' as const, areaM2, mouthAreaM2: areaM2, heightM: depthM, volumeM3: areaM2 * depthM };
  return { ...spec, sorbent, geometry };
}

/** The tray after it stood in the open for a while in air that stays as it was. */
function cooledOpen(condition: Condition, spec: BedSpec, action: InOven, left: Left, around: Around): Bed | null {
  const seconds = Math.min(action.openS, daySeconds);
  if (!(seconds > 0) || around.humidity === null) return null;
  const dryKg = Math.max(condition.dryKg, 1e-7);
  const deep = action.depthM ?? depthOf(spec, dryKg);
  const { capacity } = condition.bed;
  const water = { kind: 'known' as const, waterFraction: left.mean, sdLn: 0 };
  const start = { atS: 0, room: '', lid: 'open' as const, habit: null, scooping: 'top' as const, water };
  const traySpec = trayOf(spec, capacity * dryKg, capacity, deep);
  const open = begin(traySpec, { ...start, dryKg: capacity * dryKg, plates: condition.plates }, []);
  const { profile } = left;
  if (profile) shape(open.bed, left.mean, (share) => waterAt(profile, share * deep));
  const readings = [{ atS: 0, temperatureC: around.temperatureC, humidity: around.humidity }];
  const still = roomAir(heldBlocks(readings, 0, blocksPerDay * blockSeconds), null);
  carryTo(open, traySpec, still, seconds, [], usualPace);
  return open.bed;
}

/** Sets the water to what the oven left, with its profile where the bed was dried as it lies. */
export function driedInOven(condition: Condition, spec: BedSpec, action: InOven, air: RoomAir | undefined): void {
  const { bed } = condition;
  const around = airAt(air, condition.atS);
  const left = leftIn(condition, action, around);
  const cooled = cooledOpen(condition, spec, action, left, around);
  const mean = cooled ? bedMean(cooled, cooled.water) : left.mean;
  const water = Math.max(1e-6, mean * action.times);
  const sd = Math.hypot(left.sd, reuptakeDoubt * (mean - left.mean)) * bed.capacity;
  fill(condition, spec.key, water * bed.capacity, Math.min(mostSdLn, sd / (water * bed.capacity)));
  const { profile } = left;
  const ownDepth = bed.grid.depthM;
  const asItLies = action.depthM !== null && Math.abs(action.depthM / ownDepth - 1) <= sameDepth;
  if (!profile || !asItLies || condition.condensing) return;
  const deep = action.depthM;
  if (cooled) shape(bed, water, (share) => cellAt(cooled, share));
  else shape(bed, water, (share) => waterAt(profile, share * deep));
  bed.responses = new Float64Array(bedCells);
  bed.responses.set(bed.water);
}

/** Water of the cell at a share of a bed's depth. */
function cellAt({ grid, water }: Bed, share: number): number {
  let bottom = 0;
  for (let i = 0; i < grid.cells; i++) {
    bottom += grid.thicknessM[i]!;
    if (share * grid.depthM <= bottom) return water[i]!;
  }
  return water[grid.cells - 1]!;
}
