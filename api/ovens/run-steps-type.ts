// Mutations on runs: fixed, and then one click for each step by the oven.
import { builder } from '../builder.ts';
import { addMutation } from '../mutation.ts';
import { fresh, there } from '../stock/schema.ts';
import { backSaid, stepTakenBack } from './back.ts';
import { finishSaid, runFinished } from './finish.ts';
import { interruptSaid, runInterrupted } from './interrupt.ts';
import { batchPinned, batchUnpinned, pinSaid, unpinSaid } from './pin.ts';
import { DryingRunRef, OvenPlanRef } from './refs.ts';
import { replannedAfter } from './replan.ts';
import { currentPlan } from './run-view.ts';
import * as steps from './steps.ts';

interface Ran {
  runId: string;
  notes: string[];
}

const RanRef = builder.objectRef<Ran>('DryingRunKept').implement({
  description: 'A run was fixed, moved on or taken back.',
  fields: (t) => ({
    run: t.field({
      type: DryingRunRef,
      description: 'The run as it now stands.',
      resolve: async ({ runId }, _, { load }) => there(await load.dryingRun.load(runId), 'drying run'),
    }),
    notes: t.exposeStringList('notes', { description: 'What disagrees but was kept, and what follows from it.' }),
    plan: t.field({
      type: OvenPlanRef,
      nullable: true,
      description: 'The plan that counts, made anew where the act moved something; null before the first.',
      resolve: (_, __, context) => currentPlan(context),
    }),
  }),
});

type Fields = Parameters<Parameters<typeof builder.inputType>[1]['fields']>[0];
const runField = (t: Fields) => ({ run: t.id({ required: true, description: 'Which run.' }) });
const atField = (t: Fields, text: string) => ({
  at: t.field({ type: 'DateTime', description: `${text}; now when not given.` }),
});

addMutation('pinBatch', {
  description: 'Fixes a run that has not begun in an oven at a time; the others are planned around it.',
  check: pinSaid,
  success: RanRef,
  run: (input, context) => fresh(context, replannedAfter(context, batchPinned(context, input), 'a run was fixed')),
  fields: (t) => ({
    ...runField(t),
    oven: t.id({ description: 'In which oven; the one it is in when not given.' }),
    start: t.field({ type: 'DateTime', description: 'When it goes in; as planned when not given.' }),
  }),
});

addMutation('unpinBatch', {
  description: 'Lets a fixed run go: the next plan may move it.',
  check: unpinSaid,
  success: RanRef,
  run: (input, context) => fresh(context, batchUnpinned(context, input)),
  fields: runField,
});

addMutation('startRun', {
  description:
    'The load went in. Solvent-wet plates, sorbent that touched solvent or sample, and ovens too hot for what is in them are refused. A late start plans the rest anew.',
  check: steps.startSaid,
  success: RanRef,
  run: (input, context) =>
    fresh(context, replannedAfter(context, steps.runStarted(context, input), 'a run began at another time')),
  fields: (t) => ({
    ...runField(t),
    ...atField(t, 'When'),
    temperatureC: t.float({ description: 'What the oven was set to, °C; as planned when not given.' }),
  }),
});

addMutation('openOvenDoor', {
  description: 'The door was opened while a run was in: so much later it is done.',
  check: steps.stepSaid,
  success: RanRef,
  run: (input, context) =>
    fresh(context, replannedAfter(context, steps.doorOpened(context, input), 'the door was opened')),
  fields: (t) => ({ ...runField(t), ...atField(t, 'When') }),
});

addMutation('takeRunOut', {
  description: 'The load came out of the oven, and cools.',
  check: steps.stepSaid,
  success: RanRef,
  run: (input, context) =>
    fresh(context, replannedAfter(context, steps.takenOut(context, input), 'a run came out at another time')),
  fields: (t) => ({ ...runField(t), ...atField(t, 'When') }),
});

addMutation('recordRunCooled', {
  description: 'The load has cooled.',
  check: steps.stepSaid,
  success: RanRef,
  run: (input, context) => fresh(context, steps.runCooled(context, input)),
  fields: (t) => ({ ...runField(t), ...atField(t, 'When') }),
});

const ResultInput = builder.inputType('DryingResultInput', {
  description: 'What one load came to. Loads without a result are taken from the model.',
  fields: (t) => ({
    load: t.id({ required: true, description: 'Which load.' }),
    waterFraction: t.float({ description: 'Water measured, kg per kg dry.' }),
    netGrams: t.float({
      description: 'Weighed after cooling without the tray, g; the water follows from the dry grams.',
    }),
    vessel: t.string({
      description: 'Of some of a container: the listed vessel it was put into; it stays in its tray when not given.',
    }),
    room: t.string({
      description: 'Of some of a container: the room or desiccator it stands in; the same when not given.',
    }),
    note: t.string({ description: 'A note beside it.' }),
  }),
});

addMutation('finishRun', {
  description:
    'Files the drying onto the timeline of each container, with the water weighed or by the model. Some of a container goes into one of its own. Requests that are whole are dried.',
  check: finishSaid,
  success: RanRef,
  run: (input, context) => fresh(context, runFinished(context, input)),
  fields: (t) => ({
    ...runField(t),
    ...atField(t, 'When; also when it came out, where nobody said'),
    results: t.field({ type: [ResultInput], description: 'What was weighed; of the other loads the model speaks.' }),
  }),
});

addMutation('interruptRun', {
  description:
    'The power failed, or the load had to come out: the water reached so far goes onto each timeline, and what was in it waits again.',
  check: interruptSaid,
  success: RanRef,
  run: (input, context) =>
    fresh(context, replannedAfter(context, runInterrupted(context, input), 'a run was interrupted')),
  fields: (t) => ({
    ...runField(t),
    ...atField(t, 'When the heat ended'),
    why: t.string({ description: 'Why, such as `power failed`.' }),
  }),
});

addMutation('takeRunStepBack', {
  description: 'Takes back the last thing recorded of a run: its start, its coming out, its results with their events.',
  check: backSaid,
  success: RanRef,
  run: (input, context) => fresh(context, stepTakenBack(context, input)),
  fields: runField,
});
