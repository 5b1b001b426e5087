// What became of a drying request, as GraphQL names it, and the requests of a container.
import { builder } from '../builder.ts';
import { ContainerRef } from '../stock/schema.ts';
import { RequestRef } from './refs.ts';

export const StateEnum = builder.enumType('DryingRequestState', {
  description: 'What became of a drying request.',
  values: {
    WAITING: { description: 'It waits.' },
    DRIED: { description: 'A drying was recorded.' },
    WITHDRAWN: { description: 'It was withdrawn, or nothing was left to dry.' },
  },
});

builder.interfaceField(ContainerRef, 'dryingRequests', (t) =>
  t.field({
    type: [RequestRef],
    description: 'What was asked to be dried of it, oldest first, ended ones too.',
    resolve: ({ id }, _, { load }) => load.dryingRequests.load(id),
  }),
);
