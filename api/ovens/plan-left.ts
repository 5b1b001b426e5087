// What a plan has no place for, and why.
import { isUnplaced } from '../science/ovens/schedule.ts';
import type { Laid } from './plan-laid.ts';

export interface PlanLeftOut {
  requestId: string;
  label: string;
  why: string;
}

export const leftOutOf = ({ posed: of, answer }: Laid): PlanLeftOut[] => [
  ...of.leftOut.map(({ request, why }) => ({ requestId: request.id, label: request.container.label, why })),
  ...(answer?.batches ?? []).filter(isUnplaced).flatMap(({ jobs }) =>
    jobs.flatMap((name) => {
      const load = of.wanted.get(name);
      const why = 'no hours in which somebody is there are left for it';
      return load ? [{ requestId: load.request.id, label: load.request.container.label, why }] : [];
    }),
  ),
];
