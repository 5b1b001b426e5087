// The same tray as a plain programmer would write it: water and temperature of even cells and of the tray as ordinary
// differential equations, given to `odex`. Nothing of the solver is used, only the isotherm and its inverse.
import { createRequire } from 'node:module';
import { saturationPressurePa } from '../../../api/science/air.ts';
import { dryingTable, lnActivityAtWater } from '../../../api/science/tray/isotherm.ts';
import { conductivityOf, type Tray } from '../../../api/science/tray/load.ts';

interface Solver {
  absoluteTolerance: number;
  relativeTolerance: number;
  maxSteps: number;
  solve(f: (x: number, y: number[]) => number[], from: number, y: number[], to: number): { y: number[] };
}
// The package's own sources would be compiled under our settings; only this much of it is used.
const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (n: number) => Solver };

const perKelvin = 0.018015268 / 8.314462618;
const sigma = 5.670374419e-8;

/** Where f crosses nothing from below, by halving. */
function crossing(f: (x: number) => number, low: number, high: number): number {
  for (let pass = 0; pass < 48; pass++) {
    const middle = (low + high) / 2;
    if (f(middle) > 0) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** Mean water and the temperature in the middle, °C, after so many seconds; the tray must weigh something. */
export function plainTray(
  tray: Tray,
  seconds: number,
  cells: number,
  tolerance: number,
): { mean: number; centreC: number } {
  const { sorbent, oven, depthM, trayHeatJPerM2K } = tray;
  const { exchange, pressurePa, vapourPa } = oven;
  const { voidFraction: voids, particleM: grain } = sorbent;
  const table = dryingTable(sorbent.isotherm);
  const size = depthM / cells;
  const k = conductivityOf(tray);
  const setK = oven.temperatureC + 273.15;
  const startK = tray.temperatureC + 273.15;
  const width = ((2 / 3) * voids * grain) / (1 - voids);
  const viscous = (voids ** 3 * grain ** 2) / (180 * (1 - voids) ** 2) / 1.3e-5;
  const open = (kelvin: number, total: number): number => (2.178e-5 * (kelvin / 273.15) ** 1.81 * 101_325) / total;
  const through = (kelvin: number, vapour: number): number => {
    const total = Math.max(pressurePa, vapour);
    const share = vapour / total;
    const knudsen = voids ** 1.5 * (width / 3) * Math.sqrt((8 * kelvin) / (Math.PI * perKelvin));
    const hindrance =
      (1 - share) * (1 / (voids ** 1.5 * open(kelvin, total)) + 1 / knudsen) + share / (knudsen + viscous * total);
    return perKelvin / (kelvin * hindrance);
  };
  const filmOf = (surface: number): number =>
    (exchange.filmM * (1 - Math.min((surface + vapourPa) / (2 * pressurePa), 0.95)) * setK) /
    (perKelvin * open(setK, pressurePa));

  const slope = (second: number, y: number[]): number[] => {
    const ovenK = second < oven.warmUpS ? startK + ((setK - startK) * second) / oven.warmUpS : setK;
    const water = y.slice(0, cells).map((w) => Math.min(0.7, Math.max(1e-12, w)));
    // Trial states of the integrator may lie anywhere.
    const kelvin = y.slice(cells, 2 * cells).map((t) => Math.min(700, Math.max(200, t)));
    const trayK = Math.min(700, Math.max(200, y[2 * cells]!));
    const vapour = water.map((w, i) => {
      const t = kelvin[i]!;
      return saturationPressurePa(t - 273.15) * Math.exp((298.15 / t) * lnActivityAtWater(table, Math.max(w, 1e-12)));
    });
    const gain = (t: number): number =>
      exchange.topWPerM2K * (ovenK - t) + exchange.emissivityTop * sigma * (ovenK ** 4 - t ** 4);
    const firstK = kelvin[0]!;
    const surfaceK = crossing((t) => (2 * k * (t - firstK)) / size - gain(t), 200, 700);
    const firstPa = vapour[0]!;
    const inner = (p: number): number =>
      (2 * through((surfaceK + firstK) / 2, (p + firstPa) / 2) * (firstPa - p)) / size;
    const outer = (p: number): number => (p - vapourPa) / filmOf(p);
    const surfacePa = crossing((p) => outer(p) - inner(p), Math.min(vapourPa, firstPa), Math.max(vapourPa, firstPa));
    const steam = [outer(surfacePa)];
    const energy = [steam[0]! * 1900 * (surfaceK - 348.15) - gain(surfaceK)];
    for (let i = 1; i < cells; i++) {
      const middleK = (kelvin[i - 1]! + kelvin[i]!) / 2;
      const flow = (through(middleK, (vapour[i - 1]! + vapour[i]!) / 2) * (vapour[i]! - vapour[i - 1]!)) / size;
      steam.push(flow);
      energy.push((k * (kelvin[i]! - kelvin[i - 1]!)) / size + flow * 1900 * (middleK - 348.15));
    }
    steam.push(0);
    energy.push((2 * k * (trayK - kelvin[cells - 1]!)) / size);
    const mass = sorbent.bulkDensityKgPerM3 * size;
    const wetter = water.map((_, i) => (steam[i + 1]! - steam[i]!) / mass);
    const warmer = water.map((w, i) => {
      const heat = (energy[i + 1]! - energy[i]!) / mass;
      const held = 4180 * (kelvin[i]! - 348.15) - sorbent.heatOfSorptionJPerKg;
      return (heat - held * wetter[i]!) / (sorbent.heatCapacityJPerKgK + 4180 * w);
    });
    const shelf =
      exchange.bottomWPerM2K * (ovenK - trayK) + exchange.emissivityBottom * sigma * (ovenK ** 4 - trayK ** 4);
    return [...wetter, ...warmer, (shelf - energy[cells]!) / trayHeatJPerM2K];
  };

  const solver = new Solver(2 * cells + 1);
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  solver.maxSteps = 1e7;
  const start = [...new Array<number>(cells).fill(tray.waterFraction), ...new Array<number>(cells + 1).fill(startK)];
  const { y } = solver.solve(slope, 0, start, seconds);
  const mean = y.slice(0, cells).reduce((sum, w) => sum + w, 0) / cells;
  const half = cells >> 1;
  return { mean, centreC: (y[cells + half - 1]! + y[cells + half]!) / 2 - 273.15 };
}
