// What the page of plates asks, and what is asked of prepared plates on their own page.
import { question } from '../ask.ts';
import { lineFields } from '../fields.ts';
import { flag, given, instant, many, maybe, number, text, word, type Answer } from '../shape.ts';

export type BatchState = 'WET' | 'DRYING' | 'DRY' | 'ACTIVATED' | 'EQUILIBRATED';

const by = maybe(text);
export const batchFields = {
  label: text,
  state: word<BatchState>(),
  regimeWords: maybe(text),
  preparedAt: maybe(instant),
  ready: flag,
  whyNot: maybe(text),
  goodUntil: maybe(instant),
  plates: number,
  inHoodAt: maybe(instant),
  solventGoneFrom: maybe(instant),
  usableForExtraction: flag,
  usableFor: text,
  preWash: maybe({
    at: instant,
    by,
    solvent: maybe(text),
    direction: maybe(word<'ALONG_HEIGHT' | 'ALONG_WIDTH'>()),
    fullLength: maybe(flag),
    frontEdge: maybe(word<'CUT' | 'MARKED' | 'LEFT'>()),
    tankLoads: maybe(number),
    mlPerLoad: maybe(number),
  }),
  solventGone: maybe({ at: instant, by }),
  activation: maybe({
    at: instant,
    by,
    temperatureC: maybe(number),
    minutes: maybe(number),
    vacuum: flag,
    oven: maybe(text),
  }),
  equilibration: maybe({
    at: instant,
    by,
    humidityPercent: number,
    temperatureC: number,
    over: maybe(text),
    hours: maybe(number),
  }),
  useWithin: many({ room: { name: text }, minutes: maybe(number), sentence: text, source: text }),
};

export const platesQuestion = question<Record<string, never>>('Plates')({
  plateBatches: many({ ...batchFields, container: lineFields }),
  containers: given('first: 200, filter: { kind: [PLATE_BOX], inUse: true }', {
    nodes: many({
      label: text,
      sorbent: { name: text },
      solventWetAt: maybe(instant),
      '... on PlateBox': { plates: number },
    }),
  }),
});
export type Batch = Answer<typeof platesQuestion.shape>['plateBatches'][number];
export type Box = Answer<typeof platesQuestion.shape>['containers']['nodes'][number];

export const preparedQuestion = question<{ label: string }>(
  'Prepared',
  '$label: String!',
)({
  container: maybe(
    given('label: $label', {
      plateBatch: maybe(batchFields),
      useWithin: many({ room: { name: text }, minutes: maybe(number), sentence: text, source: text }),
    }),
  ),
});
export type Prepared = Answer<typeof batchFields>;
