// Requests in GraphQL: moved, withdrawn and put back.
import { addMutation } from '../mutation.ts';
import { RequestRef } from './refs.ts';
import { moveSaid, withdrawSaid } from './request-said.ts';
import { dryingMoved } from './request-moved.ts';
import { dryingRestored, dryingWithdrawn } from './request-withdrawn.ts';
import { requestOf } from './requested-type.ts';

addMutation('withdrawDrying', {
  description: 'Takes a request off the list.',
  check: withdrawSaid,
  success: RequestRef,
  run: (input, context) => requestOf(context, dryingWithdrawn(context, input)),
  fields: (t) => ({ id: t.id({ required: true, description: 'Which request.' }) }),
});

addMutation('restoreDrying', {
  description: 'Puts a withdrawn request back on the list, where it was.',
  check: withdrawSaid,
  success: RequestRef,
  run: (input, context) => requestOf(context, dryingRestored(context, input)),
  fields: (t) => ({ id: t.id({ required: true, description: 'Which request.' }) }),
});

addMutation('moveDryingRequest', {
  description: 'Puts a request before another one, or last.',
  check: moveSaid,
  success: RequestRef,
  run: (input, context) => requestOf(context, dryingMoved(context, input)),
  fields: (t) => ({
    id: t.id({ required: true, description: 'Which request.' }),
    before: t.id({ description: 'The request it comes before; last when not given.' }),
  }),
});
