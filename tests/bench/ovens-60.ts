// Sixty jobs in three ovens over three days, planned within 2 s: how many are proven on time and how wide the gaps are; and
// how soon a plan of 8 or 12 jobs is proven best.
import { isSmall, planSmall } from '../../api/science/ovens/plan.ts';
import { budgetOf, prepared } from '../../api/science/ovens/prepared.ts';
import { weekOf } from '../science/ovens/generator.ts';
import { noWeights, unwatched } from '../science/ovens/problems.ts';
import { amount } from '../support/amount.ts';
import { type Bench, quantile, spread } from './bench.ts';
import { figures, plannedWeek } from './weeks.ts';

const seconds = 2;
const week = { jobs: 60, ovens: 3, days: 3 };

function exactSeconds(jobs: number): number {
  const problem = weekOf({ jobs, ovens: 3, days: 1, load: 0.5, seed: 1 });
  const ready = prepared({ problem, objective: 'lateness', weights: noWeights, seed: 1, ...budgetOf(seconds) });
  const times = Array.from({ length: 3 }, () => {
    const from = process.cpuUsage();
    const { provenOptimal } = planSmall(ready, unwatched);
    const { user, system } = process.cpuUsage(from);
    return isSmall(ready) && provenOptimal ? (user + system) / 1e6 : NaN;
  });
  return quantile(times, 0.5);
}

export async function ovens60(short: boolean): Promise<Bench> {
  const seeds = short ? 2 : amount(6, 20);
  const weeks = (load: number, count: number) =>
    figures(Array.from({ length: count }, (_, i) => plannedWeek({ ...week, load, seed: i + 1 }, seconds)));
  const easy = weeks(0.5, seeds);
  const full = weeks(0.8, short ? 1 : Math.ceil(seeds / 2));
  const [eight, twelve] = [exactSeconds(8), exactSeconds(12)];
  const value = Math.max(...easy.seconds);
  return {
    value,
    unit: 's of CPU, slowest plan, slower thread',
    against: 'two seconds',
    ratio: value / seconds,
    spread: spread(easy.seconds),
    details: {
      seeds,
      'proven on time': easy.onTime,
      'proven on time, target share': 13 / 20,
      'gap minutes, median (target 0)': easy.minutes,
      'gap minutes, most (target 2)': easy.mostMinutes,
      'gap of oven hours, median (target 0.15)': easy.hours,
      'gap of oven hours, most (target 0.25)': easy.mostHours,
      'fuller week: gap minutes, median (target 5)': full.minutes,
      'fuller week: gap minutes, most (target 15)': full.mostMinutes,
      'exact, 8 jobs, s (target 0.2)': eight,
      'exact, 12 jobs, s (target 1.5)': twelve,
      met:
        value <= seconds &&
        easy.onTime >= (13 / 20) * seeds &&
        easy.minutes === 0 &&
        easy.mostMinutes <= 2 &&
        easy.hours <= 0.15 &&
        easy.mostHours <= 0.25 &&
        full.minutes <= 5 &&
        full.mostMinutes <= 15 &&
        eight <= 0.2 &&
        twelve <= 1.5,
    },
  };
}
