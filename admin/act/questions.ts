// What a form asks while it is filled in: the water that weighings come to.
import { question } from '../ask.ts';
import { flag, given, many, maybe, number, text, type Answer } from '../shape.ts';

export const lossQuestion = question<{ tare: number; before: number; after: { grossGrams: number }[] }>(
  'Loss',
  '$tare: Float!, $before: Float!, $after: [WeighingAfterInput!]!',
)({
  lossOnDrying: given('tareGrams: $tare, beforeGrams: $before, after: $after', {
    steps: many({ grossGrams: number, lostMgPerG: number, constant: flag }),
    constantAt: maybe(number),
    waterFraction: maybe(number),
    asReceivedFraction: maybe(number),
    advice: maybe(text),
    impossible: maybe({ path: text, message: text, expected: text }),
  }),
});
export type Loss = Answer<typeof lossQuestion.shape>['lossOnDrying'];
