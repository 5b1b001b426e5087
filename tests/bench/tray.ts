// A drying recipe and its deepest tray: CPU time, beside the same equations in plain code with an off-the-shelf integrator,
// and the error of both against a grid of 300 cells.
import measured from '../../fixtures/measured/tray-fine-grid.json' with { type: 'json' };
import { deepestM } from '../../api/science/tray/deepest.ts';
import { forecast, type Forecast } from '../../api/science/tray/forecast.ts';
import { loadOf, type Tray } from '../../api/science/tray/load.ts';
import { plainTray } from '../science/tray/plain.ts';
import { trayOf } from '../science/tray/trays.ts';
import { type Bench, quantile, spread } from './bench.ts';

/** Starts above this may take longer: water moves in filled pores. */
const usualStart = 0.15;

const milliseconds = (work: () => unknown): number => {
  const from = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1000;
};

/** CPU time of each of so many batches, per run, after as many to warm up. */
function timed(batches: number, work: () => unknown): number[] {
  const each = 10;
  const batch = () => milliseconds(() => Array.from({ length: each }, work)) / each;
  Array.from({ length: batches }, batch);
  return Array.from({ length: batches }, batch);
}

const recipe = (tray: Tray, minutes: readonly number[]): Forecast =>
  forecast(loadOf(tray), {
    atS: minutes.map((minute) => 60 * minute),
    targets: [0.01],
    mostS: 86_400,
    profileAtS: 60 * (minutes.at(-1) ?? 0),
  });

export async function tray(short: boolean): Promise<Bench> {
  const batches = short ? 5 : 25;
  const details: Record<string, number> = {};
  let worst = [0];
  let slowest = [0];
  let error = 0;
  for (const { name, start, at, ...words } of measured.cases) {
    const one = trayOf({ ...words, start });
    const minutes = at.map(([minute]) => minute ?? 0);
    const { moments } = recipe(one, minutes);
    for (const [i, [, mean = NaN]] of at.entries()) {
      const missed = Math.abs((moments[i]?.mean ?? NaN) - mean) / Math.max(mean, 0.01);
      error = Math.max(error, missed);
    }
    const times = timed(batches, () => recipe(one, minutes));
    details[`${name} ms`] = quantile(times, 0.5);
    if (start > usualStart) slowest = times;
    else if (quantile(times, 0.5) > quantile(worst, 0.5)) worst = times;
  }
  const deepest = measured.deepest.map(({ wettest, minutes, ...words }) => {
    const one = trayOf(words);
    return quantile(
      timed(short ? 2 : 5, () => deepestM(one, wettest, 'wettest', 60 * minutes)),
      0.5,
    );
  });

  // P1 at its middle time.
  const [first] = measured.cases;
  const [minutes = NaN, mean = NaN] = first?.at[1] ?? [];
  const one = trayOf({ depthMm: first?.depthMm ?? NaN, start: first?.start ?? NaN });
  let plainError = NaN;
  const plain = milliseconds(() => {
    plainError = Math.abs(plainTray(one, 60 * minutes, 20, 1e-4).mean / mean - 1);
  });
  const ours = quantile(
    timed(batches, () => recipe(one, [minutes])),
    0.5,
  );
  const value = quantile(worst, 0.5);
  return {
    value,
    unit: 'ms a recipe',
    against: 'the same equations on 20 cells with odex, one recipe to 30 min',
    ratio: ours / plain,
    spread: spread(worst),
    details: {
      ...details,
      'target ms': 10,
      met: value <= 10,
      'wet start ms': quantile(slowest, 0.5),
      'wet start target ms': 40,
      'deepest ms': Math.max(...deepest),
      'deepest target ms': 150,
      'plain ms': plain,
      'plain error of mean': plainError,
      'our worst error of mean, of 1 % water or more': error,
    },
  };
}
