// The planner whole, step by step in one thread: search, then proof. Whoever has two threads runs the same steps side by side.
import { answerOf, type OvenAnswer } from './answer.ts';
import { exactPlan, mostExact } from './exact/exact.ts';
import { type PlanTask, prepared, type Prepared } from './prepared.ts';
import { proofOf, type Proven } from './proof.ts';
import { type Found, search, type Watch } from './search/search.ts';

/** A few jobs need a ceiling for the exact plan, no more. */
const movesBeforeExact = 15_000;

export const isSmall = ({ model }: Prepared): boolean => model.jobs <= mostExact;

export function searched(ready: Prepared, moves: number, watch: Watch): Found {
  const { task, model, objective, floor, kept, from } = ready;
  return search(model, objective, { seed: task.seed, moves, floor, from, kept }, watch);
}

export const concluded = (ready: Prepared, found: Found, proof: Proven): OvenAnswer =>
  answerOf(ready.model, ready.objective, found.best, proof, !found.isWhole || proof.isCut, ready.kept);

/** The plan of a few jobs, proven best unless it was stopped. */
export function planSmall(ready: Prepared, watch: Watch): OvenAnswer {
  const { model, objective, floor, kept } = ready;
  const moves = Math.min(ready.task.moves, model.jobs < 2 ? 0 : movesBeforeExact);
  const found = searched(ready, moves, { ...watch, progress: () => undefined });
  const { best } = found;
  const exact = exactPlan(model, objective, { figure: best.figure, hours: kept ? Infinity : best.hours }, watch);
  if (exact === null) {
    return concluded(ready, { ...found, isWhole: false }, { figure: floor, hours: null, isWhole: false, isCut: true });
  }
  // A plan that departs little from the one before is kept where no other is less late.
  const isKept = kept !== null && best.figure <= exact.figure + 1e-6;
  const hours = objective.name === 'lateness' ? exact.hours : null;
  const proof = { figure: exact.figure, hours, isWhole: !isKept, isCut: false };
  return concluded(ready, { best: isKept ? best : exact, isWhole: true }, proof);
}

export function planOvens(task: PlanTask, watch: Watch): OvenAnswer {
  const ready = prepared(task);
  if (isSmall(ready)) return planSmall(ready, watch);
  const found = searched(ready, task.moves, { ...watch, progress: (share) => watch.progress(share / 2) });
  const proof = proofOf(ready, found.best, { ...watch, progress: (share) => watch.progress(0.5 + share / 2) });
  return concluded(ready, found, proof);
}
