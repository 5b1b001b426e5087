// Learning from the balance: the factors that make all weighings and all priors most likely together (maximum a posteriori,
// Gauss and Newton on the logarithms, at most four iterations, steps within ±1).
import type { RoomAir } from '../climate.ts';
import { expect, type Expected } from './expect.ts';
import { valueOf, type Values } from './factors.ts';
import { familiesOf, priorsOf } from './families.ts';
import { biasedAirs } from './moved.ts';
import { screen, type Screened } from './screen.ts';
import type { Solution } from './solve.ts';
import type { Weighed, Weighing } from './weighing.ts';

const mostIterations = 4;
const longestStep = 1;
/** Nothing moves any more by this much of its sigma; what is left of the step is then taken along the slopes. */
const smallestStep = 0.03;
/** A step that makes things worse by more than this (of half a sum of squares) is halved. */
const noWorse = 1e-3;

export interface Learned {
  readonly values: Values;
  readonly solution: Solution;
  /** One sigma of each factor before anything was learned. */
  readonly priors: ReadonlyMap<string, number>;
  /** Each weighing before anything was learned and at the end, in order of time. */
  readonly before: readonly Expected[];
  readonly after: readonly Expected[];
  readonly leftOut: ReadonlySet<string>;
  /** By how many sigmas each weighing differs from what all others make one expect, by its id. */
  readonly sigmas: ReadonlyMap<string, number>;
  readonly iterations: number;
  /** The largest last step, taken without simulating again, in sigmas. */
  readonly lastStep: number;
}

/** An earlier fit to go on from, and the containers whose history or weighings have changed since. */
export interface Earlier {
  readonly learned: Learned;
  readonly changed: ReadonlySet<string>;
}

type AirOf = (air: RoomAir, bias: number) => RoomAir;

const inOrder = (one: Weighing, other: Weighing): number =>
  one.atS - other.atS || compare(one.container, other.container) || compare(one.id, other.id);
const compare = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);

// What did not change is not simulated again: its expectations move along their slopes.
function extrapolated(row: Expected, from: Values, to: Values): Expected {
  let { expected } = row;
  for (const [name, { value }] of row.slopes) expected += value * (valueOf(to, name) - valueOf(from, name));
  return { ...row, expected };
}

/** Expectations of all weighings under any values. */
type Expecting = (values: Values) => Expected[];

function expecting(
  containers: ReadonlyMap<string, Weighed>,
  byContainer: ReadonlyMap<string, readonly Weighing[]>,
  isFresh: (key: string) => boolean,
  kept: readonly Expected[],
  keptAt: Values | null,
  airOf: AirOf,
): Expecting {
  return (values) => {
    const all = kept
      .filter(({ weighing }) => !isFresh(weighing.container))
      .map((row) => (keptAt ? extrapolated(row, keptAt, values) : row));
    for (const [key, weighings] of byContainer) {
      const weighed = containers.get(key);
      if (weighed && isFresh(key)) all.push(...expect(weighed, weighings, values, airOf));
    }
    return all.sort((one, other) => inOrder(one.weighing, other.weighing));
  };
}

/** Half the sum of squares that the fit makes least, over the weighings that are used. */
export function objective(
  all: readonly Expected[],
  values: Values,
  priors: ReadonlyMap<string, number>,
  isUsed: (id: string) => boolean,
): number {
  let sum = 0;
  for (const { weighing, found, expected, noise, unusable } of all) {
    if (unusable === null && isUsed(weighing.id)) sum += ((found - expected) / noise) ** 2;
  }
  for (const [name, sd] of priors) if (sd > 0) sum += (valueOf(values, name) / sd) ** 2;
  return sum / 2;
}

function moved(values: Values, step: ReadonlyMap<string, number>, share: number): Map<string, number> {
  const next = new Map(values);
  for (const [name, by] of step) {
    next.set(name, valueOf(values, name) + share * Math.max(-longestStep, Math.min(longestStep, by)));
  }
  return next;
}

// In sigmas, of what is known by now for shared factors, of the prior for a container's own.
function sizeOf({ solution }: Screened, priors: ReadonlyMap<string, number>): number {
  const sds = new Map(solution.sharedNames.map((name, i) => [name, Math.sqrt(solution.shared.get(i, i))]));
  let most = 0;
  for (const [name, by] of solution.step) {
    const sd = sds.get(name) ?? priors.get(name) ?? 0;
    if (sd > 0) most = Math.max(most, Math.abs(by) / sd);
  }
  return most;
}

/**
 * Fits all containers' weighings at once. Going on from an earlier fit, only the containers that changed are simulated again: a
 * new weighing is answered at once, and lies within a tenth of a sigma or so of a fit from nothing.
 */
export function learn(
  containers: readonly Weighed[],
  weighings: readonly Weighing[],
  earlier: Earlier | null = null,
): Learned {
  const byKey = new Map(containers.map((weighed) => [weighed.input.spec.key, weighed]));
  const byContainer = new Map<string, Weighing[]>();
  for (const weighing of [...weighings].sort(inOrder)) {
    const known = byContainer.get(weighing.container);
    if (known) known.push(weighing);
    else byContainer.set(weighing.container, [weighing]);
  }
  const isFresh = (key: string): boolean => earlier === null || earlier.changed.has(key);
  const airOf = biasedAirs();
  const told = (kept: readonly Expected[] | undefined, keptAt: Values | null): Expecting =>
    expecting(byKey, byContainer, isFresh, kept ?? [], keptAt, airOf);
  const before = told(earlier?.learned.before, null)(new Map());
  const expectAll = told(earlier?.learned.after, earlier?.learned.values ?? null);
  let values: Values = earlier?.learned.values ?? new Map();
  let after = earlier === null ? before : expectAll(values);
  const priors = priorsOf([...before, ...after]);
  let screened = screen(familiesOf(after), values, priors);
  let iterations = 0;
  let share = 1;
  while (iterations < mostIterations && sizeOf(screened, priors) > smallestStep) {
    iterations++;
    const out = new Set([...screened.leftOut].map(({ weighing }) => weighing.id));
    const next = moved(values, screened.solution.step, share);
    const there = expectAll(next);
    const isUsed = (id: string): boolean => !out.has(id);
    const rise = objective(there, next, priors, isUsed) - objective(after, values, priors, isUsed);
    if (!(rise <= noWorse)) {
      share /= 2;
      continue;
    }
    share = 1;
    values = next;
    after = there;
    screened = screen(familiesOf(after), values, priors);
  }
  const there = moved(values, screened.solution.step, 1);
  return {
    values: there,
    solution: screened.solution,
    priors,
    before,
    after: after.map((row) => extrapolated(row, values, there)),
    leftOut: new Set([...screened.leftOut].map(({ weighing }) => weighing.id)),
    sigmas: new Map([...screened.sigmas].map(([{ weighing }, sigma]) => [weighing.id, sigma])),
    iterations,
    lastStep: sizeOf(screened, priors),
  };
}
