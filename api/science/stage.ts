// One implicit stage of a step: cells in local equilibrium, linked by diffusion, fed from the room; Newton on activity.
//
// ρ_b ∂w(a)/∂t = ∂/∂x (D_b ∂c/∂x), c = c_s(T) a^(T0/T), D_b = D ε^1.5 (Bruggeman); into the top (c_room - c_top)/r.
import { intervals, leastActivity, mostActivity } from './isotherm.ts';
import { bedCells } from './grid.ts';

/** What does not change within a step. Written in place: nothing is allocated while stepping. */
export const cells = {
  count: 0,
  /** kg dry per m² in each cell, times the capacity's factor. */
  mass: new Float64Array(bedCells),
  /** 1 / distance between the middles of a cell and the next, 1/m. */
  link: new Float64Array(bedCells),
  /** Hermite pieces of the isotherm. */
  pieces: new Float64Array(0) as Float64Array,
  totalMass: NaN,
  /** m²/s in the bed. */
  diffusivity: NaN,
  /** T0/T - 1. */
  theta: NaN,
  /** 1 / (r + h1 / 2 D_b), m/s. */
  topLink: NaN,
};

/** The unknowns of one node in time and all that the responses need of it afterwards. */
export interface Stage {
  readonly activity: Float64Array;
  readonly logActivity: Float64Array;
  readonly water: Float64Array;
  readonly slope: Float64Array;
  /** c in the cell's voids, and dc/da. */
  readonly vapour: Float64Array;
  readonly rise: Float64Array;
  /** Net inflow of each cell, kg/(m² s). */
  readonly flux: Float64Array;
  readonly change: Float64Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  readonly inverse: Float64Array;
  roomVapour: number;
  saturated: number;
  /** Into the top of the bed, kg/(m² s). */
  inflow: number;
  /** Step times the stage's weight of its own flux, s. */
  weight: number;
}

export function stage(): Stage {
  const array = () => new Float64Array(bedCells);
  return {
    activity: array(),
    logActivity: array(),
    water: array(),
    slope: array(),
    vapour: array(),
    rise: array(),
    flux: array(),
    change: array(),
    lower: array(),
    upper: array(),
    inverse: array(),
    roomVapour: NaN,
    saturated: NaN,
    inflow: NaN,
    weight: NaN,
  };
}

/** w, w', c and dc/da of every cell at the stage's activities. */
export function evaluate(stage: Stage): void {
  const { activity, logActivity, water, slope, vapour, rise, saturated } = stage;
  const { count, pieces, theta } = cells;
  for (let i = 0; i < count; i++) {
    const a = activity[i]!;
    const x = a * intervals;
    const k = x | 0;
    const t = x - k;
    const p1 = pieces[4 * k + 1]!;
    const p2 = pieces[4 * k + 2]!;
    const p3 = pieces[4 * k + 3]!;
    water[i] = pieces[4 * k]! + t * (p1 + t * (p2 + t * p3));
    slope[i] = intervals * (p1 + t * (2 * p2 + 3 * t * p3));
    const y = theta * logActivity[i]!;
    // exp(y): six terms leave less than 3e-7 below a quarter.
    const shift =
      y < 0.25 && y > -0.25 ? 1 + y * (1 + y * (1 / 2 + y * (1 / 6 + y * (1 / 24 + y * (1 / 120))))) : Math.exp(y);
    const perActivity = saturated * shift;
    vapour[i] = perActivity * a;
    rise[i] = perActivity * (1 + theta);
  }
}

/** Net inflow of every cell from the vapour in the voids; the stage's `inflow` with it. */
export function flow(stage: Stage): void {
  const { vapour, flux } = stage;
  const { count, link, diffusivity } = cells;
  let above = cells.topLink * (stage.roomVapour - vapour[0]!);
  stage.inflow = above;
  for (let i = 0; i < count - 1; i++) {
    const below = diffusivity * link[i]! * (vapour[i]! - vapour[i + 1]!);
    flux[i] = above - below;
    above = below;
  }
  flux[count - 1] = above;
}

// Residual, Jacobian and forward elimination in one sweep, then back substitution into `change`.
function newton(stage: Stage, known: Float64Array): void {
  const { water, slope, vapour, rise, change, lower, upper, inverse, weight } = stage;
  const { count, mass, link, diffusivity, topLink } = cells;
  let above = topLink * (stage.roomVapour - vapour[0]!);
  let aboveLink = topLink;
  let aboveRise = 0;
  let previousChange = 0;
  let previousUpper = 0;
  let previousInverse = 0;
  for (let i = 0; i < count; i++) {
    const belowLink = i < count - 1 ? diffusivity * link[i]! : 0;
    const belowRise = i < count - 1 ? rise[i + 1]! : 0;
    const below = i < count - 1 ? belowLink * (vapour[i]! - vapour[i + 1]!) : 0;
    const diagonal = mass[i]! * slope[i]! + weight * (aboveLink + belowLink) * rise[i]!;
    const factor = -weight * aboveLink * aboveRise * previousInverse;
    const inverted = 1 / (diagonal - factor * previousUpper);
    const residual = known[i]! - mass[i]! * water[i]! + weight * (above - below) - factor * previousChange;
    const up = -weight * belowLink * belowRise;
    lower[i] = factor;
    upper[i] = up;
    inverse[i] = inverted;
    change[i] = residual;
    previousChange = residual;
    previousUpper = up;
    previousInverse = inverted;
    above = below;
    aboveLink = belowLink;
    aboveRise = rise[i]!;
  }
  let next = 0;
  for (let i = count - 1; i >= 0; i--) {
    next = (change[i]! - upper[i]! * next) * inverse[i]!;
    change[i] = next;
  }
}

/** Solves with the stage's last factorisation, in place. */
export function resolve(stage: Stage, x: Float64Array, from: number): void {
  const { lower, upper, inverse } = stage;
  const { count } = cells;
  let last = 0;
  for (let i = 0; i < count; i++) {
    last = x[from + i]! - lower[i]! * last;
    x[from + i] = last;
  }
  let next = 0;
  for (let i = count - 1; i >= 0; i--) {
    next = (x[from + i]! - upper[i]! * next) * inverse[i]!;
    x[from + i] = next;
  }
}

const mostPasses = 12;

/**
 * Solves mass w(a) = known + weight F(a). `ready` says that the stage is already evaluated at its activities. Leaves the
 * fluxes of c + c' δ, with which water is conserved whatever Newton's tolerance. False when it does not converge.
 */
export function settle(stage: Stage, known: Float64Array, tolerance: number, ready: boolean): boolean {
  const { activity, logActivity, slope, vapour, rise, change } = stage;
  const { count, mass, totalMass } = cells;
  for (let pass = 0; pass < mostPasses; pass++) {
    if (pass > 0 || !ready) evaluate(stage);
    newton(stage, known);
    let left = 0;
    for (let i = 0; i < count; i++) {
      const a = activity[i]!;
      const wanted = a + change[i]!;
      const next = wanted < leastActivity ? leastActivity : wanted > mostActivity ? mostActivity : wanted;
      const moved = next - a;
      const x = moved / a;
      logActivity[i] = x < 0.05 && x > -0.05 ? logActivity[i]! + x * (1 - x * (1 / 2 - x * (1 / 3))) : Math.log(next);
      activity[i] = next;
      left += (mass[i]! * slope[i]! * moved * moved) / (a + 0.03);
    }
    if (left < 0.1 * tolerance * totalMass) {
      for (let i = 0; i < count; i++) vapour[i] = vapour[i]! + rise[i]! * change[i]!;
      flow(stage);
      return true;
    }
    if (!(left < Infinity)) return false;
  }
  return false;
}
