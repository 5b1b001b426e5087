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
}

export function setupsOf(problem: OvenProblem, states: States, oven: Oven): Setups {
  const { count, temperatureC } = states;
  const setups = { minutes: new Int32Array(count * count), cost: new Float64Array(count * count) };
  for (let from = 0; from < count; from += 1) {
    for (let to = 0; to < count; to += 1) {
      const at = from * count + to;
      if (temperatureC) {
        const rise = temperatureC[to]! - temperatureC[from]!;
        setups.minutes[at] = Math.round(rise >= 0 ? rise * oven.heatMinutesPerC : -rise * oven.coolMinutesPerC);
      } else {
        setups.minutes[at] = problem.setup?.minutes[from]?.[to] ?? 0;
        setups.cost[at] = problem.setup?.cost?.[from]?.[to] ?? 0;
      }
    }
  }
  return setups;
}
