// All batches that a few jobs could form, as sets of bits: which fit which oven, and what each needs.
import type { Model } from '../model.ts';

export interface Sets {
  readonly area: Float64Array;
  readonly least: Int32Array;
  readonly most: Int32Array;
  readonly ready: Int32Array;
  readonly lowest: Int32Array;
  readonly highest: Int32Array;
  readonly allowed: Int32Array;
  /** May these jobs share a batch, area aside? */
  readonly together: Uint8Array;
}

export function setsOf(model: Model): Sets {
  const size = 1 << model.jobs;
  const sets = {
    area: new Float64Array(size),
    least: new Int32Array(size),
    most: new Int32Array(size).fill(0x7fffffff),
    ready: new Int32Array(size).fill(-0x7fffffff),
    lowest: new Int32Array(size),
    highest: new Int32Array(size).fill(0x7fffffff),
    allowed: new Int32Array(size).fill(-1),
    together: new Uint8Array(size).fill(1),
  };
  for (let set = 1; set < size; set += 1) {
    const job = 31 - Math.clz32(set);
    const rest = set ^ (1 << job);
    sets.area[set] = sets.area[rest]! + model.area[job]!;
    sets.least[set] = Math.max(sets.least[rest]!, model.least[job]!);
    sets.most[set] = Math.min(sets.most[rest]!, model.most[job]!);
    sets.ready[set] = Math.max(sets.ready[rest]!, model.ready[job]!);
    sets.lowest[set] = Math.max(sets.lowest[rest]!, model.lowest[job]!);
    sets.highest[set] = Math.min(sets.highest[rest]!, model.highest[job]!);
    sets.allowed[set] = sets.allowed[rest]! & model.allowed[job]!;
    let isTogether = sets.together[rest]!;
    for (let other = 0; other < job && isTogether === 1; other += 1) {
      if ((rest >> other) & 1 && model.apart[other * model.jobs + job] === 1) isTogether = 0;
    }
    sets.together[set] = isTogether;
  }
  return sets;
}

/** The sets that one oven takes as a batch, smallest numbers first. */
export function batchesOf(model: Model, sets: Sets, oven: number): Int32Array {
  const found: number[] = [];
  for (let set = 1; set < sets.together.length; set += 1) {
    if (
      sets.together[set] === 1 &&
      ((sets.allowed[set]! >> oven) & 1) === 1 &&
      sets.area[set]! <= model.ovens[oven]!.area + 1e-9
    ) {
      found.push(set);
    }
  }
  return Int32Array.from(found);
}
