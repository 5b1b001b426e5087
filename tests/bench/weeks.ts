// Weeks of oven plans for the benches: how late, how well proven, and the CPU time of the slower of the two threads.
import { weekOf, type Week } from '../science/ovens/generator.ts';
import { noWeights, unwatched } from '../science/ovens/problems.ts';
import type { OvenAnswer } from '../../api/science/ovens/answer.ts';
import { concluded, searched } from '../../api/science/ovens/plan.ts';
import { budgetOf, prepared } from '../../api/science/ovens/prepared.ts';
import { proofOf } from '../../api/science/ovens/proof.ts';
import { quantile } from './bench.ts';

const cpuSeconds = (from: NodeJS.CpuUsage): number => {
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1e6;
};

interface Planned {
  readonly answer: OvenAnswer;
  /** CPU seconds of the thread that takes longer; they run side by side. */
  readonly seconds: number;
}

/** The same counted work as the two threads do, one after the other, so that each can be timed alone. */
export function plannedWeek(week: Week, seconds: number): Planned {
  const problem = weekOf(week);
  const task = { problem, objective: 'lateness', weights: noWeights, seed: 1, ...budgetOf(seconds) } as const;
  const ready = prepared(task);
  const from = process.cpuUsage();
  const found = searched(ready, task.moves, unwatched);
  const searching = cpuSeconds(from);
  const then = process.cpuUsage();
  const proof = proofOf(ready, found.best, unwatched);
  return { answer: concluded(ready, found, proof), seconds: Math.max(searching, cpuSeconds(then)) };
}

/** What a sample of plans comes to; `NaN` where no plan has a gap of oven hours. */
export function figures(plans: readonly Planned[]) {
  const minutes = plans.map(({ answer }) => answer.gap.minutes);
  const hours = plans.flatMap(({ answer }) => answer.gap.ovenHours ?? []);
  return {
    onTime: plans.filter(({ answer }) => answer.objective.value === 0).length,
    proven: plans.filter(({ answer }) => answer.gap.minutes === 0).length,
    minutes: quantile(minutes, 0.5),
    mostMinutes: Math.max(...minutes),
    hours: quantile(hours, 0.5),
    mostHours: hours.length === 0 ? NaN : Math.max(...hours),
    seconds: plans.map(({ seconds }) => seconds),
  };
}
