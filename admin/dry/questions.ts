// What the list of what waits to be dried asks.
import { question } from '../ask.ts';
import { lineFields } from '../fields.ts';
import { given, instant, many, maybe, number, text, type Answer } from '../shape.ts';

export const waitingQuestion = question<Record<string, never>>('Waiting')({
  dryingRequests: given('first: 200, state: WAITING', {
    totalCount: number,
    nodes: many({
      id: text,
      dryGrams: maybe(number),
      plates: maybe(number),
      why: text,
      wantedBy: maybe(instant),
      madeAt: instant,
      container: lineFields,
    }),
  }),
});
export type Request = Answer<typeof waitingQuestion.shape>['dryingRequests']['nodes'][number];
