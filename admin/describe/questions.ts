// What the list of sorbents asks.
import { act } from '../act/told.ts';
import { question } from '../ask.ts';
import type { confidenceWord, originWord, policyWord } from '../say/words.ts';
import { given, many, maybe, number, text, word, type Answer } from '../shape.ts';

export const sorbentsQuestion = question<Record<string, never>>('Sorbents')({
  sorbents: given('first: 100', {
    nodes: many({
      id: text,
      name: text,
      sorbentClass: text,
      particleSizeLowUm: maybe(number),
      particleSizeHighUm: maybe(number),
      meshLow: maybe(number),
      meshHigh: maybe(number),
      poreSizeNm: maybe(number),
      bondedPhase: maybe(text),
      reaction: maybe(word<'ACIDIC' | 'NEUTRAL' | 'BASIC'>()),
      targetPolicy: word<keyof typeof policyWord>(),
      targetUpperWaterFraction: maybe(number),
      targetLowerWaterFraction: maybe(number),
      cautions: many(text),
      properties: many({
        name: text,
        value: maybe(number),
        unit: text,
        origin: word<keyof typeof originWord>(),
        confidence: word<keyof typeof confidenceWord>(),
        source: text,
      }),
    }),
  }),
});
export type Sorbent = Answer<typeof sorbentsQuestion.shape>['sorbents']['nodes'][number];

export const addSorbentAct = act(
  'addSorbent',
  'SorbentKept',
  {
    name: text,
    sorbentClass: text,
    particleSizeLowUm: maybe(number),
    particleSizeHighUm: maybe(number),
    poreSizeNm: maybe(number),
    targetUpperWaterFraction: maybe(number),
  },
  { sorbent: { name: text } },
);
