// What the page of what was learned asks and tells.
import { act } from '../act/told.ts';
import { question } from '../ask.ts';
import { flag, given, instant, many, maybe, number, text, word, type Answer } from '../shape.ts';

const weighing = {
  event: { id: text, sentence: text },
  container: { label: text },
  at: instant,
  counts: word<'USED' | 'CONFIRMED' | 'LEFT_OUT' | 'REFUSED' | 'UNUSABLE' | 'WAITING'>(),
  of: maybe(word<'SCOOP' | 'WHOLE' | 'GAIN'>()),
  found: maybe(number),
  expectedNow: maybe(number),
  sigmas: maybe(number),
  isRight: maybe(flag),
};
export type Weighing = Answer<typeof weighing>;

export const learnedQuestion = question<Record<string, never>>('Learned')({
  learned: many({
    name: text,
    kind: word<'CLASS' | 'LOT' | 'CLOSURE' | 'CONTAINER' | 'OPEN_MOUTH' | 'BED' | 'HUMIDITY'>(),
    sentence: text,
    priorSd: number,
    priorLow: number,
    priorHigh: number,
    value: number,
    sd: number,
    low: number,
    high: number,
    says: many({ value: number, low: number, high: number, weighing }),
  }),
  weighings: given('onlyLeftOut: true, last: 50', many(weighing)),
});
export type Factor = Answer<typeof learnedQuestion.shape>['learned'][number];
export type Says = Factor['says'][number];

export const confirmWeighingAct = act(
  'confirmWeighing',
  'WeighingConfirmed',
  { event: text, isRight: maybe(flag) },
  { before: maybe(flag) },
);

/** A round with the balance: gross weights, all of them or none. */
export const recordWeighingsAct = act(
  'recordWeighings',
  'WeighingsRecorded',
  { weighings: many({ label: text, grossGrams: number, at: maybe(instant) }) },
  { weighings: many({ event: { id: text }, container: { label: text } }) },
);
export const takeBackAct = act('correctEvent', 'Recorded', { event: text, void: maybe(flag) }, { event: { id: text } });
