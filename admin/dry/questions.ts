// What the list of what waits to be dried asks.
import { question } from '../ask.ts';
import { lineFields } from '../fields.ts';
import { flag, given, instant, many, maybe, number, text, type Answer } from '../shape.ts';

const recipeFields = {
  of: text,
  vacuum: flag,
  temperatureLowC: number,
  temperatureHighC: number,
  minutesLow: number,
  minutesHigh: number,
  limitC: number,
  source: text,
};
export type Recipe = Answer<typeof recipeFields>;

export const waitingQuestion = question<Record<string, never>>('Waiting')({
  dryingRequests: given('first: 200, state: WAITING', {
    totalCount: number,
    nodes: many({
      id: text,
      dryGrams: maybe(number),
      plates: maybe(number),
      why: text,
      wantedBy: maybe(instant),
      temperatureC: maybe(number),
      minutes: maybe(number),
      depthMm: maybe(number),
      priority: number,
      madeAt: instant,
      container: {
        ...lineFields,
        sorbent: { name: text, sorbentClass: text },
        touchedSolventAt: maybe(instant),
        dryingRecipes: many(recipeFields),
      },
    }),
  }),
  dried: given(
    'last: 20, state: DRIED',
    { nodes: many({ id: text, endedAt: maybe(instant), container: { label: text, sorbent: { name: text } } }) },
    'dryingRequests',
  ),
});
export type Request = Answer<typeof waitingQuestion.shape>['dryingRequests']['nodes'][number];
export type DriedOne = Answer<typeof waitingQuestion.shape>['dried']['nodes'][number];
