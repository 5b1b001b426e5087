// `npm run --silent plan-ovens -- FILE.json`: which jobs dry together, in which oven and when, and how good that is, as JSON.
import { BadInput } from '../bad-input.ts';
import { planApart, usualSeconds } from '../drying/planning/plan-apart.ts';
import type { OvenAnswer } from '../science/ovens/answer.ts';
import { budgetOf } from '../science/ovens/prepared.ts';
import { isUnplaced } from '../science/ovens/schedule.ts';
import { bar } from './bar.ts';
import { endWith } from './ending.ts';
import { jsonFile } from './json.ts';
import { planOvensInput } from './plan-ovens/input.ts';
import { planOptions } from './plan-ovens/options.ts';
import { problemOf } from './plan-ovens/problem.ts';

const answered = ({ batches, ...answer }: OvenAnswer, seconds: number): unknown => ({
  batches: batches.map(({ oven, jobs, start, end, temperatureC, setupMinutes, reason }) => ({
    oven,
    jobs,
    start,
    end,
    temperatureC,
    setupMinutes,
    reason,
  })),
  objective: answer.objective,
  lowerBound: answer.lowerBound,
  gap: answer.gap,
  provenOptimal: answer.provenOptimal,
  seconds,
  stopped: answer.stopped,
  words: answer.words,
});

async function run(args: readonly string[]): Promise<number> {
  const from = performance.now();
  const options = planOptions(args);
  const { raw } = await jsonFile(options.words, 'ovens and jobs');
  const input = planOvensInput(raw);
  const objective = options.objective ?? input.objective ?? 'lateness';
  if (objective === 'weighted-sum' && !input.weights) {
    throw new BadInput(
      'missing weights, expected what weighted-sum adds up: lateJobs, ovenMinutes, setupMinutes, setupCost',
    );
  }
  const problem = problemOf(input);
  const seconds = options.seconds ?? usualSeconds(problem.jobs.length);
  const weights = { lateJobs: 0, ovenMinutes: 0, setupMinutes: 0, setupCost: 0, ...input.weights };
  const { progress, stop } = bar('Planning');
  try {
    const task = { problem, objective, weights, seed: options.seed, ...budgetOf(seconds) };
    const answer = await planApart(task, { seconds, progress });
    if (answer.batches.some(isUnplaced)) {
      throw new BadInput('invalid ovens: open hours that end too soon, expected enough of them for all jobs');
    }
    console.log(JSON.stringify(answered(answer, (performance.now() - from) / 1000), null, 2));
  } finally {
    stop();
  }
  return 0;
}

await endWith(run(process.argv.slice(2)));
