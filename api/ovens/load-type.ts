// A load as GraphQL shows it: one request's share in one run.
import { builder } from '../builder.ts';
import { RequestRef } from '../drying/refs.ts';
import { ContainerRef, there } from '../stock/schema.ts';
import { DryingLoadRef, DryingRunRef } from './refs.ts';
import { roomVapourPa } from './room-vapour.ts';
import { inOven, minutesIn, runOf } from './run-rows.ts';
import { endOf } from './run-view.ts';
import { waterAfter } from './tray.ts';

builder.node(DryingLoadRef, {
  name: 'DryingLoad',
  description: 'One request’s share in one run.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.dryingLoad.load(id),
  fields: (t) => ({
    request: t.field({
      type: RequestRef,
      description: 'The request that it is a share of.',
      resolve: async ({ requestId }, _, { load }) => there(await load.dryingRequest.load(requestId), 'drying request'),
    }),
    run: t.field({
      type: DryingRunRef,
      nullable: true,
      description: 'The run it goes with.',
      resolve: ({ runId }, _, { load }) => (runId ? load.dryingRun.load(runId) : null),
    }),
    container: t.field({
      type: ContainerRef,
      description:
        'What is dried: the container asked for; once done, the one of its own that it was poured into, where it was.',
      resolve: async ({ containerId, requestId }, _, { load }) => {
        const request = there(await load.dryingRequest.load(requestId), 'drying request');
        return there(await load.container.load(containerId ?? request.containerId), 'container');
      },
    }),
    part: t.exposeInt('part', { description: 'Which part of its request, from 1.' }),
    parts: t.exposeInt('parts', { description: 'In how many parts the request is dried.' }),
    dryGrams: t.exposeFloat('dryGrams', { nullable: true, description: 'Dry sorbent in it, g; null for plates.' }),
    plates: t.exposeInt('plates', { nullable: true, description: 'Plates in it; null for sorbent.' }),
    trays: t.exposeInt('trays', { description: 'Trays or racks, each on one shelf.' }),
    depthMm: t.exposeFloat('depthMm', { nullable: true, description: 'Depth of its trays, mm; null for plates.' }),
    areaCm2: t.exposeFloat('areaCm2', { description: 'Shelf area it takes, cm².' }),
    waterFraction: t.exposeFloat('waterFraction', {
      nullable: true,
      description:
        'Water it came out with, kg per kg dry; null until it is finished or interrupted, or where nothing is known.',
    }),
    isWeighed: t.exposeBoolean('isWeighed', { description: 'That water was measured; else the model says so.' }),
    forecastWaterFraction: t.float({
      nullable: true,
      description:
        'Water by the model when the run ends as planned, kg per kg dry; null where it knows nothing of the class.',
      complexity: 20,
      resolve: async ({ id, runId }, _, context) => {
        if (!runId) return null;
        const {
          database: { read },
          lab,
        } = context;
        const run = await runOf({ tx: read, labId: lab.id }, runId, 'run');
        const load = there(
          run.loads.find((one) => one.id === id),
          'load',
        );
        const planned = (run.plannedEnd.getTime() - run.plannedStart.getTime()) / 60_000;
        const minutes = run.startedAt ? minutesIn(run, endOf(run)) : planned;
        return waterAfter(inOven(run, load, await roomVapourPa(context, run.oven.roomId)), minutes);
      },
    }),
  }),
});
