// The ways in which a plan is changed at random: a job to another batch, jobs or batches swapped, batches moved, merged, split.
import type { Dice } from '../dice.ts';
import type { Plan } from './plan.ts';

/** Tries to draft a change; false when what the dice picked may not be. */
export type Move = (plan: Plan, dice: Dice) => boolean;

const anySlot = (plan: Plan, dice: Dice): number => plan.slotOf[dice.below(plan.model.jobs)]!;

/** An oven that takes the batch, the one it is in as likely as all others together. */
function someOven(plan: Plan, dice: Dice, slot: number, usual: number): number {
  const oven = dice.below(2) === 0 ? usual : dice.below(plan.model.ovens.length);
  return plan.pool.fits(slot, oven) ? oven : -1;
}

/** A place in the sequence, often a near one. */
function somePlace(dice: Dice, length: number, near: number): number {
  if (near < 0 || dice.below(2) === 0) return dice.below(length + 1);
  return Math.max(0, Math.min(length, near + dice.below(7) - 3));
}

function replaced(plan: Plan, slot: number, without: number, withJob: number): void {
  const { draft, pool } = plan;
  const oven = plan.ovenOf[slot]!;
  draft.dropped.push(slot);
  if (withJob < 0 && pool.count[slot] === 1) {
    draft.remove(oven, slot);
    return;
  }
  const made = pool.changed(slot, without, withJob);
  draft.made.push(made);
  plan.ovenOf[made] = oven;
  draft.replace(oven, slot, made);
}

const jobToBatch: Move = (plan, dice) => {
  const job = dice.below(plan.model.jobs);
  const to = anySlot(plan, dice);
  const from = plan.slotOf[job]!;
  if (to === from) return false;
  const oven = plan.ovenOf[to]!;
  if (((plan.model.allowed[job]! >> oven) & 1) === 0) return false;
  if (!plan.pool.bears(to, job, -1, plan.model.ovens[oven]!.area)) return false;
  replaced(plan, from, job, -1);
  replaced(plan, to, -1, job);
  return true;
};

const jobAlone: Move = (plan, dice) => {
  const job = dice.below(plan.model.jobs);
  const from = plan.slotOf[job]!;
  if (plan.pool.count[from]! < 2) return false;
  const alone = plan.pool.take();
  plan.draft.made.push(alone);
  plan.pool.add(alone, job);
  const home = plan.ovenOf[from]!;
  const oven = someOven(plan, dice, alone, home);
  if (oven < 0) return false;
  replaced(plan, from, job, -1);
  plan.ovenOf[alone] = oven;
  plan.draft.insert(oven, somePlace(dice, plan.draft.length(oven), -1), alone);
  return true;
};

const swapJobs: Move = (plan, dice) => {
  const { model, pool } = plan;
  const [a, b] = [dice.below(model.jobs), dice.below(model.jobs)];
  const [inA, inB] = [plan.slotOf[a]!, plan.slotOf[b]!];
  if (inA === inB) return false;
  const [ovenA, ovenB] = [plan.ovenOf[inA]!, plan.ovenOf[inB]!];
  if (((model.allowed[a]! >> ovenB) & 1) === 0 || ((model.allowed[b]! >> ovenA) & 1) === 0) return false;
  if (!pool.bears(inA, b, a, model.ovens[ovenA]!.area) || !pool.bears(inB, a, b, model.ovens[ovenB]!.area))
    return false;
  replaced(plan, inA, a, b);
  replaced(plan, inB, b, a);
  return true;
};

const moveBatch: Move = (plan, dice) => {
  const slot = anySlot(plan, dice);
  const home = plan.ovenOf[slot]!;
  const oven = someOven(plan, dice, slot, home);
  if (oven < 0) return false;
  const at = plan.draft.at(home, slot);
  plan.draft.remove(home, slot);
  const to = somePlace(dice, plan.draft.length(oven), oven === home ? at : -1);
  if (oven === home && to === at) return false;
  plan.draft.insert(oven, to, slot);
  plan.moved = slot;
  plan.movedTo = oven;
  return true;
};

const swapBatches: Move = (plan, dice) => {
  const [a, b] = [anySlot(plan, dice), anySlot(plan, dice)];
  const [ovenA, ovenB] = [plan.ovenOf[a]!, plan.ovenOf[b]!];
  if (a === b || !plan.pool.fits(a, ovenB) || !plan.pool.fits(b, ovenA)) return false;
  const [atA, atB] = [plan.draft.at(ovenA, a), plan.draft.at(ovenB, b)];
  plan.draft.set(ovenA, atA, b);
  plan.draft.set(ovenB, atB, a);
  plan.moved = a;
  plan.movedTo = ovenB;
  plan.alsoMoved = b;
  plan.alsoMovedTo = ovenA;
  return true;
};

const merge: Move = (plan, dice) => {
  const { pool, model, draft } = plan;
  const [from, to] = [anySlot(plan, dice), anySlot(plan, dice)];
  if (from === to) return false;
  const oven = plan.ovenOf[to]!;
  if (((pool.allowed[from]! >> oven) & 1) === 0) return false;
  const made = pool.changed(to, -1, -1);
  draft.made.push(made);
  for (let i = 0; i < pool.count[from]!; i += 1) {
    const job = pool.job(from, i);
    if (!pool.bears(made, job, -1, model.ovens[oven]!.area)) return false;
    pool.add(made, job);
  }
  plan.ovenOf[made] = oven;
  draft.dropped.push(from, to);
  draft.remove(plan.ovenOf[from]!, from);
  draft.replace(oven, to, made);
  return true;
};

const split: Move = (plan, dice) => {
  const { pool, draft } = plan;
  const slot = anySlot(plan, dice);
  if (pool.count[slot]! < 2) return false;
  const home = plan.ovenOf[slot]!;
  const [stays, goes] = [pool.take(pool.wait[slot]), pool.take()];
  draft.made.push(stays, goes);
  for (let i = 0; i < pool.count[slot]!; i += 1) pool.add(dice.below(2) === 0 ? stays : goes, pool.job(slot, i));
  if (pool.count[stays] === 0 || pool.count[goes] === 0) return false;
  const oven = someOven(plan, dice, goes, home);
  if (oven < 0) return false;
  draft.dropped.push(slot);
  plan.ovenOf[stays] = home;
  plan.ovenOf[goes] = oven;
  draft.replace(home, slot, stays);
  draft.insert(oven, somePlace(dice, draft.length(oven), -1), goes);
  return true;
};

/** Another opening than the first that is possible, or the start that the plan before gave it. */
const waits: Move = (plan, dice) => {
  const slot = anySlot(plan, dice);
  const lowest = plan.timeline.kept ? -1 : 0;
  const wait = lowest + dice.below(3 - lowest);
  if (wait === plan.pool.wait[slot]) return false;
  const made = plan.pool.changed(slot, -1, -1);
  plan.pool.wait[made] = wait;
  plan.ovenOf[made] = plan.ovenOf[slot]!;
  plan.draft.made.push(made);
  plan.draft.dropped.push(slot);
  plan.draft.replace(plan.ovenOf[slot]!, slot, made);
  return true;
};

/** The moves that make sense, each as often as it stands here. */
export function movesOf(canShare: boolean, canWait: boolean): Move[] {
  const order = [moveBatch, moveBatch, swapBatches];
  const sharing = [jobToBatch, jobToBatch, jobToBatch, swapJobs, swapJobs, jobAlone, merge, split];
  return [...order, ...(canShare ? sharing : []), ...(canWait ? [waits] : [])];
}
