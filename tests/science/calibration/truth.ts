// A silica bed solved by other means than the estimator's, to be weighed: 40 layers in another ratio, Alexander's
// two-stage method at steps of its own (R. Alexander, SIAM J. Numer. Anal. 14, 1977, 1006), the isotherm without a table.
// Optionally with a desorption branch that lies higher where pores fill.
import { diffusivityM2PerS, referenceK, saturatedKgPerM3, zeroCelsiusK } from '../../../api/science/air.ts';
import type { Reading } from '../../../api/science/blocks.ts';
import type { SorbentNumbers } from '../../../api/science/history.ts';
import { activityAtWater, isothermOf } from '../../../api/science/isotherm.ts';

const layers = 40;
const growth = 1.09;
const gamma = 1 - Math.SQRT1_2;
const array = () => new Float64Array(layers);
const [lower, diagonal, right, upper, vapour, rise, net, before, known] = Array.from({ length: 9 }, array) as [
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
];
/** Longest steps, s, and the first after an opening or closing. */
const longest = { open: 300, shut: 1800 } as const;
const firstStepS = 30;
/** Slope between the branches, of the lower one's. */
const hair = 0.02;

export interface TrueBed {
  readonly sorbent: SorbentNumbers;
  readonly depthM: number;
  readonly capacity: number;
  readonly bedFactor: number;
  readonly start: number;
  /** Desorption holds so many times more at the activities where pores fill; 1 is none. */
  readonly desorption: number;
}

/** Running integrals of a room's air from its readings, linear between them. */
export function airOf(readings: readonly Reading[]): {
  mean: (fromS: number, toS: number) => [number, number, number];
} {
  const [first, second] = readings;
  if (!first || !second) throw new Error('missing readings, expected two or more');
  const every = second.atS - first.atS;
  const sums = new Float64Array(3 * readings.length);
  const values = readings.map(({ temperatureC, humidity }) => {
    const saturated = saturatedKgPerM3(temperatureC);
    return [humidity * saturated, saturated, temperatureC] as const;
  });
  for (let i = 1; i < readings.length; i++) {
    for (let q = 0; q < 3; q++) {
      sums[3 * i + q] = sums[3 * i - 3 + q]! + (every * (values[i]![q]! + values[i - 1]![q]!)) / 2;
    }
  }
  const at = (s: number, q: number): number => {
    const x = (s - first.atS) / every;
    const i = Math.min(readings.length - 2, Math.floor(x));
    const t = x - i;
    const [from, to] = [values[i]![q]!, values[i + 1]![q]!];
    return sums[3 * i + q]! + every * t * (from + ((to - from) * t) / 2);
  };
  const mean = (fromS: number, toS: number, q: number): number => (at(toS, q) - at(fromS, q)) / (toS - fromS);
  return { mean: (fromS, toS) => [mean(fromS, toS, 0), mean(fromS, toS, 1), mean(fromS, toS, 2)] };
}

export class Truth {
  readonly water = new Float64Array(layers);
  readonly depths: Float64Array;
  private readonly activity = new Float64Array(layers);
  private readonly numbers: SorbentNumbers['isotherm'];
  private stepS = firstStepS;
  private readonly slope = new Float64Array(layers);
  private readonly bed: TrueBed;
  private readonly air: ReturnType<typeof airOf>;

  constructor(bed: TrueBed, air: ReturnType<typeof airOf>) {
    this.bed = bed;
    this.air = air;
    this.numbers = bed.sorbent.isotherm;
    const shape = Float64Array.from({ length: layers }, (_, i) => growth ** i);
    const sum = shape.reduce((total, one) => total + one, 0);
    this.depths = shape.map((one) => (one * bed.depthM) / sum);
    this.fill(bed.start);
  }

  private fill(water: number): void {
    this.water.fill(water);
    this.activity.fill(activityAtWater(isothermOf(this.numbers), water / this.bed.capacity));
  }

  /** Mean over the top so many metres. */
  mean(depthM = this.bed.depthM): number {
    let left = depthM;
    let sum = 0;
    for (let i = 0; i < layers && left > 1e-12; i++) {
      const part = Math.min(left, this.depths[i]!);
      sum += part * this.water[i]!;
      left -= part;
    }
    return sum / (depthM - left);
  }

  mix(): void {
    this.fill(this.mean());
    this.turn();
  }

  /** Something was opened or closed. */
  turn(): void {
    this.stepS = firstStepS;
  }

  /** To an instant under one lid, whose resistance depends on the diffusivity. */
  carry(fromS: number, toS: number, isOpen: boolean, resistance: (diffusivity: number) => number): void {
    const most = isOpen ? longest.open : longest.shut;
    for (let s = fromS; s < toS;) {
      let step = Math.min(this.stepS, most, toS - s);
      if (toS - s - step < 1) step = toS - s;
      this.step(s, step, resistance);
      s += step;
      this.stepS = Math.min(most, step * 1.6);
    }
  }

  private step(fromS: number, h: number, resistance: (diffusivity: number) => number): void {
    const [roomVapour, saturated, temperatureC] = this.air.mean(fromS, fromS + h);
    const free = diffusivityM2PerS(temperatureC);
    const within = free * this.bed.sorbent.voidFraction ** 1.5 * this.bed.bedFactor;
    const top = 1 / (resistance(free) + this.depths[0]! / 2 / within);
    const power = referenceK / (temperatureC + zeroCelsiusK);
    before.set(this.water);
    known.set(this.water);
    this.solve(h * gamma, roomVapour, saturated, power, within, top);
    for (let i = 0; i < layers; i++) known[i] = before[i]! + (h * (1 - gamma) * net[i]!) / this.mass(i);
    this.solve(h * gamma, roomVapour, saturated, power, within, top);
  }

  private mass(i: number): number {
    return this.bed.sorbent.bulkDensityKgPerM3 * this.depths[i]!;
  }

  // m w(a) = m known + weight F(a); leaves water and activity there, and F in `net`.
  private solve(
    weight: number,
    roomVapour: number,
    saturated: number,
    power: number,
    within: number,
    top: number,
  ): void {
    const { activity, depths, water, slope } = this;
    for (let pass = 0; pass < 60; pass++) {
      for (let i = 0; i < layers; i++) {
        vapour[i] = saturated * activity[i]! ** power;
        rise[i] = (power * vapour[i]!) / activity[i]!;
      }
      this.hold();
      let wrong = 0;
      let above = top;
      let flowAbove = top * (roomVapour - vapour[0]!);
      for (let i = 0; i < layers; i++) {
        const mass = this.mass(i);
        const isLast = i === layers - 1;
        const below = isLast ? 0 : (2 * within) / (depths[i]! + depths[i + 1]!);
        const flowBelow = isLast ? 0 : below * (vapour[i]! - vapour[i + 1]!);
        net[i] = flowAbove - flowBelow;
        diagonal[i] = mass * slope[i]! + weight * (above + below) * rise[i]!;
        lower[i] = i === 0 ? 0 : -weight * above * rise[i - 1]!;
        upper[i] = isLast ? 0 : -weight * below * rise[i + 1]!;
        right[i] = mass * (known[i]! - water[i]!) + weight * net[i]!;
        wrong = Math.max(wrong, Math.abs(right[i]!) / mass);
        above = below;
        flowAbove = flowBelow;
      }
      if (wrong < 1e-8) break;
      for (let i = 1; i < layers; i++) {
        const factor = lower[i]! / diagonal[i - 1]!;
        diagonal[i] = diagonal[i]! - factor * upper[i - 1]!;
        right[i] = right[i]! - factor * right[i - 1]!;
      }
      for (let i = layers - 1; i >= 0; i--) {
        right[i] = (right[i]! - (i === layers - 1 ? 0 : upper[i]! * right[i + 1]!)) / diagonal[i]!;
        const a = activity[i]! + right[i]!;
        activity[i] = a > 0.99 ? (activity[i]! + 0.99) / 2 : a < activity[i]! / 10 ? activity[i]! / 10 : a;
      }
    }
    // The fluxes, not the isotherm, decide, so that none is lost.
    for (let i = 0; i < layers; i++) water[i] = known[i]! + (weight * net[i]!) / this.mass(i);
  }

  // Water and its slope from the activity. Between two branches water stays as it is while activity moves (a hair of slope, so
  // that Newton has one).
  private hold(): void {
    const { activity, water, slope } = this;
    const { capacity, desorption } = this.bed;
    const { filmCapacity, filmC, filmK, poreCapacity, poreActivity, poreWidth } = this.numbers;
    const empty = 1 / (1 + Math.exp(poreActivity / poreWidth));
    for (let i = 0; i < layers; i++) {
      const a = activity[i]!;
      const ka = filmK * a;
      const free = 1 - ka;
      const layer = free + filmC * ka;
      const share = 1 / (1 + Math.exp((poreActivity - a) / poreWidth));
      const low = capacity * ((filmCapacity * filmC * ka) / (free * layer) + poreCapacity * (share - empty));
      const film = (filmC * filmK * (1 + (filmC - 1) * ka * ka)) / (free * layer) ** 2;
      const lowSlope = capacity * (filmCapacity * film + (poreCapacity * share * (1 - share)) / poreWidth);
      water[i] = low;
      slope[i] = lowSlope;
      if (desorption === 1) continue;
      const rising = Math.min(1, Math.max(0, (a - 0.3) / 0.2));
      const times = 1 + (desorption - 1) * rising;
      const middle = before[i]! * (1 - hair) + hair * low;
      if (middle >= low * times) {
        water[i] = low * times;
        slope[i] = lowSlope * times + (rising > 0 && rising < 1 ? (low * (desorption - 1)) / 0.2 : 0);
      } else if (middle > low) {
        water[i] = middle;
        slope[i] = hair * lowSlope;
      }
    }
  }
}
