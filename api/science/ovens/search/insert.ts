// Puts jobs into a plan one by one, the most urgent first, each where it costs least.
import type { Model } from '../model.ts';
import type { Sum } from '../timeline.ts';
import type { Plan } from './plan.ts';

/** Soonest due less what it needs, heavier ones first among those alike; what is never due by when it is ready. */
export function byUrgency(model: Model): number[] {
  const slack = (job: number) => model.due[job]! - model.least[job]!;
  const perMinute = (job: number) => model.weight[job]! / Math.max(1, model.least[job]!);
  return Array.from({ length: model.jobs }, (_, job) => job).sort(
    (a, b) => slack(a) - slack(b) || perMinute(b) - perMinute(a) || model.ready[a]! - model.ready[b]! || a - b,
  );
}

const better = (a: Sum, b: Sum): boolean =>
  a.figure !== b.figure ? a.figure < b.figure : a.guide !== b.guide ? a.guide < b.guide : a.hours < b.hours;

type Place = { oven: number; slot: number } | { oven: number; at: number };

function drafted(plan: Plan, job: number, place: Place): void {
  const { draft, pool } = plan;
  plan.begin();
  const made = 'slot' in place ? pool.changed(place.slot, -1, job) : pool.take();
  if ('at' in place) pool.add(made, job);
  plan.ovenOf[made] = place.oven;
  draft.made.push(made);
  if ('slot' in place) {
    draft.dropped.push(place.slot);
    draft.replace(place.oven, place.slot, made);
  } else draft.insert(place.oven, place.at, made);
}

export function insertJobs(plan: Plan, jobs: readonly number[]): void {
  const { model, pool, timeline, draft } = plan;
  for (const job of jobs) {
    let best: { sum: Sum; place: Place } | null = null;
    for (let oven = 0; oven < model.ovens.length; oven += 1) {
      if (((model.allowed[job]! >> oven) & 1) === 0) continue;
      const { slots, length } = timeline.tracks[oven]!;
      const places: Place[] = Array.from({ length: length + 1 }, (_, at) => ({ oven, at }));
      for (let i = 0; i < length; i += 1) {
        if (pool.bears(slots[i]!, job, -1, model.ovens[oven]!.area)) places.push({ oven, slot: slots[i]! });
      }
      for (const place of places) {
        drafted(plan, job, place);
        const sum = { ...draft.value() };
        draft.reject();
        if (best === null || better(sum, best.sum)) best = { sum, place };
      }
    }
    if (best === null) throw new Error(`no oven for ${model.id[job]}`);
    drafted(plan, job, best.place);
    plan.accept();
  }
}
