// The next thing to do at an oven as GraphQL shows it.
import { builder } from '../builder.ts';
import { globalId } from '../stock/service.ts';
import type { NextStep } from './next-step.ts';

const StepEnum = builder.enumType('OvenStepName', {
  description: 'What is to be done at an oven.',
  values: {
    SET_OVEN: { description: 'Set it to its temperature, so that it is hot in time.' },
    LOAD: { description: 'Put the load in.' },
    TAKE_OUT: { description: 'Take the load out, into a desiccator.' },
    COOLED: { description: 'It is cool: take it out of the desiccator.' },
    RESULTS: { description: 'Weigh it, or take the model’s figure.' },
  },
});

export const OvenStepRef = builder.objectRef<NextStep>('OvenStep').implement({
  description: 'The next thing to do at an oven.',
  fields: (t) => ({
    runId: t.id({
      description: 'The run it belongs to.',
      resolve: ({ runId }) => globalId('DryingRun', runId),
    }),
    what: t.field({ type: StepEnum, description: 'What.', resolve: ({ what }) => what }),
    at: t.expose('at', { type: 'DateTime', description: 'When.' }),
    sentence: t.exposeString('sentence', { description: 'The same in one sentence, on the lab’s clock.' }),
  }),
});
