// What beginning asks: how far the lab is; and what a code could have been.
import { question } from '../ask.ts';
import type { Kind } from '../say/words.ts';
import { flag, given, instant, many, maybe, number, text, word, type Answer } from '../shape.ts';

export const beginQuestion = question<Record<string, never>>('Begin')({
  lab: { name: text, isDemo: flag, counts: { containers: number, lots: number } },
  rooms: given('first: 200', {
    nodes: many({ name: text, lastReadingAt: maybe(instant), assumedHumidityPercent: maybe(number) }),
  }),
});
export type Begun = Answer<typeof beginQuestion.shape>;

export const alikeCodesQuestion = question<{ code: string }>(
  'AlikeCodes',
  '$code: String!',
)({
  containersAlike: given(
    'code: $code',
    many({
      label: text,
      oldCode: maybe(text),
      kind: word<Kind>(),
      sorbent: { name: text },
      lot: { lotNumber: text },
      room: { name: text },
    }),
  ),
});
