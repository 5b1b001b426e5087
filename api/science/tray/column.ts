// The bed as a stack of cells at one instant: temperature and vapour pressure of each from its water and heat, and what
// flows through every face, with all slopes.
//
// J = D_t (M/RT) ∂p/∂x towards the top;  G = k ∂T/∂x + J c_v (T − T_r);  p = p_s(T) a^(T0/T), w = w_d(a);
// u = (c_s + w c_w)(T − T_r) − w h_r per kg dry. T and p at faces are arithmetic means.
// Through the floor goes heat alone: C_tr dT_tr/dt = h_B (T_o − T_tr) + ε_B σ (T_o⁴ − T_tr⁴) − k ∂T/∂x, T(L) = T_tr.
import { referenceK } from '../air.ts';
import { vapourHeat, waterHeat, zeroHeatK, ovenK, type Load } from './load.ts';
import { aboveOf, balance, stefanBoltzmann, surface, type Above, type Surface } from './top.ts';
import { conduct, type Conductance } from './vapour.ts';

/** Least water, kg/kg, at which a cell's vapour is looked up. */
const leastWater = 1e-12;

/** What does not change while a load dries. */
export interface Stack {
  readonly load: Load;
  readonly above: Above;
  readonly cells: number;
  readonly thicknessM: Float64Array;
  /** kg dry per m². */
  readonly mass: Float64Array;
  /** Between the middles of a cell and the next, m. */
  readonly reachM: Float64Array;
  /** Half of the outer cells, m. */
  readonly firstHalfM: number;
  readonly lastLink: number;
}

export function stackOf(load: Load, thicknessM: Float64Array): Stack {
  const cells = thicknessM.length;
  const reachM = new Float64Array(cells);
  for (let i = 0; i + 1 < cells; i++) reachM[i] = (thicknessM[i]! + thicknessM[i + 1]!) / 2;
  return {
    load,
    above: aboveOf(load),
    cells,
    thicknessM,
    mass: thicknessM.map((thickness) => thickness * load.densityKgPerM3),
    reachM,
    firstHalfM: thicknessM[0]! / 2,
    lastLink: (2 * load.conductivityWPerMK) / thicknessM[cells - 1]!,
  };
}

/** One instant. Written in place. */
export interface Column {
  readonly water: Float64Array;
  /** u, J per kg dry. */
  readonly heat: Float64Array;
  readonly temperatureK: Float64Array;
  readonly vapourPa: Float64Array;
  /** ∂T/∂w, ∂T/∂u, ∂p/∂w, ∂p/∂u. */
  readonly kPerWater: Float64Array;
  readonly kPerHeat: Float64Array;
  readonly paPerWater: Float64Array;
  readonly paPerHeat: Float64Array;
  /** J and G through face i, above cell i; the last is the floor. */
  readonly vapour: Float64Array;
  readonly energy: Float64Array;
  /** Eight a face: J over w, u above; J over w, u below; the same of G. */
  readonly slopes: Float64Array;
  readonly surface: Surface;
  trayK: number;
  ovenK: number;
  /** Oven to tray, W/m², and its slope over the tray's temperature (positive). */
  trayGain: number;
  trayGainPerK: number;
}

export function columnOf(cells: number): Column {
  const array = () => new Float64Array(cells);
  return {
    water: array(),
    heat: array(),
    temperatureK: array(),
    vapourPa: array(),
    kPerWater: array(),
    kPerHeat: array(),
    paPerWater: array(),
    paPerHeat: array(),
    vapour: new Float64Array(cells + 1),
    energy: new Float64Array(cells + 1),
    slopes: new Float64Array(8 * (cells + 1)),
    surface: surface(),
    trayK: NaN,
    ovenK: NaN,
    trayGain: NaN,
    trayGainPerK: NaN,
  };
}

/** u of water and temperature. */
export function heatOf(load: Load, water: number, temperatureK: number): number {
  return (
    (load.heatCapacityJPerKgK + water * waterHeat) * (temperatureK - zeroHeatK) - water * load.heatOfSorptionJPerKg
  );
}

const place: Conductance = { value: NaN, perK: NaN, perPa: NaN };

/** Everything that follows from water, heat and tray temperature at a time. */
export function evaluate(stack: Stack, at: Column, second: number): void {
  const { load, cells, reachM } = stack;
  cellStates(load, cells, at);
  at.ovenK = ovenK(load, second);

  const { temperatureK, vapourPa, vapour, energy, slopes, kPerWater, kPerHeat, paPerWater, paPerHeat } = at;
  balance(at.surface, stack.above, load, at.ovenK, temperatureK[0]!, vapourPa[0]!, stack.firstHalfM);
  const { surfaceK, surfacePerK, vapourPerPa, vapourPerK, heatPerK } = at.surface;
  const rise = vapourHeat * (surfaceK - zeroHeatK);
  vapour[0] = at.surface.vapour;
  energy[0] = at.surface.vapour * rise - at.surface.heat;
  const energyPerK = vapourPerK * rise + at.surface.vapour * vapourHeat * surfacePerK - heatPerK;
  slopes[2] = vapourPerPa * paPerWater[0]! + vapourPerK * kPerWater[0]!;
  slopes[3] = vapourPerPa * paPerHeat[0]! + vapourPerK * kPerHeat[0]!;
  slopes[6] = vapourPerPa * rise * paPerWater[0]! + energyPerK * kPerWater[0]!;
  slopes[7] = vapourPerPa * rise * paPerHeat[0]! + energyPerK * kPerHeat[0]!;

  const conductivity = load.conductivityWPerMK;
  for (let i = 1; i < cells; i++) {
    const a = i - 1;
    const inverse = 1 / reachM[a]!;
    const middleK = (temperatureK[a]! + temperatureK[i]!) / 2;
    const drop = vapourPa[i]! - vapourPa[a]!;
    conduct(load.path, middleK, (vapourPa[a]! + vapourPa[i]!) / 2, place);
    const flow = place.value * drop * inverse;
    const bend = place.perPa * 0.5 * drop;
    const perAbove = (bend - place.value) * inverse;
    const perBelow = (bend + place.value) * inverse;
    const perK = place.perK * 0.5 * drop * inverse;
    const carried = vapourHeat * (middleK - zeroHeatK);
    const link = conductivity * inverse;
    vapour[i] = flow;
    energy[i] = link * (temperatureK[i]! - temperatureK[a]!) + flow * carried;
    const share = carried * perK + 0.5 * vapourHeat * flow;
    const s = 8 * i;
    slopes[s] = perAbove * paPerWater[a]! + perK * kPerWater[a]!;
    slopes[s + 1] = perAbove * paPerHeat[a]! + perK * kPerHeat[a]!;
    slopes[s + 2] = perBelow * paPerWater[i]! + perK * kPerWater[i]!;
    slopes[s + 3] = perBelow * paPerHeat[i]! + perK * kPerHeat[i]!;
    slopes[s + 4] = carried * perAbove * paPerWater[a]! + (share - link) * kPerWater[a]!;
    slopes[s + 5] = carried * perAbove * paPerHeat[a]! + (share - link) * kPerHeat[a]!;
    slopes[s + 6] = carried * perBelow * paPerWater[i]! + (share + link) * kPerWater[i]!;
    slopes[s + 7] = carried * perBelow * paPerHeat[i]! + (share + link) * kPerHeat[i]!;
  }

  const { bottomWPerM2K, emissivityBottom } = load.oven.exchange;
  const radiation = emissivityBottom * stefanBoltzmann;
  const t = at.trayK;
  at.trayGain = bottomWPerM2K * (at.ovenK - t) + radiation * (at.ovenK ** 4 - t ** 4);
  at.trayGainPerK = bottomWPerM2K + 4 * radiation * t * t * t;
  energy[cells] = stack.lastLink * (t - temperatureK[cells - 1]!);
}

function cellStates(load: Load, cells: number, at: Column): void {
  const { water, heat, temperatureK, vapourPa, kPerWater, kPerHeat, paPerWater, paPerHeat } = at;
  const { pieces, intervals, lnLeast, density } = load.table;
  for (let i = 0; i < cells; i++) {
    const w = water[i]! > leastWater ? water[i]! : leastWater;
    const capacity = 1 / (load.heatCapacityJPerKgK + w * waterHeat);
    const above = (heat[i]! + w * load.heatOfSorptionJPerKg) * capacity;
    const t = zeroHeatK + above;
    const x = (Math.log(w) - lnLeast) * density;
    const k = x <= 0 ? 0 : x < intervals ? x | 0 : intervals - 1;
    const y = x - k;
    const p1 = pieces[4 * k + 1]!;
    const p2 = x <= 0 ? 0 : pieces[4 * k + 2]!;
    const p3 = x <= 0 ? 0 : pieces[4 * k + 3]!;
    const lnActivity = pieces[4 * k]! + y * (p1 + y * (p2 + y * p3));
    const perWater = (density * (p1 + y * (2 * p2 + 3 * y * p3))) / w;
    // ln p_s after Hyland and Wexler, as in `../air.ts`, with its slope.
    const inverse = 1 / t;
    const lnSaturated =
      -5.8002206e3 * inverse +
      1.3914993 +
      t * (-4.8640239e-2 + t * (4.1764768e-5 - t * 1.4452093e-8)) +
      6.5459673 * Math.log(t);
    const saturatedPerK =
      5.8002206e3 * inverse * inverse -
      4.8640239e-2 +
      t * (2 * 4.1764768e-5 - t * 3 * 1.4452093e-8) +
      6.5459673 * inverse;
    const exponent = referenceK * inverse;
    const pressure = Math.exp(lnSaturated + exponent * lnActivity);
    const paPerK = pressure * (saturatedPerK - exponent * inverse * lnActivity);
    const tPerWater = (load.heatOfSorptionJPerKg - waterHeat * above) * capacity;
    temperatureK[i] = t;
    vapourPa[i] = pressure;
    kPerWater[i] = tPerWater;
    kPerHeat[i] = capacity;
    paPerWater[i] = pressure * exponent * perWater + paPerK * tPerWater;
    paPerHeat[i] = paPerK * capacity;
  }
}
