// A load as a job for the planner, one to be placed or one of a run that was fixed. Pure.
import type { Job } from '../science/ovens/problem.ts';
import type { Facts, LoadRow, RunRow } from './facts.ts';
import { familyOf } from './rules.ts';
import { driesOf } from './dries.ts';
import type { Wanted } from './shares.ts';
import { minuteMs } from './minute.ts';

export function jobOf(name: string, wanted: Wanted, originMs: number): Job {
  const { request, dries, minutes, areaCm2, family, ovens } = wanted;
  const due = request.wantedBy
    ? Math.floor((request.wantedBy.getTime() - originMs) / minuteMs) - dries.coolDownMinutes
    : null;
  const ready = request.readyAt ? Math.ceil((request.readyAt.getTime() - originMs) / minuteMs) : 0;
  return {
    id: name,
    area: areaCm2,
    minutes,
    temperatureC: dries.temperatureC,
    readyAt: Math.max(0, ready),
    ...(due === null ? {} : { dueAt: due }),
    weight: request.weight,
    family,
    ovens: ovens.map((oven) => oven.name),
  };
}

/** A load of a run that was fixed: it is where it is, whatever it would need. */
export function fixedJob(name: string, load: LoadRow, run: RunRow, facts: Facts, originMs: number): Job {
  const { request } = load;
  const { sorbent } = request.container.lot;
  const dries = driesOf(request, facts.materialOf(request.container));
  const cool = typeof dries === 'string' ? 0 : dries.coolDownMinutes;
  const due = request.wantedBy ? Math.floor((request.wantedBy.getTime() - originMs) / minuteMs) - cool : null;
  return {
    id: name,
    area: load.areaCm2,
    minutes: [run.leastMinutes, Math.max(run.leastMinutes, run.mostMinutes)],
    temperatureC: [run.temperatureC, run.temperatureC],
    readyAt: 0,
    ...(due === null ? {} : { dueAt: due }),
    weight: request.weight,
    family: familyOf({ kind: request.container.kind, ...sorbent }),
  };
}
