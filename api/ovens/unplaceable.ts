// Jobs that no oven and no hours can take, with the reason. Pure.
import { homeless, modelOf, never } from '../science/ovens/model.ts';
import { earliestEnds } from '../science/ovens/alone.ts';
import type { OvenProblem } from '../science/ovens/problem.ts';

export function unplaceable(problem: OvenProblem): Map<string, string> {
  const model = modelOf(problem);
  const out = new Map(homeless(model).map((id) => [id, 'it fits into no oven by area and temperature']));
  if (out.size === model.jobs) return out;
  earliestEnds(model).forEach((end, job) => {
    const id = model.id[job];
    if (end >= never && id !== undefined && !out.has(id)) {
      out.set(id, 'no hours in which somebody is there are long enough to load, dry and unload it');
    }
  });
  return out;
}
