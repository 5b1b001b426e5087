// The best way to do each set of jobs in one oven: labels over subsets, each a sequence of batches, those left out that
// another can follow to no worse an end whatever comes.
import { type Clock, clockOf, place, unwind, wind } from '../clock.ts';
import type { Model } from '../model.ts';
import type { Objective } from '../objective.ts';
import { batchesOf, type Sets } from './batches.ts';

export interface Label {
  readonly time: number;
  readonly state: number;
  readonly gap: number;
  readonly figure: number;
  readonly hours: number;
  readonly loads: number;
  readonly batch: number;
  readonly wait: number;
  readonly before: Label | null;
}

/** One oven's best for a set: the figures with all that is fixed in the oven, and the last batch. */
export interface OvenBest {
  readonly figure: number;
  readonly hours: number;
  readonly loads: number;
  readonly last: Label | null;
}

/** No plan worse than this is of use. */
export interface Ceiling {
  readonly figure: number;
  readonly hours: number;
}

export interface LabelTask {
  readonly model: Model;
  readonly objective: Objective;
  readonly sets: Sets;
  readonly ceiling: Ceiling;
  /** What the jobs outside a set cost at least, wherever they go. */
  readonly rest: (set: number) => number;
  readonly stopped: () => boolean;
}

const mostWaits = 64;
const setsAtOnce = 64;

const isWorse = (a: OvenBest, b: OvenBest): boolean =>
  a.figure !== b.figure ? a.figure > b.figure : a.hours !== b.hours ? a.hours > b.hours : a.loads > b.loads;

/** The best of each set in one oven, by the set's bits; null where it cannot be, and null for all when it was stopped. */
export function ovenBests(task: LabelTask, oven: number): (OvenBest | null)[] | null {
  const { model, objective, sets, ceiling } = task;
  const size = 1 << model.jobs;
  const batches = batchesOf(model, sets, oven);
  const labels: (Label[] | null)[] = Array.from({ length: size }, () => null);
  const bests: (OvenBest | null)[] = Array.from({ length: size }, () => null);
  const clock = clockOf(model, oven);
  const { pins } = model.ovens[oven]!;
  wind(clock, model.ovens[oven]!);
  const figure = objective.isLargest ? -Infinity : 0;
  const { time, state } = clock;
  labels[0] = [{ time, state, gap: 0, figure, hours: 0, loads: 0, batch: 0, wait: 0, before: null }];
  for (let set = 0; set < size; set += 1) {
    if (set % setsAtOnce === 0 && task.stopped()) return null;
    const own = labels[set];
    if (!own) continue;
    bests[set] = bestOf(task, clock, oven, own);
    for (let i = 0; i < batches.length; i += 1) {
      const batch = batches[i]!;
      if ((batch & set) !== 0) continue;
      const both = set | batch;
      const rest = task.rest(both);
      for (const label of own) {
        for (let wait = 0; wait < mostWaits; wait += 1) {
          const next = after(task, clock, oven, label, batch, wait);
          if (next === null) break;
          const whole = objective.isLargest ? Math.max(next.figure, rest) : next.figure + rest;
          const isHopeless = whole > ceiling.figure || (whole === ceiling.figure && next.hours > ceiling.hours);
          if (!isHopeless) join((labels[both] ??= []), next, objective);
          // A later stay can only be shorter, or find the oven hotter after what is fixed.
          const isShortest = clock.end - clock.start === sets.least[batch] && next.gap === pins.length;
          if (!objective.countsHours || isShortest) break;
        }
      }
    }
    if (set !== 0) labels[set] = null;
  }
  return bests;
}

function stand(clock: Clock, model: Model, oven: number, label: Label): void {
  wind(clock, model.ovens[oven]!);
  clock.time = label.time;
  clock.state = label.state;
  clock.gap = label.gap;
  clock.empty = label.before === null;
}

function after(task: LabelTask, clock: Clock, oven: number, label: Label, batch: number, wait: number): Label | null {
  const { model, objective, sets } = task;
  stand(clock, model, oven, label);
  const [lowest, highest] = [sets.lowest[batch]!, sets.highest[batch]!];
  const [least, most] = [sets.least[batch]!, sets.most[batch]!];
  if (!place(clock, model.states.count, lowest, highest, least, most, sets.ready[batch]!, wait)) return null;
  const setup = clock.setup + clock.pinnedSetup;
  const minutes = clock.end - clock.start + clock.pinnedMinutes;
  let { figure } = label;
  if (!objective.isLargest) {
    figure +=
      objective.perBatchMinute * minutes +
      objective.perSetupMinute * setup +
      objective.perSetupCost * (clock.setupCost + clock.pinnedCost);
  }
  for (let left = batch; left !== 0; left &= left - 1) {
    const job = 31 - Math.clz32(left & -left);
    const own = objective.ofJob(clock.end, model.due[job]!, model.weight[job]!);
    figure = objective.isLargest ? Math.max(figure, own) : figure + own;
  }
  return {
    time: clock.time,
    state: clock.state,
    gap: clock.gap,
    figure,
    hours: label.hours + minutes + setup,
    loads: label.loads + 1,
    batch,
    wait,
    before: label,
  };
}

function bestOf(task: LabelTask, clock: Clock, oven: number, labels: readonly Label[]): OvenBest | null {
  const { objective, model } = task;
  let best: OvenBest | null = null;
  for (const label of labels) {
    stand(clock, model, oven, label);
    unwind(clock);
    const figure = objective.isLargest
      ? label.figure
      : label.figure +
        objective.perBatchMinute * clock.pinnedMinutes +
        objective.perSetupMinute * clock.pinnedSetup +
        objective.perSetupCost * clock.pinnedCost;
    const hours = label.hours + clock.pinnedMinutes + clock.pinnedSetup;
    const whole = { figure, hours, loads: label.loads, last: label.before === null ? null : label };
    if (best === null || isWorse(best, whole)) best = whole;
  }
  return best;
}

/** Puts a label beside the others of its set, unless one of them is as good, and drops those that it makes useless. */
function join(labels: Label[], label: Label, objective: Objective): void {
  let kept = 0;
  for (let i = 0; i < labels.length; i += 1) {
    if (covers(labels[i]!, label, objective)) return;
  }
  for (let i = 0; i < labels.length; i += 1) {
    if (!covers(label, labels[i]!, objective)) labels[kept++] = labels[i]!;
  }
  labels.length = kept;
  labels.push(label);
}

/**
 * Can whatever follows `b` follow `a` too, and come to no more? Only where both stand at the same state: an oven that is
 * sooner free but has further to go may lose, since it does not use the hours in which it waits to go there.
 */
function covers(a: Label, b: Label, objective: Objective): boolean {
  if (a.gap !== b.gap || a.state !== b.state || a.time > b.time) return false;
  if (objective.isLargest) return a.figure <= b.figure;
  if (a.figure !== b.figure) return a.figure < b.figure;
  return a.hours !== b.hours ? a.hours < b.hours : a.loads <= b.loads;
}
