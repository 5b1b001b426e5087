// Containers that share a factor known only to them (their start, their closure's own factor) are reckoned together.
import type { Expected } from './expect.ts';
import { isLocal } from './factors.ts';

export interface Family {
  /** Factors that no other family has. */
  readonly locals: readonly string[];
  /** Those of its weighings that are shared by all. */
  readonly shared: readonly string[];
  readonly rows: readonly Expected[];
}

/** Weighings that teach, grouped; families and names in an order that does not depend on the order of the weighings. */
export function familiesOf(all: readonly Expected[]): Family[] {
  const rows = all.filter(({ unusable }) => unusable === null);
  const parent = new Map<string, string>();
  const root = (name: string): string => {
    let at = name;
    for (let up = parent.get(at); up !== undefined && up !== at; up = parent.get(at)) at = up;
    return at;
  };
  const firstLocal = new Map<Expected, string>();
  for (const row of rows) {
    for (const name of row.slopes.keys()) {
      if (!isLocal(name)) continue;
      if (!parent.has(name)) parent.set(name, name);
      const first = firstLocal.get(row);
      if (first === undefined) firstLocal.set(row, name);
      else parent.set(root(name), root(first));
    }
  }
  const groups = new Map<string, Expected[]>();
  for (const row of rows) {
    const first = firstLocal.get(row);
    const name = first === undefined ? `alone:${row.weighing.container}` : root(first);
    const group = groups.get(name);
    if (group) group.push(row);
    else groups.set(name, [row]);
  }
  return [...groups.values()].map((group) => {
    const names = [...new Set(group.flatMap((row) => [...row.slopes.keys()]))].sort();
    return { locals: names.filter(isLocal), shared: names.filter((name) => !isLocal(name)), rows: group };
  });
}

/** What is held of every factor before anything is learned, one sigma. */
export function priorsOf(all: readonly Expected[]): Map<string, number> {
  const priors = new Map<string, number>();
  for (const { slopes } of all) for (const [name, { sd }] of slopes) if (!priors.has(name)) priors.set(name, sd);
  return priors;
}
