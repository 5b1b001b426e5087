// What each event does to a container.
import { bedMean, clearRows, cutTop, level, resize, rowOf, topMean, type Bed } from './bed.ts';
import type { RoomAir } from './climate.ts';
import { bedKg, depthOf, fill, receive, type Condition } from './condition.ts';
import { bedCells } from './grid.ts';
import type { Action, BedSpec, Handover } from './history.ts';
import { tableSlope, tableWater } from './isotherm.ts';
import { referenceActivity, referenceK, zeroCelsiusK } from './air.ts';
import { firstStepS } from './stepper.ts';
import { observe } from './observe.ts';
import { saltRowName } from './uncertainty.ts';
import { driedInOven } from './oven-dried.ts';

/** What left by a `taken` or `plates taken`. */
export interface Departure {
  readonly id: string;
  readonly dryKg: number;
  readonly handover: Handover;
}

/** Applies an action in place, in its room's air; says what left, if anything did. */
export function apply(condition: Condition, spec: BedSpec, action: Action, air?: RoomAir): Departure | null {
  const { bed } = condition;
  bed.stepS = Math.min(bed.stepS, firstStepS);
  switch (action.kind) {
    case 'opened':
      if (condition.lid !== 'open') condition.openedAtS = action.atS;
      condition.lid = 'open';
      return null;
    case 'closed':
      condition.lid = action.closure;
      condition.openedAtS = null;
      condition.shutsAtS = -Infinity;
      return null;
    case 'moved':
      condition.room = action.room;
      return null;
    case 'taken':
      liftLid(condition, spec, action.atS, action.openSeconds);
      return take(condition, spec, action.id, action.dryKg);
    case 'plates taken': {
      liftLid(condition, spec, action.atS, action.openSeconds);
      const share = Math.min(1, action.plates / condition.plates);
      const departure = {
        id: action.id,
        dryKg: condition.dryKg * share,
        handover: handoverOf(condition, bed.grid.depthM),
      };
      condition.plates -= action.plates;
      condition.dryKg *= 1 - share;
      return departure;
    }
    case 'counted':
      if (spec.geometry.kind !== 'plate' && action.dryKg > condition.dryKg) resize(bed, depthOf(spec, action.dryKg));
      else if (spec.geometry.kind !== 'plate') shrink(condition, spec, action.dryKg);
      condition.dryKg = action.dryKg;
      condition.plates = action.plates;
      return null;
    case 'mixed':
      level(bed);
      return null;
    case 'dried': {
      const water = action.sd > 0 ? Math.max(action.waterFraction, 1e-6) : action.waterFraction;
      fill(condition, spec.key, water, water > 0 ? action.sd / water : 0);
      makeKnown(condition);
      if (action.driedAtC !== undefined) condition.driedAtC = action.driedAtC;
      return null;
    }
    case 'in oven':
      driedInOven(condition, spec, action, air);
      condition.driedAtC = action.temperatureC;
      makeKnown(condition);
      return null;
    case 'equilibrated':
      equilibrate(condition, spec, action.humidity, action.temperatureC);
      return null;
    case 'observed': {
      const depthM = action.of === 'scoop' ? scoopDepthM(spec, condition) : bed.grid.depthM;
      observe(condition, spec.key, { depthM, waterFraction: action.waterFraction, sd: action.sd });
      return null;
    }
    case 'combined':
      combine(condition, spec, action.parts);
      return null;
    case 'habit':
      condition.habit = action.habit;
      return null;
    case 'scooping':
      condition.scooping = action.scooping;
      return null;
    case 'wetted':
      condition.wetted = true;
      return null;
  }
}

/** How deep the next scoop reaches; all of it for plates, columns and fair samples. */
export function scoopDepthM(spec: BedSpec, { bed, scooping }: Condition): number {
  if (spec.geometry.kind !== 'bed' || scooping !== 'top') return bed.grid.depthM;
  return Math.min(bed.grid.depthM, depthOf(spec, spec.scoopKg));
}

function liftLid(condition: Condition, spec: BedSpec, atS: number, seconds: number): void {
  if (!(seconds > 0)) return;
  if (condition.lid === 'sealed') condition.lid = spec.usualClosure;
  condition.shutsAtS = Math.max(condition.shutsAtS, atS + seconds);
}

function take(condition: Condition, spec: BedSpec, id: string, dryKg: number): Departure {
  const { bed } = condition;
  if (condition.scooping === 'rolled') level(bed);
  const taken = Math.min(dryKg, condition.dryKg);
  const fair = spec.geometry.kind === 'plate' || condition.scooping !== 'top';
  const handover = handoverOf(condition, fair ? bed.grid.depthM : Math.min(bed.grid.depthM, depthOf(spec, taken)));
  const left = condition.dryKg - taken;
  if (spec.geometry.kind !== 'plate') shrink(condition, spec, left);
  condition.dryKg = left;
  return { id, dryKg: taken, handover };
}

function shrink(condition: Condition, spec: BedSpec, dryKg: number): void {
  const depthM = depthOf(spec, bedKg(dryKg));
  if (depthM === condition.bed.grid.depthM) return;
  if (condition.scooping === 'top') cutTop(condition.bed, depthM);
  else resize(condition.bed, depthM);
}

/** The mean of the top `depthM` and of every response to it. */
export function handoverOf(condition: Condition, depthM: number): Handover {
  const { bed } = condition;
  return {
    waterFraction: bed.capacity * topMean(bed, bed.water, 0, depthM),
    factors: bed.rows.map((factor, row) => ({
      factor,
      value: bed.capacity * topMean(bed, bed.responses, row * bedCells, depthM),
    })),
    startSdLn: condition.startSdLn,
    known: condition.startKnown && condition.airKnown,
    fillS: condition.fillS,
    driedAtC: condition.driedAtC,
  };
}

function makeKnown(condition: Condition): void {
  condition.startKnown = true;
  condition.airKnown = true;
  condition.wetted = false;
}

// Only capacity (by its identity) and the humidity it stood at are in doubt: ∂w/∂φ = w'(a) da/dφ.
function equilibrate(condition: Condition, spec: BedSpec, humidity: number, temperatureC: number): void {
  const { bed } = condition;
  const activity = referenceActivity(humidity, temperatureC);
  fill(condition, spec.key, bed.capacity * tableWater(bed.isotherm, activity), 0);
  clearRows(bed);
  const from = rowOf(bed, saltRowName(spec.key)) * bedCells;
  const perHumidity = ((temperatureC + zeroCelsiusK) / referenceK) * (activity / humidity);
  bed.responses.fill(tableSlope(bed.isotherm, activity) * perHumidity, from, from + bed.grid.cells);
  makeKnown(condition);
}

// What was dried least hot says how active a mixture can be.
function coolest(temperatures: readonly (number | null)[]): number | null {
  const told = temperatures.filter((temperature) => temperature !== null);
  return told.length > 0 ? Math.min(...told) : null;
}

// Starting waters of different origin are independent: their sigmas add in quadrature into one row of the whole's own.
function combine(condition: Condition, spec: BedSpec, parts: readonly { dryKg: number; handover: Handover }[]): void {
  const own = { dryKg: condition.dryKg, handover: handoverOf(condition, condition.bed.grid.depthM) };
  const all = [own, ...parts].filter(({ dryKg }) => dryKg > 0);
  const dryKg = all.reduce((total, part) => total + part.dryKg, 0);
  const factors = new Map<string, number>();
  let water = 0;
  let startResponse = 0;
  let startVariance = 0;
  for (const { dryKg: kg, handover } of all) {
    const share = kg / dryKg;
    water += share * handover.waterFraction;
    for (const { factor, value } of handover.factors) {
      if (factor.startsWith('start:')) {
        startResponse += share * value;
        startVariance += (share * value * handover.startSdLn) ** 2;
      } else factors.set(factor, (factors.get(factor) ?? 0) + share * value);
    }
  }
  if (startResponse !== 0) factors.set(`start:${spec.key}`, startResponse);
  if (spec.geometry.kind !== 'plate') resize(condition.bed, depthOf(spec, dryKg));
  condition.dryKg = dryKg;
  receive(condition, {
    waterFraction: water,
    factors: [...factors].map(([factor, value]) => ({ factor, value })),
    startSdLn: startResponse !== 0 ? Math.sqrt(startVariance) / Math.abs(startResponse) : 0,
    known: all.every(({ handover }) => handover.known),
    fillS: condition.atS,
    driedAtC: coolest(all.map(({ handover }) => handover.driedAtC ?? null)),
  });
}

/** Mean water of the whole, kg/kg true. */
export const wholeWater = (bed: Bed): number => bed.capacity * bedMean(bed, bed.water);
