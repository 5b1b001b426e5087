// What an oven may stand at between batches, as indices: temperatures in rising order, or families when a table gives the set-ups.
// A batch has a window of states; the oven goes to the nearest one in it, the lazy rule that needs least heat-up.
import type { Oven, OvenProblem, Span } from './problem.ts';

export interface States {
  readonly count: number;
  /** The temperature of a state; null where states are families. */
  readonly temperatureC: readonly number[] | null;
  /** The family of a state; null where states are temperatures. */
  readonly families: readonly string[] | null;
  readonly at: (word: number | string | undefined) => number;
}

/** Absent limits: wider than any oven. */
export const anyTemperature: Span = [-273, 10_000];

const usualStartC = 20;
export const startC = (oven: Oven): number => oven.startTemperatureC ?? oven.temperatureC?.[0] ?? usualStartC;

export function statesOf({ ovens, jobs, fixed, setup }: OvenProblem): States {
  if (setup) {
    const index = new Map(setup.families.map((family, i) => [family, i]));
    // The last state is that of an oven set up for nothing yet.
    const unset = setup.families.length;
    const at = (word: number | string | undefined) => index.get(String(word)) ?? unset;
    return { count: unset + 1, temperatureC: null, families: setup.families, at };
  }
  const all = [
    ...jobs.flatMap(({ temperatureC }) => temperatureC ?? anyTemperature),
    ...ovens.flatMap((oven) => [...(oven.temperatureC ?? anyTemperature), startC(oven)]),
    ...fixed.flatMap(({ temperatureC }) => (temperatureC === undefined ? [] : [temperatureC])),
  ];
  const temperatureC = [...new Set(all)].sort((a, b) => a - b);
  const index = new Map(temperatureC.map((value, i) => [value, i]));
  return { count: temperatureC.length, temperatureC, families: null, at: (word) => index.get(Number(word)) ?? 0 };
}

export interface Setups {
  /** Minutes from one state (row) to another, rounded to the minute. */
  readonly minutes: Int32Array;
  readonly cost: Float64Array;
  /** The most by which standing at the row's state can cost more set-up minutes than standing at the column's, whatever comes. */
  readonly behindMinutes: Int32Array;
  readonly behindCost: Float64Array;
}

export function setupsOf(problem: OvenProblem, states: States, oven: Oven): Setups {
  const { count } = states;
  const square = count * count;
  const setups = {
    minutes: new Int32Array(square),
    cost: new Float64Array(square),
    behindMinutes: new Int32Array(square),
    behindCost: new Float64Array(square),
  };
  if (states.temperatureC) byTemperature(setups, states.temperatureC, oven);
  else byTable(setups, problem, count);
  return setups;
}

// From row to column: heating or cooling. Behind: rounding may go up at each temperature on the way, since a later
// window may end at any of them.
function byTemperature(setups: Setups, temperatureC: readonly number[], oven: Oven): void {
  const count = temperatureC.length;
  const raw = (from: number, to: number) => {
    const rise = temperatureC[to]! - temperatureC[from]!;
    return rise >= 0 ? rise * oven.heatMinutesPerC : -rise * oven.coolMinutesPerC;
  };
  for (let from = 0; from < count; from += 1) {
    for (let to = 0; to < count; to += 1) setups.minutes[from * count + to] = Math.round(raw(from, to));
    let up = 0;
    for (let to = from + 1; to < count; to += 1) {
      up += Math.ceil(raw(to - 1, to) - 1e-9);
      setups.behindMinutes[from * count + to] = up;
    }
    let down = 0;
    for (let to = from - 1; to >= 0; to -= 1) {
      down += Math.ceil(raw(to + 1, to) - 1e-9);
      setups.behindMinutes[from * count + to] = down;
    }
  }
}

function byTable(setups: Setups, { setup }: OvenProblem, count: number): void {
  const unset = count - 1;
  for (let from = 0; from < unset; from += 1) {
    for (let to = 0; to < unset; to += 1) {
      setups.minutes[from * count + to] = setup?.minutes[from]?.[to] ?? 0;
      setups.cost[from * count + to] = setup?.cost?.[from]?.[to] ?? 0;
    }
  }
  for (let a = 0; a < count; a += 1) {
    for (let b = 0; b < count; b += 1) {
      let [minutes, cost] = [0, 0];
      for (let next = 0; next < unset; next += 1) {
        minutes = Math.max(minutes, setups.minutes[a * count + next]! - setups.minutes[b * count + next]!);
        cost = Math.max(cost, setups.cost[a * count + next]! - setups.cost[b * count + next]!);
      }
      setups.behindMinutes[a * count + b] = minutes;
      setups.behindCost[a * count + b] = cost;
    }
  }
}
