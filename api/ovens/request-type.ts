// Where a drying request is: its loads, and its state in the bench's own words, from the request and its runs.
import { builder } from '../builder.ts';
import type { Context } from '../context.ts';
import type { DryingRequest, DryingRunState } from '../database/generated/sqlite/client.ts';
import { RequestRef } from '../drying/refs.ts';
import { DryingLoadRef } from './refs.ts';

const stages = {
  WAITING: { description: 'It waits, and no run is planned for it.' },
  PLANNED: { description: 'Its runs are planned.' },
  IN_OVEN: { description: 'Some of it is in an oven.' },
  COOLING: { description: 'Out of the oven: it cools, or results are wanted.' },
  DRIED: { description: 'It was dried.' },
  WITHDRAWN: { description: 'It was withdrawn, or nothing was left to dry.' },
};

type Stage = keyof typeof stages;

const StageEnum = builder.enumType('DryingStage', {
  description: 'Where a drying request is.',
  values: stages,
});

/** What is furthest on the way speaks for all of it: somebody has to see to that next. */
export function stageOf(state: DryingRequest['state'], runs: readonly DryingRunState[]): Stage {
  if (state !== 'WAITING') return state;
  if (runs.includes('IN_OVEN')) return 'IN_OVEN';
  if (runs.includes('COOLING') || runs.includes('COOLED')) return 'COOLING';
  return runs.includes('PLANNED') ? 'PLANNED' : 'WAITING';
}

async function stage({ id, state }: DryingRequest, { load }: Context): Promise<Stage> {
  if (state !== 'WAITING') return state;
  const loads = await load.loadsOfRequest.load(id);
  const runs = await Promise.all(loads.flatMap(({ runId }) => (runId ? [load.dryingRun.load(runId)] : [])));
  return stageOf(
    state,
    runs.flatMap((run) => (run ? [run.state] : [])),
  );
}

builder.objectFields(RequestRef, (t) => ({
  stage: t.field({
    type: StageEnum,
    description: 'Where it is: waiting, planned, in the oven, cooling, dried or withdrawn.',
    resolve: (request, _, context) => stage(request, context),
  }),
  loads: t.field({
    type: [DryingLoadRef],
    description: 'Its loads, each with its run.',
    resolve: ({ id }, _, { load }) => load.loadsOfRequest.load(id),
  }),
}));
