// A drying run as GraphQL shows it.
import { builder } from '../builder.ts';
import { there } from '../stock/schema.ts';
import { coolMinutes } from './cooling.ts';
import { DryingLoadRef, DryingRunRef, OvenRef } from './refs.ts';
import { doorsOf } from './run-rows.ts';
import { endOf, minutesLate, startOf, stepOfRun } from './run-view.ts';
import { OvenStepRef } from './step-type.ts';

export const RunStateEnum = builder.enumType('DryingRunState', {
  description: 'How far a run is.',
  values: {
    PLANNED: { description: 'It is planned and has not begun.' },
    IN_OVEN: { description: 'It is in the oven.' },
    COOLING: { description: 'It is out of the oven and cools.' },
    COOLED: { description: 'It has cooled; results are wanted.' },
    FINISHED: { description: 'Its results are on the timelines.' },
    INTERRUPTED: { description: 'It was interrupted; what it had reached is on the timelines.' },
  },
});

builder.node(DryingRunRef, {
  name: 'DryingRun',
  description: 'One batch in one oven: planned, then what really happened.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.dryingRun.load(id),
  fields: (t) => ({
    oven: t.field({
      type: OvenRef,
      description: 'The oven.',
      resolve: async ({ ovenId }, _, { load }) => there(await load.oven.load(ovenId), 'oven'),
    }),
    state: t.field({ type: RunStateEnum, description: 'How far it is.', resolve: ({ state }) => state }),
    isPinned: t.exposeBoolean('isPinned', { description: 'It was fixed in its place by hand.' }),
    start: t.field({
      type: 'DateTime',
      description: 'When it went in, else when it is to.',
      resolve: (run) => startOf(run),
    }),
    end: t.field({
      type: 'DateTime',
      description: 'When it came out, else when it is expected out.',
      resolve: (run) => endOf(run),
    }),
    setAt: t.field({
      type: 'DateTime',
      description: 'When the oven is to be set, so that it stands at its temperature at the planned start.',
      resolve: ({ plannedStart, setupMinutes }) => new Date(plannedStart.getTime() - setupMinutes * 60_000),
    }),
    plannedStart: t.expose('plannedStart', { type: 'DateTime', description: 'When it is planned to go in.' }),
    plannedEnd: t.expose('plannedEnd', { type: 'DateTime', description: 'When it is planned to come out.' }),
    temperatureC: t.exposeFloat('temperatureC', { description: 'Temperature of the oven, °C.' }),
    setupMinutes: t.exposeInt('setupMinutes', { description: 'To heat up or cool down before it, min.' }),
    leastMinutes: t.exposeInt('leastMinutes', {
      description: 'It needs at least so long, heat-up of the load included, min.',
    }),
    mostMinutes: t.exposeInt('mostMinutes', { description: 'It may stay at most so long, min.' }),
    isVacuum: t.exposeBoolean('isVacuum', { description: 'Under vacuum.' }),
    reason: t.exposeString('reason', { description: 'Why it stands where it stands, in a sentence.' }),
    startedAt: t.expose('startedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it went in; null before.',
    }),
    dueOutAt: t.expose('dueOutAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it is expected out, once it is in; null before.',
    }),
    doorAt: t.field({
      type: ['DateTime'],
      description: 'When the door was opened in between.',
      resolve: ({ doorAt }) => doorsOf(doorAt),
    }),
    outAt: t.expose('outAt', { type: 'DateTime', nullable: true, description: 'When it came out; null before.' }),
    coolMinutes: t.int({
      description: 'So long its loads cool after the oven, min.',
      resolve: ({ id }, _, context) => coolMinutes(context, id),
    }),
    coolUntil: t.field({
      type: 'DateTime',
      nullable: true,
      description: 'When it is expected to be cool; null before it is out.',
      resolve: async ({ id, outAt }, _, context) =>
        outAt && new Date(outAt.getTime() + (await coolMinutes(context, id)) * 60_000),
    }),
    cooledAt: t.expose('cooledAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it had cooled; null before.',
    }),
    endedAt: t.expose('endedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was finished or interrupted; null before.',
    }),
    why: t.exposeString('why', { nullable: true, description: 'Why it was interrupted; null when nobody said.' }),
    minutesLate: t.int({
      description: 'How much later than planned it began, or would begin now, min; 0 when it is not late.',
      resolve: (run, _, { now }) => minutesLate(run, now()),
    }),
    areaCm2: t.float({
      description: 'Shelf area that its loads take, cm².',
      resolve: async ({ id }, _, { load }) =>
        (await load.loadsOfRun.load(id)).reduce((sum, { areaCm2 }) => sum + areaCm2, 0),
    }),
    nextStep: t.field({
      type: OvenStepRef,
      nullable: true,
      description: 'What is to be done next with it; null when nothing is.',
      complexity: 5,
      resolve: (run, _, context) => stepOfRun(context, run),
    }),
    loads: t.field({
      type: [DryingLoadRef],
      description: 'What is in it.',
      resolve: ({ id }, _, { load }) => load.loadsOfRun.load(id),
    }),
  }),
});
