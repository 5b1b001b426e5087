// Which run from before each batch goes on from.
import type { AnswerBatch } from '../science/ovens/answer.ts';
import type { RunRow } from './facts.ts';
import type { Posed } from './problem.ts';

/** Which run before each batch goes on from: the one in the same oven that shares most with it. */
export function matched(batches: readonly AnswerBatch[], old: readonly RunRow[], of: Posed): Map<AnswerBatch, RunRow> {
  const keyOf = (name: string) => {
    const load = of.wanted.get(name);
    return load ? `${load.request.id} ${load.part}` : name;
  };
  const pairs = batches.flatMap((batch) => {
    const keys = new Set(batch.jobs.map(keyOf));
    return old.map((run) => {
      const same = run.loads.filter(({ requestId, part }) => keys.has(`${requestId} ${part}`)).length;
      return { batch, run, score: same + (run.oven.name === batch.oven ? 0.5 : 0), same };
    });
  });
  const found = new Map<AnswerBatch, RunRow>();
  const taken = new Set<string>();
  for (const { batch, run, same } of pairs.sort((a, b) => b.score - a.score)) {
    if (same === 0 || found.has(batch) || taken.has(run.id)) continue;
    found.set(batch, run);
    taken.add(run.id);
  }
  return found;
}
