// A container as the fold carries it: its bed, its lid and room, and what is known of it at all.
import { bedMean, emptyBed, rowOf, settleActivity, type Bed } from './bed.ts';
import { closureName, conductanceM3PerS } from './closures.ts';
import { bedCells, bedGrid, plateGrid } from './grid.ts';
import type { BedSpec, Factors, Habit, Handover, Lid, Scooping, Start } from './history.ts';
import type { Inflow } from './inflow.ts';
import { clampedActivity, mostWater, tableWater } from './isotherm.ts';
import { closedRowName, factorOf, prior, startRowName } from './uncertainty.ts';

export interface Condition {
  readonly bed: Bed;
  atS: number;
  room: string;
  lid: Lid;
  /** A scoop leaves the lid off until then, whatever `lid` says. */
  shutsAtS: number;
  openedAtS: number | null;
  habit: Habit | null;
  scooping: Scooping;
  dryKg: number;
  plates: number;
  wetted: boolean;
  /** Was the starting water ever known; was the air since. */
  startKnown: boolean;
  airKnown: boolean;
  startSdLn: number;
  /** When the water was last set as a whole, s (before a handover: in its source); null where nobody knows. */
  fillS: number | null;
  /** The wettest the whole has been since its water was last known, kg/kg of unit capacity. */
  peak: number;
  condensing: boolean;
  /** Temperature of the last drying, °C; null where none is known of. */
  driedAtC: number | null;
  /** Water through the top since the history's beginning, kg. */
  gainedKg: number;
}

export const depthOf = (spec: BedSpec, dryKg: number): number => {
  const { geometry, sorbent } = spec;
  return geometry.kind === 'plate' ? geometry.layerM : dryKg / (sorbent.bulkDensityKgPerM3 * geometry.areaM2);
};

export const areaOf = ({ geometry }: BedSpec, plates: number): number =>
  geometry.kind === 'plate' ? geometry.plateAreaM2 * plates : geometry.areaM2;

/** An emptied container keeps a trace for a bed, the same whether it goes on from a checkpoint or not, kg. */
const emptyKg = 1e-7;
export const bedKg = (dryKg: number): number => Math.max(dryKg, emptyKg);
export const isEmpty = (condition: Condition): boolean => !(condition.dryKg > emptyKg) || condition.plates <= 0;

/** The bed of a spec, without water. */
export function bareBed(spec: BedSpec, dryKg: number, factors: Factors): Bed {
  const grid = spec.geometry.kind === 'plate' ? plateGrid(spec.geometry.layerM) : bedGrid(depthOf(spec, bedKg(dryKg)));
  const widening = prior.filled / prior.bias;
  return emptyBed(
    spec.sorbent,
    grid,
    factorOf(factors, 'capacity'),
    factorOf(factors, 'bed'),
    spec.pressurePa,
    widening,
  );
}

/** The condition at the start of a history. */
export function begin(spec: BedSpec, start: Start, factors: Factors): Condition {
  const condition: Condition = {
    bed: bareBed(spec, start.dryKg, factors),
    atS: start.atS,
    room: start.room,
    lid: start.lid,
    shutsAtS: -Infinity,
    openedAtS: start.lid === 'open' ? start.atS : null,
    habit: start.habit,
    scooping: start.scooping,
    dryKg: start.dryKg,
    plates: start.plates,
    wetted: false,
    startKnown: start.water.kind !== 'unknown',
    airKnown: true,
    startSdLn: 0,
    fillS: start.atS,
    peak: 0,
    condensing: false,
    driedAtC: null,
    gainedKg: 0,
  };
  if (start.water.kind === 'handover') receive(condition, start.water.handover);
  else if (start.water.kind === 'known') fill(condition, spec.key, start.water.waterFraction, start.water.sdLn);
  else fill(condition, spec.key, start.water.assumedWaterFraction, Math.LN2);
  return condition;
}

/** A level profile of known water: nothing else matters any more but how well that is known. */
export function fill(condition: Condition, key: string, waterFraction: number, sdLn: number): void {
  const { bed } = condition;
  bed.rows = [startRowName(key)];
  bed.responses = new Float64Array(bedCells);
  setLevel(condition, waterFraction);
  bed.responses.set(bed.water);
  condition.startSdLn = sdLn;
  condition.fillS = condition.atS;
}

/** Well-mixed material with all that its water depends on. */
export function receive(condition: Condition, handover: Handover): void {
  const { bed } = condition;
  bed.rows = [];
  bed.responses = new Float64Array(0);
  setLevel(condition, handover.waterFraction);
  for (const { factor, value } of handover.factors) {
    const from = rowOf(bed, factor) * bedCells;
    bed.responses.fill(value / bed.capacity, from, from + bed.grid.cells);
  }
  condition.startSdLn = handover.startSdLn;
  condition.fillS = handover.fillS ?? null;
  condition.startKnown = handover.known;
  condition.driedAtC = handover.driedAtC ?? null;
}

function setLevel(condition: Condition, waterFraction: number): void {
  const { bed } = condition;
  const wanted = waterFraction / bed.capacity;
  condition.condensing = wanted > mostWater(bed.isotherm);
  bed.water.fill(0);
  bed.water.fill(condition.condensing ? tableWater(bed.isotherm, clampedActivity) : wanted, 0, bed.grid.cells);
  settleActivity(bed);
  condition.peak = bedMean(bed, bed.water);
}

/** Is the mouth open at this instant? */
export const standsOpen = (condition: Condition): boolean =>
  condition.lid === 'open' || condition.atS < condition.shutsAtS;

/** The inflow under a lid, and the rows of the bed that it drives. `duty` is the share of time a habit leaves it open. */
export function inflowOf(spec: BedSpec, condition: Condition, lid: Lid, duty: number, factors: Factors): Inflow {
  const { geometry } = spec;
  const { bed } = condition;
  const area = areaOf(spec, condition.plates);
  const neck = geometry.kind === 'bed' ? Math.max(1, area / geometry.mouthAreaM2) : 1;
  const headM = geometry.kind === 'bed' ? Math.max(0, geometry.heightM - bed.grid.depthM) : 0;
  const openDuty = lid === 'open' ? 1 : lid === 'sealed' ? 0 : duty;
  const name = lid === 'open' ? '' : closureName(lid);
  bed.openRow = openDuty > 0 ? rowOf(bed, 'open') : -1;
  bed.closedRow = lid !== 'open' && lid !== 'sealed' ? rowOf(bed, closedRowName(name, spec.key)) : -1;
  bed.bedRow = rowOf(bed, 'bed');
  bed.biasRow = rowOf(bed, 'bias');
  return {
    filmSPerM: neck / spec.filmMPerS,
    headM: neck * headM,
    closureSPerM: lid === 'open' ? 0 : area / conductanceM3PerS(lid, geometry),
    openDuty,
    openFactor: factorOf(factors, 'open'),
    closedFactor: lid === 'open' ? 1 : factorOf(factors, `closed:${name}`) * factorOf(factors, 'container'),
  };
}
