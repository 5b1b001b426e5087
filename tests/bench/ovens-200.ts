// Two hundred jobs in six ovens over five days, planned within 15 s: how many are proven least late, and the gap of oven hours.
import { amount } from '../support/amount.ts';
import { type Bench, spread } from './bench.ts';
import { figures, plannedWeek } from './weeks.ts';

const seconds = 15;

export async function ovens200(short: boolean): Promise<Bench> {
  const seeds = short ? 1 : amount(3, 10);
  const plans = figures(
    Array.from({ length: seeds }, (_, i) =>
      plannedWeek({ jobs: 200, ovens: 6, days: 5, load: 0.5, seed: i + 1 }, seconds),
    ),
  );
  const value = Math.max(...plans.seconds);
  return {
    value,
    unit: 's of CPU, slowest plan, slower thread',
    against: 'fifteen seconds',
    ratio: value / seconds,
    spread: spread(plans.seconds),
    details: {
      seeds,
      'lateness proven': plans.proven,
      'lateness proven, target share': 8 / 10,
      'gap minutes, most': plans.mostMinutes,
      'gap of oven hours, most (target 0.2)': plans.mostHours,
      met: value <= seconds && plans.proven >= 0.8 * seeds && plans.mostHours <= 0.2,
    },
  };
}
