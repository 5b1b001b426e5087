// What the page asks that says what a retention goes with.
import { question } from '../ask.ts';
import { given, instant, many, maybe, number, text, word, type Answer } from '../shape.ts';
import { spreadFields, type Told } from '../compare/questions.ts';

const estimate = { value: number, low: number, high: maybe(number) };
export const explainedQuestion = question<{ sorbent: string; compound: string; retention: string }>(
  'Explained',
  '$sorbent: String!, $compound: String!, $retention: Retention',
)({
  explained: given('sorbent: $sorbent, compound: $compound, retention: $retention', {
    sentence: text,
    plates: number,
    each: many({ name: text, told: word<Told>(), share: estimate, alone: number, sentence: text }),
    shared: maybe(number),
    unexplained: maybe(number),
    leftOut: many(text),
    points: many({
      value: number,
      run: {
        id: text,
        at: instant,
        lot: { lotNumber: text },
        ranBy: maybe({ shortName: text }),
        waterFraction: maybe(number),
        humidityPercent: maybe(number),
        hoursPrepared: maybe(number),
        regime: maybe(word<'DRY_UNTIL_SPOTTED' | 'EQUILIBRATED'>()),
      },
    }),
  }),
});
export type Explained = Answer<typeof explainedQuestion.shape>['explained'];
export type Point = Explained['points'][number];

/** Asked apart: reckoning it takes seconds. */
export const spreadQuestion = question<{ sorbent: string; compound: string; retention: string }>(
  'ExplainedSpread',
  '$sorbent: String!, $compound: String!, $retention: Retention',
)({
  explained: given('sorbent: $sorbent, compound: $compound, retention: $retention', { spread: maybe(spreadFields) }),
});
